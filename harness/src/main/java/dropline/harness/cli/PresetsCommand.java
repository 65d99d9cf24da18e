package dropline.harness.cli;

import dropline.harness.describe.PresetText;
import dropline.harness.pitfile.PresetList;
import dropline.harness.pitfile.PresetList.Preset;
import dropline.harness.problem.Nearest;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code dropline presets}: what a pit file may be like by name. */
@Command(
        name = "presets",
        header = "Show the boards, adapters, displays, motors and switches a pit file may name.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        customSynopsis = "dropline presets [NAME]",
        descriptionHeading = "%n",
        description = {
            "Lists what a pit file may be like by name. With a name, or a part of one, or the name of a group,",
            "each is shown whole: every figure, and where it comes from. A figure written \"about\" is a guess;",
            "none is a measurement of your part."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline presets                     all of them, a line each",
            "  dropline presets OLED                those with OLED in their name, whole",
            "  dropline presets boards              all boards, whole",
            "",
            "Exit codes:  0 shown   2 there is no such preset   3 our own fault"
        })
final class PresetsCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "NAME",
            description = "A preset, a part of its name, or a group.")
    private @Nullable String name;

    @Mixin
    final Debug debug = new Debug();

    PresetsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        List<Preset> all = PresetList.all();
        console.out().print(name == null ? PresetText.list(all) : PresetText.whole(found(all, name)));
        return ExitCode.PASS;
    }

    private static List<Preset> found(List<Preset> all, String name) {
        String wanted = name.toLowerCase(Locale.ROOT);
        List<Preset> found = all.stream()
                .filter(p -> p.group().endsWith(wanted)
                        || p.name().toLowerCase(Locale.ROOT).contains(wanted))
                .toList();
        if (found.isEmpty()) {
            List<String> known = all.stream()
                    .flatMap(p -> Stream.of(p.name(), p.group()))
                    .distinct()
                    .toList();
            String near = Nearest.to(name, known)
                    .map(n -> "; did you mean " + n + "?")
                    .orElse("");
            throw new WrongInput("dropline: there is no preset '" + name + "'" + near
                    + "\nTry 'dropline presets', which lists them all.");
        }
        return found;
    }
}
