package dropline.harness.pitfile;

import dropline.bus.pit.Control.Detent;
import java.util.List;

/** The keys of controls that say where they can stand and how they are wired. */
final class ContactKeys {
    static final Key<Integer> POSITIONS =
            Key.optional("positions", Numbers.whole(2, 256), "selector: how many positions, counted from 0");
    static final Key<Long> OPEN_FOR = Key.standard(
                    "open-for",
                    Times.time(0, 10 * Times.SECOND),
                    "0 us",
                    "selector: how long its contacts are open between positions; three-way toggle: how long it is in"
                            + " its centre when thrown right over")
            .figure();
    static final Key<Integer> OPEN_VALUE = Key.optional(
            "open-value",
            Numbers.whole(0, 65535),
            "selector: what the firmware reads while the contacts are open; needed where that lasts longer than"
                    + " debounce");
    static final Key<Integer> ROWS = Key.optional("rows", Numbers.whole(1, 16), "key matrix: rows");
    static final Key<Integer> COLUMNS =
            Key.optional("columns", Numbers.whole(1, 16), "key matrix: columns; at most 16 keys in all");
    static final Key<Long> SCAN = Key.optional(
                    "scan",
                    Times.time(Times.MICRO, 10 * Times.SECOND),
                    "key matrix: from one scan of all rows to the next")
            .figure();
    static final Key<Boolean> DIODES = Key.standard(
            "diodes",
            Words.yesNo(),
            "yes",
            "key matrix: whether each key has a diode; without, keys held at three corners of a rectangle show the"
                    + " fourth");
    static final Key<List<Detent>> DETENTS =
            Key.optional("detents", new Detents(), "lever: where it rests, such as [idle 0, climb 600, full 1000]");

    static final List<Key<?>> ALL = List.of(POSITIONS, OPEN_FOR, OPEN_VALUE, ROWS, COLUMNS, SCAN, DIODES, DETENTS);

    private ContactKeys() {}
}
