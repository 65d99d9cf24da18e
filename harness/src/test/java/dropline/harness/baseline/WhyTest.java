package dropline.harness.baseline;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class WhyTest {
    private static final PitChange KIND = new PitChange(List.of("kinds", "console board"), null, null);
    private static final PitChange NODE = new PitChange(List.of("nodes", "flap board"), null, null);
    private static final PitChange PANEL = new PitChange(List.of("panels", "Flaps"), null, null);
    private static final PitChange NAME = new PitChange(List.of("pit"), null, null);

    /** A new board needs its kind and its panel, which alone change nothing or are no pit. */
    private static Optional<Double> consoleIsBehindIt(List<PitChange> changes) {
        boolean node = changes.contains(NODE);
        if (node != changes.contains(PANEL) || node && !changes.contains(KIND)) {
            return Optional.empty();
        }
        return Optional.of(node ? 20.0 : 10.0);
    }

    @Test
    void newBoardsAreMadeTogetherWithTheKindThatTheyAreLike() throws IOException {
        Why.Cause cause = new Why(WhyTest::consoleIsBehindIt).among(List.of(NAME, KIND, NODE, PANEL));

        assertEquals(List.of(NODE, PANEL, KIND), cause.changes());
        assertEquals(1, cause.share());
    }

    @Test
    void nothingIsFoundWhereNoChangeIsBehindIt() throws IOException {
        Why.Cause cause = new Why(changes -> Optional.of(10.0)).among(List.of(NAME, KIND));

        assertEquals(List.of(), cause.changes());
    }
}
