package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.problem.Nearest;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The option that names one segment of a pit. */
final class SegmentChoice {
    @Option(
            names = "--segment",
            paramLabel = "S",
            description = "The segment; may be left out where the pit has only one.")
    private @Nullable String segment;

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    /** Whether one was named. */
    boolean isNamed() {
        return segment != null;
    }

    /** Its index in the pit. */
    int in(Pit pit) {
        List<String> names = pit.segments().stream().map(Segment::name).toList();
        String named = segment;
        if (named == null) {
            if (names.size() > 1) {
                throw new ParameterException(
                        command.commandLine(), "--segment is missing; the pit has " + String.join(", ", names));
            }
            return 0;
        }
        int index = names.indexOf(named);
        if (index < 0) {
            String near = Nearest.to(named, names)
                    .map(name -> "; did you mean " + name + "?")
                    .orElse("");
            throw new WrongInput("dropline: there is no segment '" + named + "'" + near + "\nThe pit has "
                    + String.join(", ", names) + ".");
        }
        return index;
    }

    /** The same, of one on which something can be said. */
    int spokenIn(Pit pit) {
        int index = in(pit);
        mustBeSpoken(pit.segments().get(index));
        return index;
    }

    /** A segment of whose frames only lengths are known cannot be spoken on. */
    static void mustBeSpoken(Segment segment) {
        if (!segment.protocol().knowsBytes()) {
            throw new WrongInput("dropline: of the frames on segment " + segment.name() + " the pit file knows the"
                    + " lengths only, so nothing can be said there;"
                    + " describe them in a protocol file (protocol: custom)");
        }
    }
}
