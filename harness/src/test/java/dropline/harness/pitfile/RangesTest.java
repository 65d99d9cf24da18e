package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Segment;
import java.util.List;
import org.junit.jupiter.api.Test;

final class RangesTest {
    private static final String MANY = """
            hubs:
              centre: {adapter: native USB}
            signals:
              oil 4: {unit: psi, range: 0..100, number: 4}
              oil 5: {unit: psi, range: 0..100, number: 5}
              oil 6: {unit: psi, range: 0..100, number: 6}
              fuel: {unit: l, range: 0..500, number: 7}
            segments:
              left: {baud: 500 kbaud, controller: {hub: centre}}
            nodes:
              first: {segment: left, address: 1, profile: 32-bit}
              oil: {segment: left, addresses: 4..6, profile: 8-bit loop}
            panels:
              oil pressure:
                node: oil
                place: "engine #"
                indicators:
                  "needle #": {kind: gauge stepper, shows: "oil #", speed: 50 psi/s}
                  readout: {kind: lamp, shows: [fuel, "oil #"]}
                controls:
                  "test #": {kind: button, number: 1}
              "fuel # of the list":
                node: oil 5
                indicators:
                  lamp: {kind: lamp, shows: fuel}
            """;

    @Test
    void aRangeStandsForANodeOfEachAddress() {
        Segment left = PitText.understood(MANY).segments().get(0);

        assertEquals(
                List.of("first", "oil 4", "oil 5", "oil 6"),
                left.nodes().stream().map(Node::name).toList());
        assertEquals(
                List.of(1, 4, 5, 6), left.nodes().stream().map(Node::address).toList());
    }

    @Test
    void aPanelOfARangeStandsForOneOnEachWithTheAddressInItsTexts() {
        Panel panel = PitText.understood(MANY)
                .segments()
                .get(0)
                .nodes()
                .get(3)
                .panels()
                .get(0);

        assertEquals("oil pressure 6", panel.name());
        assertEquals("engine 6", panel.place());
        assertEquals("needle 6", panel.indicators().get(0).name());
        assertEquals(List.of(2), panel.indicators().get(0).signals());
        assertEquals(List.of(3, 2), panel.indicators().get(1).signals());
        assertEquals("test 6", panel.controls().get(0).name());
    }

    @Test
    void aPanelMayNameOneOfTheNodesAndThenKeepsItsOwnSigns() {
        Node oil5 = PitText.understood(MANY).segments().get(0).nodes().get(2);

        assertEquals(
                List.of("oil pressure 5", "fuel # of the list"),
                oil5.panels().stream().map(Panel::name).toList());
    }

    @Test
    void aKindMayGiveTheRange() {
        String text = MANY.replace("{segment: left, addresses: 4..6, profile: 8-bit loop}", "{like: three}")
                + "kinds: {nodes: {three: {segment: left, addresses: 4..6, profile: 8-bit loop}}}\n";

        assertEquals(4, PitText.understood(text).segments().get(0).nodes().size());
    }

    @Test
    void anAddressOfTheRangeThatAnotherNodeHasClashes() {
        assertMessage("address: 1,", "address: 5,", """
                pit.yaml:12:35: address: ADDRESS_CLASH
                  found:    5
                  expected: an address that no other node on segment left has
                  fix:      give one of them another address; first in line 11 has it too
                """);
    }

    @Test
    void aRangeThatEndsBeforeItBeginsIsTurnedRound() {
        assertMessage("addresses: 4..6", "addresses: 6..4", """
                pit.yaml:12:35: addresses: IMPOSSIBLE_RANGE
                  found:    6..4
                  expected: a range that ends where it begins or later
                  fix:      write addresses: 4..6
                """);
    }

    @Test
    void addressAndAddressesExcludeEachOther() {
        assertMessage("addresses: 4..6", "address: 3, addresses: 4..6", """
                pit.yaml:12:47: addresses: CONFLICT
                  found:    4..6
                  expected: address or addresses, not both
                  fix:      delete one; addresses: makes one node of each, address: is for a single one
                """);
    }

    @Test
    void aNameThatOneOfTheNodesGetsMayNotBeTaken() {
        assertMessage("  first:", "  oil 5:", """
                pit.yaml:12:3: oil: DUPLICATE_NAME
                  found:    oil, one of which is oil 5
                  expected: names that nothing else has
                  fix:      give one of them another name; oil 5 stands in line 11 too
                """);
    }

    @Test
    void aControlOfARangeNeedsTheAddressInItsName() {
        String message = message("\"test #\":", "test:");

        assertTrue(message.contains("write # into its name, which becomes the address: \"test #\""), message);
        assertEquals(1, message.split("DUPLICATE_NAME", -1).length - 1, message);
    }

    @Test
    void theSignMeansNothingWhereThereIsNoRange() {
        assertMessage("lamp, shows: fuel}", "lamp, shows: \"oil #\"}", """
                pit.yaml:25:33: shows: UNKNOWN_NAME
                  found:    "oil #"
                  expected: a signal; # is the address only on a panel whose node has addresses:
                  fix:      write the signal's whole name
                """);
    }

    @Test
    void aSignThatYamlTookForACommentIsGuessed() {
        assertMessage("{kind: lamp, shows: [fuel, \"oil #\"]}", "\n        kind: lamp\n        shows: oil #", """
                pit.yaml:21:16: shows: UNKNOWN_NAME
                  found:    oil
                  expected: a signal: oil 4, oil 5, oil 6, fuel
                  fix:      write "oil #" in quotes: without them YAML takes # for the start of a comment
                """);
    }

    @Test
    void aRangeThatIsNoneIsToldOnce() {
        assertMessage("addresses: 4..6", "addresses: 4 to 6", """
                pit.yaml:12:35: addresses: WRONG_TYPE
                  found:    4 to 6
                  expected: first..last address, such as 1..9
                  fix:      write addresses: 1..9
                """);
        assertTrue(message("addresses: 4..6", "addresses: 4..248").contains("OUT_OF_RANGE"));
    }

    private static void assertMessage(String old, String replacement, String message) {
        String all = message(old, replacement);
        assertTrue(all.contains(message.strip()), () -> all);
        assertEquals(1, all.split("expected:", -1).length - 1, all);
    }

    private static String message(String old, String replacement) {
        assertTrue(MANY.contains(old), old);
        return dropline.harness.problem.Problems.text(PitText.problems(MANY.replace(old, replacement)));
    }
}
