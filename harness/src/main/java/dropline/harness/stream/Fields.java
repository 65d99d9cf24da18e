package dropline.harness.stream;

import dropline.harness.recording.CellParser;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Puts what stands in a message's fields into the state, each by what its name is for; counts what is no number. */
final class Fields {
    private static final int EXAMPLES = 5;
    private static final int LONGEST_EXAMPLE = 40;
    private static final double FURTHEST_NANOS = Long.MAX_VALUE / 2.0;

    private final Names names = new Names();
    private final State state = new State();
    private final CellParser cells = new CellParser();
    private final BitSet valued = new BitSet();
    private final BitSet noNumbers = new BitSet();
    private final List<String> examples = new ArrayList<>();
    private long noNumberCount;

    Names names() {
        return names;
    }

    State state() {
        return state;
    }

    /** How many names have had a value that is neither the stream's own time nor its number. */
    int signals() {
        return valued.cardinality();
    }

    /** Fields left out for being no number. */
    long noNumbers() {
        return noNumberCount;
    }

    /** The first few of them, each of another name. */
    List<String> examples() {
        return List.copyOf(examples);
    }

    /** A field as text; a blank one says nothing. */
    void text(int name, char[] chars, int from, int to) {
        CellParser.Kind kind = cells.parse(chars, from, to - from);
        if (name == Names.NONE || kind == CellParser.Kind.MISSING) {
            return;
        }
        if (kind != CellParser.Kind.NUMBER) {
            noNumber(name, new String(chars, from, Math.min(LONGEST_EXAMPLE, to - from)));
        } else if (names.isTime(name)) {
            long nanos = cells.nanos(names.timeUnitNanos());
            if (nanos == Long.MIN_VALUE) {
                noNumber(name, "beyond any time");
            } else {
                state.time(nanos);
            }
        } else {
            number(name, cells.value());
        }
    }

    /** A field as a number. */
    void number(int name, double value) {
        if (name == Names.NONE) {
            return;
        }
        if (!Double.isFinite(value)) {
            noNumber(name, String.valueOf(value));
        } else if (names.isTime(name)) {
            time(name, value, names.timeUnitNanos());
        } else if (names.isSequence(name) && value >= 0 && value < 0x1p53 && value == Math.rint(value)) {
            state.sequence((long) value);
        } else {
            valued.set(name);
            state.value(name, value);
        }
    }

    /** The stream's own time in units of so many ns. */
    void time(int name, double value, long unitNanos) {
        double nanos = Math.rint(value * unitNanos);
        if (Math.abs(nanos) < FURTHEST_NANOS) {
            state.time((long) nanos);
        } else {
            noNumber(name, value + ", beyond any time");
        }
    }

    void noNumber(int name, String found) {
        noNumberCount++;
        if (name != Names.NONE && !noNumbers.get(name) && examples.size() < EXAMPLES) {
            noNumbers.set(name);
            examples.add(names.name(name) + "=" + found);
        }
    }
}
