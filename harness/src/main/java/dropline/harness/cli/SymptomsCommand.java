package dropline.harness.cli;

import dropline.harness.symptom.Symptom;
import dropline.harness.symptom.SymptomText;
import dropline.harness.symptom.Symptoms;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code dropline symptoms}: from what one sees to what is likely behind it. */
@Command(
        name = "symptoms",
        header = "Say what is likely behind what you see, in order, and how to find out.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        customSynopsis = "dropline symptoms [WORD]...",
        descriptionHeading = "%n",
        description = {
            "Without words, lists what builders see. With some, shows the symptoms that fit best: what is likely",
            "behind each, the likeliest first, and the next test, by eye, meter, swap or command. The manual has",
            "all of them in docs/symptoms.md."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline symptoms",
            "  dropline symptoms only when a motor moves",
            "",
            "Exit codes:  0 shown   2 nothing fits   3 our own fault"
        })
final class SymptomsCommand implements Callable<Integer> {
    private static final int MOST = 3;

    private final Console console;

    @Parameters(arity = "0..*", paramLabel = "WORD", description = "What you see, in your own words.")
    private List<String> words = List.of();

    @Mixin
    final Debug debug = new Debug();

    SymptomsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Symptoms symptoms = Symptoms.read();
        if (words.isEmpty()) {
            console.out().print(SymptomText.list(symptoms.all()));
            return ExitCode.PASS;
        }
        List<Symptom> like = symptoms.like(String.join(" ", words));
        if (like.isEmpty()) {
            throw new WrongInput("dropline: no symptom has any of these words: " + String.join(" ", words)
                    + "\nTry 'dropline symptoms', which lists them all.");
        }
        console.out().print(SymptomText.of(like.stream().limit(MOST).toList()));
        return ExitCode.PASS;
    }
}
