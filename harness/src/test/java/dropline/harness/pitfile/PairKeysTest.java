package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Fitted;
import dropline.bus.pit.Fitted.BiasResistors;
import dropline.bus.pit.Fitted.Terminators;
import dropline.bus.pit.Fitting.PairLoad;
import dropline.bus.pit.Fitting.Reach;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Wire;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A segment's cable, the resistors on it and its controller's transceiver, as written. */
final class PairKeysTest {
    private static final String LEFT = "controller: {hub: centre}";

    @Test
    void cableSaysWhatItIsAndHowFarItReaches() {
        Segment segment =
                left("cable: {wire: 24 AWG, impedance: 100 ohm, step: about 40 cm, stub: 15 cm, common: yes}");

        Wire wire = segment.cable().wire();
        // solid 24 AWG is 25.67 ohm per 1000 ft, 84.2 ohm/km, at 20 degC (cirris.com wire table); strands add some 2 %
        assertEquals(0.0842 * 1.0234, wire.ohmsPerMetre(), 0.0002);
        assertEquals(100, wire.impedanceOhms());
        assertEquals(0.4, wire.stepMetres(), 1e-12);
        assertEquals(0.15, wire.stubMetres(), 1e-12);
        assertEquals(Wire.Common.YES, wire.common());
    }

    @Test
    void whatNobodySaysIsUnknown() {
        Segment segment = left("");

        assertEquals(Wire.UNKNOWN, segment.cable().wire());
        assertEquals(Fitted.UNSTATED, segment.cable().fitted());
        assertEquals(Reach.AS_THE_SEGMENT, segment.nodes().get(0).fitting().reach());
    }

    @Test
    void nodeSaysItsOwnLengths() {
        Segment segment = PitText.understood(PitText.with("address: 1,", "address: 1, after: 2 m, stub: 5 cm,"))
                .segments()
                .get(0);

        assertEquals(new Reach(2, 0.05), segment.nodes().get(0).fitting().reach());
    }

    @Test
    void resistorsAreWhereTheyAreSaidToBe() {
        Fitted fitted = left("terminators: {at: [controller, b], ohms: 150 ohm}\n"
                        + "    bias-resistors: {at: a, ohms: about 470 ohm, volts: 3.3 V}")
                .cable()
                .fitted();

        assertEquals(new Terminators(true, List.of(Cable.CONTROLLER, 1), 150), fitted.terminators());
        assertEquals(new BiasResistors(true, List.of(0), 470, 3.3), fitted.bias());
    }

    @Test
    void noneIsNoneAndNotUnsaid() {
        Fitted fitted =
                left("terminators: none\n    bias-resistors: none").cable().fitted();

        assertTrue(fitted.terminators().stated() && fitted.terminators().at().isEmpty());
        assertTrue(fitted.bias().stated() && fitted.bias().at().isEmpty());
    }

    @Test
    void controllerHasATransceiverOfItsOwn() {
        Segment segment = PitText.understood(
                        PitText.with(LEFT, "controller: {hub: centre, transceiver: module with resistors}"))
                .segments()
                .get(0);

        assertEquals(
                new PairLoad("module with resistors", 1, 120, 20_000, 15),
                segment.cable().fitted().controller());
    }

    @Test
    void edgeOfATransceiverIsKept() {
        Segment segment = PitText.understood(
                        PitText.with("address: 1,", "address: 1, transceiver: slow edge eighth load,"))
                .segments()
                .get(0);

        assertEquals(100, segment.nodes().get(0).fitting().pairLoad().edgeNanos());
    }

    @Test
    void stopsAreNodesOfTheSegmentOnceEach() {
        assertEquals(List.of("at UNKNOWN_NAME"), codes("terminators: {at: [controller, c]}"));
        assertEquals(List.of("at DUPLICATE_NAME"), codes("terminators: {at: [a, a]}"));
        assertEquals(List.of("at MISSING_KEY"), codes("bias-resistors: {ohms: 560 ohm}"));
    }

    @Test
    void biasThatIsSaidNotToBeThereHasNoResistors() {
        assertEquals(List.of("bias-resistors CONFLICT"), codes("bias: no\n    bias-resistors: {at: a}"));
        assertEquals(false, left("bias: no\n    bias-resistors: none").biased());
    }

    @Test
    void boardStraightOnUsbHasNoCable() {
        String text = PitText.with(
                        "nodes:\n",
                        "  desk: {baud: 500 kbaud, topology: direct, controller: {adapter: native USB},"
                                + " cable: {common: yes}, terminators: none, bias-resistors: none}\nnodes:\n")
                .replace("b: {segment: left", "b: {segment: desk");

        assertEquals(
                List.of("cable UNUSED_KEY", "terminators UNUSED_KEY", "bias-resistors UNUSED_KEY"),
                PitText.problems(text).stream()
                        .map(p -> p.key() + " " + p.code())
                        .toList());
    }

    private static Segment left(String more) {
        return PitText.understood(PitText.with(LEFT, LEFT + "\n    " + more))
                .segments()
                .get(0);
    }

    private static List<String> codes(String more) {
        return PitText.problems(PitText.with(LEFT, LEFT + "\n    " + more)).stream()
                .map(problem -> problem.key() + " " + problem.code())
                .toList();
    }
}
