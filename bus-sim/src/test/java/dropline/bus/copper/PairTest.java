package dropline.bus.copper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Arm;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Fitting;
import dropline.bus.pit.Fitting.PairLoad;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * MODBUS over serial line V1.02: a terminator near each of the two ends, never more than two, never on a derivation
 * (3.4.5); polarisation of 450 to 650 ohm at one place only (3.4.6).
 */
final class PairTest {
    private static final int POLLS = Cable.CONTROLLER;
    private static final PairLoad PLAIN = PairLoad.PLAIN;
    private static final PairLoad TERMINATED = new PairLoad("t", 1, 120, 0);
    private static final PairLoad BIASED = new PairLoad("b", 1, 0, 560);
    private static final PairLoad WEAK = new PairLoad("w", 1, 0, 20_000);

    @Test
    void chainIsTerminatedAtTheControllerAndAtItsLastBoard() {
        Pair pair = only(segment(Cable.chain(3), true, PLAIN, PLAIN, PLAIN), null);

        assertEquals(List.of(POLLS, 2), pair.ends());
        assertEquals(POLLS, pair.biasAt());
        assertFalse(pair.isEnd(1));
    }

    @Test
    void controllerInTheMiddleOfAChainGetsNoTerminator() {
        Cable cable = new Cable(Topology.CHAIN, List.of(new Arm("", List.of(1, POLLS, 0))));

        Pair pair = only(segment(cable, true, PLAIN, PLAIN), null);

        assertEquals(List.of(1, 0), pair.ends());
        assertFalse(pair.isEnd(POLLS));
    }

    @Test
    void moduleInTheMiddleLosesItsTerminatorAndOneAtAnEndKeepsIt() {
        Pair pair = only(segment(Cable.chain(3), true, PLAIN, TERMINATED, TERMINATED), null);

        assertTrue(pair.losesTerminator(1));
        assertFalse(pair.losesTerminator(2));
        assertFalse(pair.losesTerminator(0), "it has none");
    }

    @Test
    void firstModuleWithItsOwnBiasHoldsThePairAndTheNextLosesItsOwn() {
        Pair pair = only(segment(Cable.chain(3), true, PLAIN, BIASED, BIASED), null);

        assertEquals(1, pair.biasAt());
        assertFalse(pair.losesBias(1));
        assertTrue(pair.losesBias(2));
    }

    @Test
    void resistorsTooWeakToHoldAPairNeitherCountNorComeOff() {
        Pair pair = only(segment(Cable.chain(2), true, WEAK, BIASED), null);

        assertEquals(1, pair.biasAt());
        assertFalse(pair.losesBias(0));
    }

    @Test
    void weakResistorsComeOffWhereTogetherTheyWouldHoldAPair() {
        // in parallel: 20 kohm / 31 = 645 ohm, which holds a pair; 20 kohm / 30 = 667 ohm, which does not
        PairLoad[] loads = new PairLoad[31];
        Arrays.fill(loads, WEAK);
        Pair full = only(segment(Cable.chain(31), true, loads), null);
        Pair oneLess = only(segment(Cable.chain(30), true, Arrays.copyOf(loads, 30)), null);

        assertEquals(645.16, full.weakBiasOhms(), 0.005);
        assertTrue(full.isWeakBiasStrongTogether());
        assertEquals(List.of(30), full.stops().stream().filter(full::losesBias).toList(), "only as many as must");
        assertFalse(oneLess.isWeakBiasStrongTogether());
        assertEquals(0, oneLess.stops().stream().filter(oneLess::losesBias).count());
    }

    @Test
    void weakerModuleBehindOneThatMustComeOffMayStay() {
        // 700 || 700 ohm = 350 ohm; 700 || 20000 ohm = 676 ohm
        PairLoad strong = new PairLoad("s", 1, 0, 700);
        Pair pair = only(segment(Cable.chain(3), true, strong, strong, WEAK), null);

        assertEquals(List.of(1), pair.stops().stream().filter(pair::losesBias).toList());
    }

    @Test
    void pairWithoutWeakResistorsHasNoneTogether() {
        Pair pair = only(segment(Cable.chain(2), true, PLAIN, BIASED), null);

        assertEquals(Double.POSITIVE_INFINITY, pair.weakBiasOhms());
        assertFalse(pair.isWeakBiasStrongTogether());
    }

    @Test
    void whereNothingHoldsThePairNothingComesOff() {
        Pair pair = only(segment(Cable.chain(2), false, BIASED, BIASED), null);

        assertNull(pair.biasAt());
        assertFalse(pair.losesBias(1));
    }

    @Test
    void armsThatAreJoinedAreOnePairWithTwoTerminatorsHoweverManyThereAre() {
        Segment star = segment(star(List.of(0), List.of(1, 2), List.of(3, 4)), true, five());

        Pair pair = only(star, Hub.Kind.SPLITTER);

        assertEquals(List.of(2, 4), pair.ends(), "the last boards of the two arms with the most");
        assertTrue(pair.isBranched());
        assertFalse(pair.isEnd(POLLS));
    }

    @Test
    void twoJoinedArmsAreALineThroughTheMiddle() {
        Pair pair = only(segment(star(List.of(0, 1), List.of(2)), true, PLAIN, PLAIN, PLAIN), null);

        assertEquals(List.of(1, 2), pair.ends());
        assertFalse(pair.isBranched());
    }

    @Test
    void eachPortOfAHubOfTransceiversIsAPairOfItsOwn() {
        Segment star = segment(star(List.of(0), List.of(1, 2), List.of(3, 4)), true, five());

        List<Pair> pairs = Pair.of(pit(star, Hub.Kind.TRANSCEIVERS), 0);

        assertEquals(
                List.of(List.of(POLLS, 0), List.of(POLLS, 2), List.of(POLLS, 4)),
                pairs.stream().map(Pair::ends).toList());
        assertEquals(
                List.of(POLLS, POLLS, POLLS), pairs.stream().map(Pair::biasAt).toList());
    }

    @Test
    void boardStraightOnUsbHasNoPair() {
        Segment direct = segment(new Cable(Topology.DIRECT, Cable.chain(1).arms()), true, PLAIN);

        assertEquals(List.of(), Pair.of(pit(direct, null), 0));
    }

    private static PairLoad[] five() {
        return new PairLoad[] {PLAIN, PLAIN, PLAIN, PLAIN, PLAIN};
    }

    @SafeVarargs
    private static Cable star(List<Integer>... arms) {
        List<Arm> made = new ArrayList<>();
        for (List<Integer> stops : arms) {
            made.add(new Arm("arm " + made.size(), stops));
        }
        return new Cable(Topology.STAR, made);
    }

    private static Segment segment(Cable cable, boolean biased, PairLoad... loads) {
        List<Node> nodes = new ArrayList<>();
        for (PairLoad load : loads) {
            int address = nodes.size() + 1;
            nodes.add(new Node(
                    "node " + address,
                    address,
                    1,
                    Pits.profile(100 * Pits.MICRO),
                    List.of(),
                    List.of(),
                    new Fitting("", "", "", "", "", Draw.UNKNOWN, load)));
        }
        Sized sized = new Sized(10, List.of(new Sized.ReplyChoice(10, 1)), 6, 4, 10, 0);
        return new Segment(
                "bus",
                500_000,
                CharacterFormat.EIGHT_N_ONE,
                sized,
                Pits.controller(StateDelivery.BROADCAST, Pits.MILLI, 0),
                nodes,
                biased,
                cable);
    }

    private static Pair only(Segment segment, Hub.@Nullable Kind hub) {
        List<Pair> pairs = Pair.of(pit(segment, hub), 0);
        assertEquals(1, pairs.size());
        return pairs.get(0);
    }

    private static Pit pit(Segment segment, Hub.@Nullable Kind hub) {
        List<Hub> hubs = hub == null ? List.of() : List.of(new Hub("hub", hub, 0, List.of(0)));
        return new Pit("pit", 0, null, List.of(), List.of(segment), hubs);
    }
}
