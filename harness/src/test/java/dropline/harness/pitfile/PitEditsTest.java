package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class PitEditsTest {
    private static final String TEXT = """
            # what stands above stays
            nodes:
              # in braces
              one: {segment: 'left', address: 1, registers: {a: 1, "b, {": 2}}  # behind
              two:
                segment: left   # why
                address: 2
                # about the profile
                profile:
                  like: plain

            segments:
              left:
                baud: 500 kbaud   # exactly
                order: [one,
                  two]
            """;

    private final PitEdits edits = new PitEdits("pit.yaml", TEXT);

    private void becomes(String from, String to) {
        assertTrue(TEXT.contains(from));
        assertEquals(TEXT.replace(from, to), edits.text());
    }

    @Test
    void aValueIsReplacedAndWhatStandsAroundItStays() {
        edits.set("right", "nodes", "one", "segment");
        becomes("segment: 'left',", "segment: right,");
    }

    @Test
    void aValueBeforeACommentIsReplaced() {
        edits.set("right", "nodes", "two", "segment");
        becomes("segment: left   # why", "segment: right   # why");
    }

    @Test
    void aKeyIsAddedInBraces() {
        edits.set("3", "nodes", "one", "weight");
        becomes("one: {segment", "one: {weight: 3, segment");
    }

    @Test
    void aKeyIsAddedBehindTheLastOfABlock() {
        edits.set("3", "nodes", "two", "weight");
        becomes("      like: plain\n", "      like: plain\n    weight: 3\n");
    }

    @Test
    void aGroupIsReplacedByAValue() {
        edits.set("{like: plain, fifo: 3}", "nodes", "two", "profile");
        becomes("profile:\n      like: plain", "profile: {like: plain, fifo: 3}");
    }

    @Test
    void aGroupWithQuotedBracesInItIsReplacedWhole() {
        edits.set("{c: 3}", "nodes", "one", "registers");
        becomes("{a: 1, \"b, {\": 2}", "{c: 3}");
    }

    @Test
    void aKeyOfSeveralLinesGoesWhole() {
        edits.remove("segments", "left", "order");
        becomes("    order: [one,\n      two]\n", "");
    }

    @Test
    void aKeyGoesWithTheCommentAboveIt() {
        edits.remove("nodes", "two", "profile");
        becomes("    # about the profile\n    profile:\n      like: plain\n", "");
    }

    @Test
    void keysGoFromBracesFirstMiddleAndLast() {
        edits.remove("nodes", "one", "address");
        becomes("address: 1, ", "");
        edits.remove("nodes", "one", "registers");
        becomes(", address: 1, registers: {a: 1, \"b, {\": 2}", "");
        edits.remove("nodes", "one", "segment");
        becomes("segment: 'left', address: 1, registers: {a: 1, \"b, {\": 2}", "");
    }

    @Test
    void aPartIsCopiedUnderAnotherName() {
        edits.copy("right", "left", "segments", "left");
        becomes(
                "      two]\n",
                "      two]\n\n  right:\n    baud: 500 kbaud   # exactly\n    order: [one,\n      two]\n");
    }

    @Test
    void whatDoesNotStandInTheFileCannotBeEdited() {
        PitEdits.NotEditable cannot =
                assertThrows(PitEdits.NotEditable.class, () -> edits.set("1", "nodes", "three", "address"));
        assertEquals("nodes: three does not stand in pit.yaml itself as a group of keys", cannot.getMessage());
    }
}
