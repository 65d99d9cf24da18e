package dropline.harness.cli;

import dropline.bus.fault.FaultKind;
import dropline.harness.fault.Catalogue;
import dropline.harness.fault.CatalogueText;
import dropline.harness.fault.Entry;
import dropline.harness.fault.FaultOptions;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code dropline faults}: the fault catalogue. */
@Command(
        name = "faults",
        header = "Show the fault catalogue: what can go wrong, what you would see, how to inject it.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        customSynopsis = "dropline faults [KIND]",
        descriptionHeading = "%n",
        description = {
            "For each kind of fault: what it is, what it strikes and how often, what you would see, by what it",
            "can be seen at all (the wire, the controller's side, a meter, the eye), and a line that injects it",
            "into the demo pit with 'dropline replay ... --fault'."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline faults                              all of them",
            "  dropline faults driver-released-early        one of them",
            "",
            "Exit codes:  0 shown   2 there is no such kind   3 our own fault"
        })
final class FaultsCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", arity = "0..1", paramLabel = "KIND", description = "One kind of fault; all if left out.")
    private @Nullable String kind;

    @Mixin
    final Debug debug = new Debug();

    FaultsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        console.out().print(CatalogueText.of(kind == null ? Catalogue.read().entries() : List.of(one(kind))));
        return ExitCode.PASS;
    }

    private static Entry one(String word) {
        Optional<FaultKind> known = FaultOptions.kind(word);
        if (known.isEmpty()) {
            String near = FaultOptions.nearest(word)
                    .map(nearest -> "; did you mean " + nearest + "?")
                    .orElse("");
            throw new WrongInput("dropline: there is no kind of fault '" + word + "'" + near
                    + "\nTry 'dropline faults', which shows them all.");
        }
        return Catalogue.read().of(known.get());
    }
}
