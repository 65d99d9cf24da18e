package dropline.harness.pitfile;

import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The keys of nodes and of the hardware they are made of: boards and transceivers. */
final class NodeKeys {
    private static final Pattern ADDRESS_RANGE = Pattern.compile("(\\d{1,4})\\s*\\.\\.\\s*(\\d{1,4})");

    static final Key<Long> DRAWS = Key.optional(
                    "draws",
                    Numbers.measure(Measure.current(), 0, 100_000_000),
                    "current it takes from its supply, at the supply's volts; unknown where left out")
            .electrical();
    static final Key<Integer> UARTS =
            Key.optional("uarts", Numbers.whole(1, 16), "serial ports it has; unknown where left out");

    private static final List<Key<?>> BOARD_KEYS = Stream.concat(
                    Stream.<Key<?>>of(BusKeys.FIGURES_FROM, DRAWS, UARTS), PowerKeys.BOARD.stream())
            .toList();
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

    private static final List<Key<?>> TRANSCEIVER_KEYS = List.of(
            BusKeys.FIGURES_FROM,
            BusKeys.DRIVER,
            BusKeys.RECEIVER,
            BusKeys.ENABLE_LEAD,
            BusKeys.RELEASE_TAIL,
            PairKeys.UNIT_LOAD,
            PairKeys.EDGE,
            PairKeys.OWN_TERMINATOR,
            PairKeys.OWN_BIAS);
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
    static final Key<Integer> ADDRESS = Key.required(
            "address", Numbers.whole(1, 247), "its address, one for each node of a segment; or addresses, for several");
    /** From one address to another, both meant. */
    record Addresses(int first, int last) {}

    static final Key<Addresses> ADDRESSES = Key.optional(
            "addresses",
            new Type.OfText<>("first..last address, such as 1..9") {
                @Override
                public Form form() {
                    return new Form.Pattern(ADDRESS_RANGE.pattern());
                }

                @Override
                Optional<Addresses> readText(Tree.Scalar text, String key, Report report) {
                    Matcher matcher = ADDRESS_RANGE.matcher(text.text().strip());
                    if (!matcher.matches()) {
                        report.at(text, key, PitCode.WRONG_TYPE, words(), "write addresses: 1..9");
                        return Optional.empty();
                    }
                    int first = Integer.parseInt(matcher.group(1));
                    int last = Integer.parseInt(matcher.group(2));
                    if (first < 1 || Math.max(first, last) > 247) {
                        report.at(text, key, PitCode.OUT_OF_RANGE, "addresses of 1..247", null);
                        return Optional.empty();
                    }
                    if (last < first) {
                        String fix = "write addresses: " + last + ".." + first;
                        report.at(
                                text, key, PitCode.IMPOSSIBLE_RANGE, "a range that ends where it begins or later", fix);
                        return Optional.empty();
                    }
                    return Optional.of(new Addresses(first, last));
                }
            },
            "in place of address: stands for a node of each of these addresses, named NAME 1, NAME 2 and so on; a panel"
                    + " with node: NAME stands for one on each, # in its texts being the address");

    static final Key<Integer> WEIGHT =
            Key.standard("weight", Numbers.whole(1, 16), "1", "how often it is polled in a cycle");

    static final Key<Registers.Map> REGISTERS = Key.optional(
            "registers",
            new Registers(),
            "with modbus-rtu and addressed state, the registers its signals lie in; one that is left out lies in the"
                    + " register of its own number");

    static final Key<String> ARM = Key.optional(
            "arm",
            Words.text("text"),
            "the arm it is on, where its segment is a star: what you call that port or cable");
    static final Key<Tree.Scalar> SUPPLY = Key.optional(
            "supply",
            new NameAt("text; the name of a supply or of one of its runs, if the pit has supplies"),
            "what feeds it: the supply, or the run of wire at whose end it hangs");
    static final Key<String> CONNECTOR =
            Key.optional("connector", Words.text("text"), "how it is plugged in, for the wiring sheet");
    static final Key<String> PASSPORT =
            Key.optional("passport", Words.text("text"), "the file of its measured timing, for its card");

    static final Section NODES = Section.named(
                    "nodes",
                    "the microcontroller boards, by name, polled in the order of the file",
                    List.of(
                            NODE_SEGMENT,
                            ADDRESS,
                            ADDRESSES,
                            WEIGHT,
                            REGISTERS,
                            ARM,
                            PairKeys.AFTER,
                            PairKeys.NODE_STUB,
                            SUPPLY,
                            PowerKeys.USB,
                            PowerKeys.ISOLATED,
                            CONNECTOR,
                            PASSPORT),
                    BOARD,
                    BusKeys.PROFILE.required(),
                    TRANSCEIVER,
                    ProgramKeys.FIRMWARE)
            .like(Shelf.NODES)
            .required();

    private NodeKeys() {}
}
