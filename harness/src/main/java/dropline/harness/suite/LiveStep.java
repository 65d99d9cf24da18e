package dropline.harness.suite;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A step of a suite that needs hardware: one command or several, for a real segment or board.
 *
 * @param name in the suite
 * @param asked what is done
 * @param port a serial port's name; empty where a server is named
 * @param server {@code HOST:PORT} of a server that passes bytes on; empty where a port is named
 */
public record LiveStep(String name, Asked asked, String port, String server) {

    /** What a step does. */
    public sealed interface Asked {}

    /** Asks who is there on a segment. */
    public record RollCall(String segment) implements Asked {}

    /**
     * Plays a stretch of a recording to the boards of a segment.
     *
     * @param recording its path as it can be opened
     * @param to until this time of it, as written; empty for all of it
     */
    public record Drive(String segment, String recording, Optional<String> to) implements Asked {}

    /** Examines boards; those whose description has changed since the accepted runs where {@code nodes} is empty. */
    public record Bench(List<String> nodes) implements Asked {
        public Bench {
            nodes = List.copyOf(nodes);
        }

        /** Whether it is for those that have changed. */
        public boolean isForChanged() {
            return nodes.isEmpty();
        }
    }

    /** The commands, each as its arguments. */
    public List<List<String>> commands(String pit, List<String> changedNodes) {
        List<List<String>> commands = new ArrayList<>();
        if (asked instanceof RollCall roll) {
            commands.add(List.of("roll-call", pit, "--segment", roll.segment()));
        } else if (asked instanceof Drive drive) {
            List<String> command =
                    new ArrayList<>(List.of("drive", pit, drive.recording(), "--segment", drive.segment()));
            drive.to().ifPresent(to -> command.addAll(List.of("--to", to)));
            commands.add(command);
        } else if (asked instanceof Bench bench) {
            for (String node : bench.isForChanged() ? changedNodes : bench.nodes()) {
                commands.add(List.of("bench", "--pit", pit, "--node", node, "--quick"));
            }
        }
        return commands.stream().map(this::over).toList();
    }

    private List<String> over(List<String> command) {
        List<String> whole = new ArrayList<>(command);
        whole.addAll(port.isEmpty() ? List.of("--tcp", server) : List.of("--port", port));
        return whole;
    }

    /** What it does and over what, for people. */
    public String words() {
        String over = " over " + (port.isEmpty() ? server : port);
        if (asked instanceof RollCall roll) {
            return "roll-call of " + roll.segment() + over;
        }
        if (asked instanceof Drive drive) {
            return "drive " + drive.segment() + over;
        }
        if (asked instanceof Bench bench) {
            return "bench " + (bench.isForChanged() ? "of what changed" : String.join(", ", bench.nodes())) + over;
        }
        throw new AssertionError(asked);
    }
}
