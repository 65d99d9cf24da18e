package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class PitTreeTest {

    @Test
    void aValueIsFoundByItsPathWithItsPlace() {
        assertEquals(
                Optional.of(new PitTree.Value("500 kbaud", "pit.yaml", 8, 11)),
                tree(PitText.SMALL).get("segments.left.baud"));
        assertEquals(Optional.empty(), tree(PitText.SMALL).get("segments.right.baud"));
    }

    @Test
    void aPatchedValueChangesThePitAndNothingElse() {
        PitTree tree = tree(PitText.SMALL);

        PitFile.Understood patched =
                assertInstanceOf(PitFile.Understood.class, tree.with("segments.left.baud", "250 kbaud"));

        assertEquals(250_000, patched.pit().segments().get(0).baud());
        assertEquals(List.of("segments.left.baud"), tree.differences(patched.tree()));
        assertEquals(
                PitText.SMALL.replace("500 kbaud", "250 kbaud"),
                patched.tree().texts().get("pit.yaml"));
    }

    @Test
    void aPatchThatIsWrongHasProblems() {
        assertInstanceOf(PitFile.Wrong.class, tree(PitText.SMALL).with("segments.left.baud", "250"));
    }

    @Test
    void aQuotedValueStaysQuoted() {
        String text = PitText.SMALL.replace("node: b\n", "node: b\n    place: 'left: low'\n");

        PitFile.Understood patched =
                assertInstanceOf(PitFile.Understood.class, tree(text).with("panels.speed.place", "say \"hi\": there"));

        assertEquals(
                "say \"hi\": there",
                patched.pit().segments().get(0).nodes().get(1).panels().get(0).place());
    }

    @Test
    void aNameWithADotStandsInQuotes() {
        String text = PitText.SMALL.replace("  speed:\n", "  No. 2:\n");

        assertEquals(Optional.of("b"), tree(text).get("panels.\"No. 2\".node").map(PitTree.Value::text));
    }

    @Test
    void aPathWithoutAValueCannotBePatched() {
        assertThrows(IllegalArgumentException.class, () -> tree(PitText.SMALL).with("segments.left", "x"));
    }

    private static PitTree tree(String text) {
        return assertInstanceOf(PitFile.Understood.class, PitFile.parse("pit.yaml", text))
                .tree();
    }
}
