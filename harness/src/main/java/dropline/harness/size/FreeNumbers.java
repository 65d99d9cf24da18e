package dropline.harness.size;

import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import java.util.BitSet;

/** Numbers nobody has yet, handed out from the least. */
final class FreeNumbers {
    /** MODBUS over serial line V1.02, 2.2: nodes have 1..247; Dropline's own protocol has the same. */
    static final int LAST_ADDRESS = 247;

    private static final int LAST_NUMBER = 65_535;

    private final BitSet taken = new BitSet();
    private final int last;

    private FreeNumbers(int last) {
        this.last = last;
    }

    /** For signals of a pit; one that takes two registers has the next number as well. */
    static FreeNumbers of(Pit pit) {
        FreeNumbers free = new FreeNumbers(LAST_NUMBER);
        for (Signal signal : pit.signals()) {
            free.taken.set(signal.number(), signal.number() + (signal.valueBytes() + 1) / 2);
        }
        return free;
    }

    /** For nodes of a segment. */
    static FreeNumbers ofAddresses(Segment segment) {
        FreeNumbers free = new FreeNumbers(LAST_ADDRESS);
        free.taken.set(0);
        segment.nodes().stream().mapToInt(Node::address).forEach(free.taken::set);
        return free;
    }

    /** How many are left. */
    int left() {
        return last + 1 - taken.cardinality();
    }

    /** The least from which so many in a row are free; they are then taken. */
    int next(int inARow) {
        int from = taken.nextClearBit(0);
        while (taken.nextSetBit(from) >= 0 && taken.nextSetBit(from) < from + inARow) {
            from = taken.nextClearBit(taken.nextSetBit(from));
        }
        if (from + inARow > last + 1) {
            throw new IllegalStateException("no number is left: last=" + last);
        }
        taken.set(from, from + inARow);
        return from;
    }
}
