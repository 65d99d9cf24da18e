package dropline.harness.pitfile;

import dropline.harness.yaml.Tree;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The keys of a whole pit file. Parts have declarations of their own: {@link BusKeys}, {@link PanelKeys}. */
final class Schema {
    static final Key<String> NAME = Key.standard("pit", Words.text("text"), "pit", "what you call the pit");

    static final Key<List<Tree.Scalar>> INCLUDE = Key.optional(
            "include",
            Words.names("a file, or a list of files"),
            "other pit files whose parts count as if they were written here; paths count from the folder of this file");

    static final Key<Long> STATE_RATE = Key.standard(
            "state-rate",
            Times.periodOr("as recorded"),
            "as recorded",
            "how often the host sends its state; as recorded: every row of the recording is a state");

    static final Key<Long> STARTS_AFTER = Key.optional(
            "starts-after",
            Times.time(0, Times.HOUR),
            "power-up: from the supplies' being on to its first state; where left out, once every board is up and every"
                    + " zero found, since the computer comes last");

    static final Section HOST = Section.one(
            "host", "the PC that runs the simulation and sends its state", List.of(STATE_RATE, STARTS_AFTER));

    static final Key<TimeUnit> RECORDING_TIME = Key.optional(
            "time",
            Words.choice(new Words.Choices<TimeUnit>()
                    .with("s", TimeUnit.SECONDS)
                    .with("ms", TimeUnit.MILLISECONDS)
                    .with("us", TimeUnit.MICROSECONDS)),
            "unit of a recording's times, where it is text, over what its heading says; where left out, the heading's,"
                    + " else s");

    static final Section RECORDING =
            Section.one("recording", "how the pit's recordings are to be understood", List.of(RECORDING_TIME));

    static final Key<Long> EVERY = Key.required(
            "every", Times.time(Times.MILLI, Times.HOUR), "from one state to the next, the first after one");
    static final Key<Integer> CHANGES = Key.required(
            "changes",
            Numbers.whole(0, 100_000),
            "signals that change with each state; signals take turns in the order of the file");

    static final Section LOAD = Section.one("load", "a load to simulate without a recording", List.of(EVERY, CHANGES));

    static final Key<String> UNIT =
            Key.standard("unit", Words.text("text, such as kt or deg"), "", "the unit, as you write it");
    static final Key<Numbers.Span> RANGE = Key.required(
            "range", Numbers.span(), "least and greatest value; where it wraps, the ends are the same place");
    static final Key<Double> RESOLUTION = Key.standard(
            "resolution", Numbers.number(), "1", "the smallest difference that counts as a change, above 0");
    static final Key<Boolean> WRAPS = Key.standard(
            "wraps", Words.yesNo(), "no", "whether the greatest value is the least again, as for a heading");
    static final Key<String> COLUMN =
            Key.optional("column", Words.text("text"), "the recording's column; the signal's own name where left out");
    static final Key<Double> SCALE =
            Key.standard("scale", Numbers.number(), "1", "value = column x scale + offset; not 0");
    static final Key<Double> OFFSET = Key.standard("offset", Numbers.number(), "0", "see scale");
    static final Key<Integer> NUMBER =
            Key.required("number", Numbers.whole(0, 65535), "number on the wire, one for each signal");

    static final Section SIGNALS = Section.named(
            "signals",
            "the simulator's variables, by name",
            List.of(UNIT, RANGE, RESOLUTION, WRAPS, COLUMN, SCALE, OFFSET, NUMBER));

    static final Section ROOT = Section.one(
            "",
            "",
            List.of(NAME, INCLUDE),
            HOST,
            RECORDING,
            LOAD,
            BusKeys.ADAPTERS,
            BusKeys.HUBS,
            PowerKeys.SUPPLIES,
            PanelKeys.BUDGETS,
            BusKeys.PROFILES,
            NodeKeys.BOARDS,
            NodeKeys.TRANSCEIVERS,
            SIGNALS,
            BusKeys.SEGMENTS,
            NodeKeys.NODES,
            PanelKeys.PANELS,
            PanelKeys.KINDS);

    /** The groups that are only there for others to be like. */
    static final List<String> SHELVES = Stream.of(Shelf.values())
            .map(shelf -> shelf.path().split("\\.")[0])
            .distinct()
            .toList();

    private Schema() {}
}
