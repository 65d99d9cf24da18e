package dropline.scenarios.baseline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.baseline.PitChange;
import dropline.harness.pitfile.PitFile;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import dropline.harness.yaml.TreeText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pit files kept as one text, and what differs between two of them. */
final class PitChangeTest {
    private static PitFile.Understood understood(PitFile.Result result) {
        if (result instanceof PitFile.Understood understood) {
            return understood;
        }
        throw new AssertionError(result);
    }

    /** All there is to a pit; its protocols are alike where they are called alike. */
    private static String content(PitFile.Understood pit) {
        return pit.pit().toString().replaceAll("@[0-9a-f]+", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"demo/pit.yaml", "reference/bus.yaml", "reference/bus-with-state.yaml"})
    void aPitKeptAsOneTextIsTheSamePit(String file) {
        PitFile.Understood pit = understood(PitFile.read(Path.of(file)));

        PitFile.Understood again = understood(pit.tree().as(pit.tree().joined()));

        assertEquals(content(pit), content(again));
        assertEquals(
                List.of(), PitChange.between(pit.tree().joined(), again.tree().joined()));
    }

    @Test
    void whatChangedIsSaidAndCanBeDoneAgain() throws IOException {
        PitFile.Understood was = understood(PitFile.read(Path.of("demo/pit.yaml")));
        String text = Files.readString(Path.of("demo/pit.yaml"))
                .replace("baud: 19.2 kbaud", "baud: 9600 baud")
                .replaceFirst("\n  clock-board: [^\n]*", "")
                .replace("\nnodes:\n", "\nnodes:\n  spare-board: {segment: front, address: 99, profile: front-loop}\n");
        // without its board the clock's panel has none: what is compared need not be right
        Tree.Mapping is =
                ((Tree.Mapping) TreeReader.read("changed", text, new Report()).orElseThrow());

        List<PitChange> changes = PitChange.between(was.tree().joined(), is);

        assertEquals(
                List.of("nodes.spare-board: new", "segments.pedestal.baud: 19.2 kbaud -> 9600 baud"),
                changes.stream()
                        .map(PitChange::words)
                        .filter(words -> !words.contains("clock-board"))
                        .sorted()
                        .toList());
        assertTrue(changes.stream()
                .map(PitChange::words)
                .anyMatch(words -> words.startsWith("nodes.clock-board: {") && words.endsWith(" -> gone")));
        assertEquals(
                List.of(), PitChange.between(is, PitChange.applied(was.tree().joined(), changes)));
        assertTrue(TreeText.of(is).startsWith("pit: "));
    }
}
