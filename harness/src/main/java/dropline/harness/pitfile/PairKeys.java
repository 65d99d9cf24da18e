package dropline.harness.pitfile;

import dropline.bus.pit.Gauge;
import dropline.bus.pit.Wire.Common;
import dropline.harness.pitfile.Words.Choices;
import dropline.harness.yaml.Tree;
import java.util.List;

/** The keys of a segment's copper: its cable, the resistors on it, and how far each board is from its neighbour. */
final class PairKeys {
    private static final long LONGEST_MILLIMETRES = 10_000_000;

    // --- transceivers

    static final Key<Double> UNIT_LOAD = Key.optional(
                    "unit-load",
                    Numbers.share(),
                    "its load on the pair in unit loads (TIA-485-A): 1, 1/4, 1/8; 1 where left out")
            .electrical();
    static final Key<Long> EDGE = Key.optional(
                    "edge",
                    Times.time(1, Times.MILLI),
                    "shortest rise or fall time of its driver; unknown where left out")
            .electrical();
    static final Key<Long> OWN_TERMINATOR = Key.optional(
                    "terminator",
                    Numbers.measureOr("none", 0, Measure.resistance(), 1, 100_000),
                    "resistor across the pair that it carries itself; none where left out")
            .electrical();
    static final Key<Long> OWN_BIAS = Key.optional(
                    "bias",
                    Numbers.measureOr("none", 0, Measure.resistance(), 1, 10_000_000),
                    "each of the two resistors with which it biases the pair itself; none where left out")
            .electrical();

    // --- cables and what is fitted to them

    static final Key<Gauge> WIRE = Key.optional(
                    "wire",
                    new Gauges(),
                    "the thickness of its wires, stranded; where left out, their resistance is not counted")
            .electrical();
    static final Key<Long> IMPEDANCE = Key.standard(
                    "impedance",
                    Numbers.measure(Measure.resistance(), 10, 1_000),
                    "120 ohm",
                    "its characteristic impedance, from its maker")
            .electrical();
    static final Key<Long> STEP = Key.optional(
                    "step",
                    Numbers.measure(Measure.length(), 0, LONGEST_MILLIMETRES),
                    "from one stop to the next, where a node does not say after; unknown where left out")
            .electrical();
    static final Key<Long> STUB = Key.optional(
                    "stub",
                    Numbers.measure(Measure.length(), 0, LONGEST_MILLIMETRES),
                    "from the cable to a board, where a node does not say stub; unknown where left out")
            .electrical();
    static final Key<Common> COMMON = Key.optional(
            "common",
            Words.choice(new Choices<Common>().with("yes", Common.YES).with("no", Common.NO)),
            "whether a third wire joins the grounds of all boards; unknown where left out");

    static final Section CABLE =
            Section.one("cable", "what the pair's cable is", List.of(WIRE, IMPEDANCE, STEP, STUB, COMMON));

    static final Key<List<Tree.Scalar>> AT = Key.required(
            "at",
            Words.names("names of nodes of the segment, the word controller among them, or none"),
            "the stops at which they are fitted, beside what modules carry themselves; or none");
    static final Key<Long> TERMINATOR_OHMS = Key.standard(
                    "ohms", Numbers.measure(Measure.resistance(), 1, 100_000), "120 ohm", "each of them")
            .electrical();
    static final Section TERMINATORS = Section.one(
                    "terminators",
                    "resistors fitted across the pair; where left out, one at each end without one is taken for"
                            + " fitted",
                    List.of(AT, TERMINATOR_OHMS))
            .orJust(AT);

    static final Key<Long> BIAS_OHMS = Key.standard(
                    "ohms", Numbers.measure(Measure.resistance(), 1, 100_000), "560 ohm", "each of the two")
            .electrical();
    static final Key<Long> BIAS_VOLTS = Key.standard(
                    "volts", Numbers.measure(Measure.voltage(), 1_000, 24_000), "5 V", "what the upper one is tied to")
            .electrical();
    static final Section BIAS_RESISTORS = Section.one(
                    "bias-resistors",
                    "resistors fitted from D1 up to a supply and from D0 down to common; none, with bias: yes, means"
                            + " that all receivers are fail-safe; where left out, one such pair is taken for fitted"
                            + " where the wiring sheet puts it",
                    List.of(AT, BIAS_OHMS, BIAS_VOLTS))
            .orJust(AT);

    static final Key<Long> AFTER = Key.optional(
                    "after",
                    Numbers.measure(Measure.length(), 0, LONGEST_MILLIMETRES),
                    "how much cable lies between it and the stop before it; its segment's step where left out")
            .electrical();
    static final Key<Long> NODE_STUB = Key.optional(
                    "stub",
                    Numbers.measure(Measure.length(), 0, LONGEST_MILLIMETRES),
                    "how far it is from the cable to the board; its segment's stub where left out")
            .electrical();

    private PairKeys() {}
}
