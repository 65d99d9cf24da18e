package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Fitting;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.problem.Problem;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Hubs, cables and what one needs to know to wire a node, as a pit file says it. */
final class CableTest {
    private static final String LEFT = "controller: {hub: centre}";

    @Test
    void cableIsAChainInTheOrderOfTheFileThatBeginsAtTheController() {
        Segment segment = PitText.understood(PitText.SMALL).segments().get(0);

        assertEquals(Cable.chain(2), segment.cable());
    }

    @Test
    void orderOnTheCableMayDifferFromThePollOrder() {
        Segment segment = left("controller: {hub: centre}\n    order: [b, controller, a]");

        assertEquals(
                List.of(1, Cable.CONTROLLER, 0), segment.cable().arms().get(0).stops());
        assertEquals("a", segment.nodes().get(0).name(), "polled in the order of the file all the same");
        assertEquals(
                List.of(Cable.CONTROLLER, 1, 0),
                left("controller: {hub: centre}\n    order: [b, a]")
                        .cable()
                        .arms()
                        .get(0)
                        .stops());
    }

    @Test
    void armsOfAStarComeInTheOrderInWhichTheyAreFirstNamed() {
        String star = PitText.with(LEFT, "topology: star\n    " + LEFT)
                .replace("address: 1,", "address: 1, arm: up,")
                .replace("address: 2,", "address: 2, arm: down,");

        Segment segment = PitText.understood(star).segments().get(0);

        assertEquals(
                List.of(new Cable.Arm("up", List.of(0)), new Cable.Arm("down", List.of(1))),
                segment.cable().arms());
    }

    @Test
    void segmentsOfOneBoardAreItsPortsAndShareItsTurn() {
        String text = PitText.with("{adapter: native USB}", "{adapter: native USB, turn: 250 us}")
                .replace("nodes:\n", "  right: {baud: 500 kbaud, controller: {hub: centre}}\nnodes:\n")
                .replace("b: {segment: left", "b: {segment: right");

        Pit pit = PitText.understood(text);

        assertEquals(List.of(new Hub("centre", Hub.Kind.BOARD, 250_000, List.of(0, 1))), pit.hubs());
        assertEquals(List.of(0, 1), pit.runsWith(1));
    }

    @Test
    void wiringFactsOfANodeComeFromItselfItsBoardAndItsTransceiver() {
        String text = """
            boards:
              small: {draws: 35 mA}
            transceivers:
              red: {terminator: 120 ohm, bias: 560 ohm, unit-load: 1/8}
            """
                + PitText.with(
                        "address: 1,",
                        "address: 1, supply: left 12 V, connector: 5-way, firmware: v3, passport: a.yaml, board: small,"
                                + " transceiver: red,");

        Node a = PitText.understood(text).segments().get(0).nodes().get(0);

        assertEquals(
                new Fitting(
                        "small",
                        "left 12 V",
                        "5-way",
                        "v3",
                        "a.yaml",
                        new Draw(35_000, false),
                        new Fitting.PairLoad("red", 0.125, 120, 560)),
                a.fitting());
        assertEquals(
                Fitting.PLAIN,
                PitText.understood(text).segments().get(0).nodes().get(1).fitting());
    }

    @Test
    void boardStraightOnUsbHasNoDriverToSwitch() {
        Segment desk =
                PitText.understood(direct("adapter: native USB", "")).segments().get(1);

        assertEquals(Cable.Topology.DIRECT, desk.cable().topology());
        assertEquals(0, desk.nodes().get(0).profile().enableLeadNanos());
        assertTrue(PitText.understood(PitText.SMALL)
                        .segments()
                        .get(0)
                        .nodes()
                        .get(1)
                        .profile()
                        .enableLeadNanos()
                > 0);
    }

    @Test
    void everythingThatBelongsToAPairIsRefusedOnABoardStraightOnUsb() {
        String text = direct("hub: centre, enable-lead: 1 us", ", bias: no, order: [b]")
                .replace("{segment: desk,", "{segment: desk, arm: up,");

        assertEquals(
                List.of(
                        "hub CONFLICT",
                        "enable-lead UNUSED_KEY",
                        "bias UNUSED_KEY",
                        "order UNUSED_KEY",
                        "arm UNUSED_KEY"),
                codes(text));
    }

    @Test
    void starWantsAnArmForEveryNodeAndAChainWantsNone() {
        assertEquals(
                List.of("arm MISSING_KEY", "arm MISSING_KEY"),
                codes(PitText.with(LEFT, "topology: star\n    " + LEFT)));
        assertEquals(List.of("arm UNUSED_KEY"), codes(PitText.with("address: 1,", "address: 1, arm: up,")));
    }

    @Test
    void turnIsForBoards() {
        assertEquals(
                List.of("turn UNUSED_KEY"),
                codes(PitText.with("{adapter: native USB}", "{kind: splitter, turn: 1 ms, adapter: native USB}")));
    }

    @Test
    void portsOfTransceiversAreOneSegmentToo() {
        String text = PitText.with("{adapter: native USB}", "{kind: transceivers, adapter: native USB}")
                .replace("nodes:\n", "  right: {baud: 500 kbaud, controller: {hub: centre}}\nnodes:\n")
                .replace("b: {segment: left", "b: {segment: right");

        assertEquals(List.of("hub HUB_SHARED"), codes(text));
    }

    @Test
    void orderNamesNodesOfItsSegmentOnly() {
        assertEquals(List.of("order UNKNOWN_NAME"), codes(PitText.with(LEFT, LEFT + "\n    order: [a, b, nowhere]")));
        String other = direct("adapter: native USB", "").replace(LEFT, LEFT + "\n    order: [a, b]");
        assertEquals(List.of("order WRONG_ORDER"), codes(other));
    }

    /** The small pit with its second node on a segment of its own, straight on USB. */
    private static String direct(String controller, String more) {
        return PitText.with(
                        "nodes:\n",
                        "  desk: {baud: 500 kbaud, topology: direct, controller: {" + controller + "}" + more
                                + "}\nnodes:\n")
                .replace("b: {segment: left", "b: {segment: desk");
    }

    private static Segment left(String controller) {
        return PitText.understood(PitText.with(LEFT, controller)).segments().get(0);
    }

    private static List<String> codes(String text) {
        return PitText.problems(text).stream().map(CableTest::code).toList();
    }

    private static String code(Problem problem) {
        return problem.key() + " " + problem.code();
    }
}
