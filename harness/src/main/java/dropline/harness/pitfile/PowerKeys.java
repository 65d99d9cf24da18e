package dropline.harness.pitfile;

import dropline.bus.pit.Dimming;
import dropline.bus.pit.Gauge;
import dropline.bus.pit.Inlet.Converter;
import dropline.bus.pit.SupplyTree.Location;
import dropline.harness.pitfile.Words.Choices;
import dropline.harness.yaml.Tree;
import java.util.List;

/** The keys of supplies and their runs of wire, of what boards make of them, and of what parts take by what they do. */
final class PowerKeys {
    // --- supplies and runs

    static final Key<Long> VOLTS = Key.required(
                    "volts", Numbers.measure(Measure.voltage(), 1_000, 60_000), "what it keeps at its terminals")
            .electrical();
    static final Key<Long> RATING = Key.optional(
                    "rating",
                    Numbers.measure(Measure.current(), 1_000, 1_000_000_000),
                    "current its maker allows; unknown where left out")
            .electrical();
    static final Key<Location> LOCATION = Key.standard(
            "location",
            Words.choice(
                    new Choices<Location>().with("external", Location.EXTERNAL).with("usb", Location.USB)),
            "external",
            "whether it is a unit of its own, or the PC or a hub on its lead");

    static final Key<Tree.Scalar> FROM = Key.optional(
            "from",
            new NameAt("the name of a run of the same supply"),
            "the run at whose end it starts; the supply itself where left out");
    static final Key<Gauge> WIRE =
            Key.required("wire", new Gauges(), "the thickness of its wires").electrical();
    static final Key<Boolean> STRANDED = Key.standard(
            "strand",
            Words.choice(new Choices<Boolean>().with("stranded", true).with("solid", false)),
            "stranded",
            "whether its wires are of many thin ones");
    static final Key<Long> LENGTH = Key.required(
                    "length",
                    Numbers.measure(Measure.length(), 0, 1_000_000),
                    "its length one way; the way back is counted by itself")
            .electrical();
    static final Key<Long> JOINTS = Key.optional(
                    "joints",
                    Numbers.measure(Measure.jointResistance(), 0, 10_000),
                    "what its plugs and terminals add, there and back together; nothing where left out")
            .electrical();

    static final Section RUNS = Section.named(
            "runs",
            "the wires that lead on from it, two side by side, by name",
            List.of(FROM, WIRE, STRANDED, LENGTH, JOINTS));
    static final Section SUPPLIES = Section.named(
            "supplies",
            "what feeds the boards, by name; names of supplies and runs are what a node's supply: means",
            List.of(BusKeys.FIGURES_FROM, VOLTS, RATING, LOCATION),
            RUNS);

    // --- boards

    static final Key<Converter> CONVERTER = Key.standard(
            "converter",
            Words.choice(new Choices<Converter>()
                    .with("none", Converter.NONE)
                    .with("linear", Converter.LINEAR)
                    .with("switching", Converter.SWITCHING)),
            "none",
            "what makes its own voltage: nothing, a linear regulator (passes the current on, makes heat of the rest) or"
                    + " a switching one (takes more current as its supply sinks)");
    static final Key<Long> BOARD_VOLTS = Key.standard(
                    "board-volts", Numbers.measure(Measure.voltage(), 1_000, 60_000), "5 V", "what its converter makes")
            .electrical();
    static final Key<Double> EFFICIENCY = Key.standard(
                    "efficiency",
                    Numbers.share(),
                    "0.85",
                    "what of the power a switching converter passes on: 0.85 or 85/100 (common practice)")
            .electrical();
    static final Key<Long> WORKS_DOWN_TO = Key.optional(
                    "works-down-to",
                    Numbers.measure(Measure.voltage(), 0, 60_000),
                    "lowest voltage at its supply terminals at which it works; unknown where left out")
            .electrical();

    static final List<Key<?>> BOARD = List.of(CONVERTER, BOARD_VOLTS, EFFICIENCY, WORKS_DOWN_TO);

    static final Key<Boolean> USB = Key.standard(
            "usb", Words.yesNo(), "no", "whether the board is tied to a USB port as well as to its supply");
    static final Key<Boolean> ISOLATED =
            Key.standard("isolated", Words.yesNo(), "no", "whether that port is isolated from it, or its 5 V wire cut");

    // --- panels and indicators

    static final Key<Boolean> FED_BY = Key.standard(
            "fed-by",
            Words.choice(new Choices<Boolean>().with("board", true).with("supply", false)),
            "board",
            "what its current comes through: the board's converter, at the board's volts, or the supply itself");
    static final Key<Long> REST_DRAWS = Key.optional(
                    "rest-draws",
                    Numbers.measure(Measure.current(), 0, 100_000_000),
                    "what it takes while dark, blank or standing still; where left out, nothing for what lights or"
                            + " flips, as much as draws for what is refreshed or moves")
            .electrical();
    static final Key<Long> START_DRAWS = Key.optional(
                    "start-draws",
                    Numbers.measure(Measure.current(), 0, 100_000_000),
                    "what it takes for a moment as it lights, comes on or begins to move, if that is more than draws")
            .electrical();
    static final Key<Long> START_LASTS = Key.optional(
                    "start-lasts", Times.time(Times.MICRO, 10 * Times.SECOND), "with start-draws: how long")
            .electrical();
    static final Key<Dimming.Curve> CURVE = Key.standard(
            "curve",
            Words.choice(new Choices<Dimming.Curve>()
                    .with("linear", Dimming.Curve.LINEAR)
                    .with("square", Dimming.Curve.SQUARE)
                    .with("cube", Dimming.Curve.CUBE)),
            "linear",
            "backlight zone: how its brightness follows the level");
    static final Key<Integer> BITS =
            Key.standard("bits", Numbers.whole(1, 16), "8", "backlight zone: bits of its dimmer");

    static final List<Key<?>> INDICATOR = List.of(REST_DRAWS, START_DRAWS, START_LASTS, FED_BY, CURVE, BITS);

    private PowerKeys() {}
}
