package dropline.harness.describe;

import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Where a segment hangs, how its cable runs, and what it shares with others. */
final class Sharing {
    private final Pit pit;
    private final int index;
    private final Segment segment;

    Sharing(Pit pit, Segment segment) {
        this.pit = pit;
        this.segment = segment;
        index = pit.segments().indexOf(segment);
    }

    /** Who polls: {@code Board centre polls}. */
    String who() {
        Hub hub = pit.hubOf(index);
        if (hub == null) {
            return segment.isShared()
                    ? "The host polls"
                    : "The host polls " + segment.nodes().get(0).name() + " straight over USB";
        }
        return switch (hub.kind()) {
            case BOARD -> "Board " + hub.name() + " polls";
            case TRANSCEIVERS -> "The host polls through hub " + hub.name() + ", one transceiver for each port";
            case SPLITTER -> "The host polls through splitter " + hub.name();
        };
    }

    /** A line for each thing worth knowing; none for a lone chain. */
    String lines() {
        StringBuilder text = new StringBuilder();
        Hub hub = pit.hubOf(index);
        if (hub != null) {
            board(text, hub);
        }
        star(text, hub);
        if (!segment.isShared()) {
            text.append("There is no pair: nothing is shared, and both may speak at once.\n");
        }
        return text.toString();
    }

    private void board(StringBuilder text, Hub hub) {
        List<String> others = hub.segments().stream()
                .filter(other -> other != index)
                .map(other -> pit.segments().get(other).name())
                .toList();
        if (!others.isEmpty()) {
            text.append("It shares board ").append(hub.name()).append(" with ");
            text.append(others.size() == 1 ? "segment " : "segments ").append(String.join(", ", others));
            text.append(
                    ": one program, which prepares one frame at a time, and one USB lead with one latency timer.\n");
        }
        if (hub.turnNanos() > 0) {
            text.append("The program takes ").append(Figures.time(hub.turnNanos()));
            text.append(" before each frame it sends; that is counted below, what other segments take of it is not.\n");
        }
    }

    private void star(StringBuilder text, @Nullable Hub hub) {
        if (segment.cable().topology() != Topology.STAR) {
            return;
        }
        text.append("Its cable is a star of ")
                .append(Figures.count(segment.cable().arms().size(), "arm"));
        text.append(
                hub != null && hub.kind() == Hub.Kind.TRANSCEIVERS
                        ? ", each a pair of its own. One conversation is repeated on all of them, so it is simulated as"
                                + " one pair: trouble on one arm is felt on all.\n"
                        : " on one pair.\n");
    }
}
