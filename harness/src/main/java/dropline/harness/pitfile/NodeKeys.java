package dropline.harness.pitfile;

import java.util.List;

/** The keys of nodes and of the hardware they are made of: boards and transceivers. */
final class NodeKeys {
    static final Key<Long> DRAWS = Key.optional(
            "draws",
            Numbers.measure(Measure.current(), 0, 100_000_000),
            "current it takes from its supply; unknown where left out");
    static final Key<Integer> UARTS =
            Key.optional("uarts", Numbers.whole(1, 16), "serial ports it has; unknown where left out");

    private static final List<Key<?>> BOARD_KEYS = List.of(BusKeys.FIGURES_FROM, DRAWS, UARTS);
    static final Section BOARDS = Section.named(
                    "boards", "microcontroller boards, by name", BOARD_KEYS, BusKeys.PROFILE)
            .like(Shelf.BOARDS)
            .orName();
    static final Section BOARD = Section.one(
                    "board",
                    "the microcontroller board: the name of one, or its keys; a node's profile that is like nothing"
                            + " else is like its board's",
                    BOARD_KEYS,
                    BusKeys.PROFILE)
            .like(Shelf.BOARDS)
            .orName();

    static final Key<Double> UNIT_LOAD = Key.optional(
            "unit-load",
            Numbers.share(),
            "its load on the pair in unit loads (TIA-485-A): 1, 1/4, 1/8; 1 where left out");
    static final Key<Long> EDGE = Key.optional(
            "edge", Times.time(1, Times.MILLI), "shortest rise or fall time of its driver; unknown where left out");
    static final Key<Long> TERMINATOR = Key.optional(
            "terminator",
            Numbers.measureOr("none", 0, Measure.resistance(), 1, 100_000),
            "resistor across the pair that it carries itself; none where left out");
    static final Key<Long> OWN_BIAS = Key.optional(
            "bias",
            Numbers.measureOr("none", 0, Measure.resistance(), 1, 10_000_000),
            "each of the two resistors with which it biases the pair itself; none where left out");

    private static final List<Key<?>> TRANSCEIVER_KEYS = List.of(
            BusKeys.FIGURES_FROM,
            BusKeys.DRIVER,
            BusKeys.RECEIVER,
            BusKeys.ENABLE_LEAD,
            BusKeys.RELEASE_TAIL,
            UNIT_LOAD,
            EDGE,
            TERMINATOR,
            OWN_BIAS);
    static final Section TRANSCEIVERS = Section.named("transceivers", "RS-485 transceivers, by name", TRANSCEIVER_KEYS)
            .like(Shelf.TRANSCEIVERS)
            .orName();
    static final Section TRANSCEIVER = Section.one(
                    "transceiver",
                    "the RS-485 transceiver: the name of one, or its keys, which count before its profile's",
                    TRANSCEIVER_KEYS)
            .like(Shelf.TRANSCEIVERS)
            .orName();

    static final Key<Tree.Scalar> NODE_SEGMENT =
            Key.required("segment", new NameAt("the name of a segment"), "the segment it is on");
    static final Key<Integer> ADDRESS =
            Key.required("address", Numbers.whole(1, 247), "its address, one for each node of a segment");
    static final Key<Integer> WEIGHT =
            Key.standard("weight", Numbers.whole(1, 16), "1", "how often it is polled in a cycle");

    static final Key<Registers.Map> REGISTERS = Key.optional(
            "registers",
            new Registers(),
            "with modbus-rtu and addressed state, the registers its signals lie in; one that is left out lies in the"
                    + " register of its own number");

    static final Section NODES = Section.named(
                    "nodes",
                    "the microcontroller boards, by name, polled in the order of the file",
                    List.of(NODE_SEGMENT, ADDRESS, WEIGHT, REGISTERS),
                    BOARD,
                    BusKeys.PROFILE.required(),
                    TRANSCEIVER)
            .like(Shelf.NODES)
            .required();

    private NodeKeys() {}
}
