package dropline.harness.capture;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import java.util.Arrays;
import java.util.List;

/**
 * What a segment's drivers put on the pair. A driver that is off puts nothing there; nobody driving, the pair rests at
 * one; drivers that disagree leave it undefined.
 *
 * <p>Wires by number: the pair, the controller's transmissions, the nodes' transmissions, then each talker's driver
 * enable, the controller's first.
 */
final class PairLevels {
    static final int PAIR = 0;
    static final int FROM_CONTROLLER = 1;
    static final int FROM_NODES = 2;
    static final int ENABLES = 3;

    private final Talkers talkers;
    private final int[] on;
    private final int[] level;
    private final boolean[] inverted;
    private final List<Fault> exchanged;
    private final char[] known;

    /** @param faults what the run is given: exchanged wires turn a node's levels round */
    PairLevels(Talkers talkers, List<Fault> faults) {
        this.talkers = talkers;
        exchanged = faults.stream()
                .filter(fault -> fault.kind() == FaultKind.SWAPPED_PAIR)
                .toList();
        int count = talkers.indices().size();
        on = new int[count];
        level = new int[count];
        inverted = new boolean[count];
        Arrays.fill(level, 1);
        known = new char[wires()];
        Arrays.fill(known, '0');
        known[PAIR] = '1';
        known[FROM_CONTROLLER] = '1';
        known[FROM_NODES] = '1';
    }

    int wires() {
        return ENABLES + on.length;
    }

    /** Level of a wire as last told. */
    char known(int wire) {
        return known[wire];
    }

    /** Takes a change; what follows from it is seen at the next {@link #update}. */
    void take(Change change) {
        int position = talkers.position(change.talker());
        switch (change.what()) {
            case DRIVER_ON -> on[position] = 1;
            case DRIVER_OFF -> on[position] = 0;
            case ZERO -> level[position] = 0;
            case ONE -> level[position] = 1;
        }
        inverted[position] = false;
        for (Fault fault : exchanged) {
            inverted[position] |= fault.node() == change.talker() && fault.spans(change.atNanos());
        }
    }

    /** Tells the wires that differ from what was last told. */
    void update(WireChange told) {
        int zeros = 0;
        int ones = 0;
        for (int i = 1; i < on.length; i++) {
            zeros += drives(i, 0) ? 1 : 0;
            ones += drives(i, 1) ? 1 : 0;
        }
        tell(FROM_NODES, resolved(zeros, ones), told);
        boolean zero = drives(0, 0);
        boolean one = drives(0, 1);
        tell(FROM_CONTROLLER, resolved(zero ? 1 : 0, one ? 1 : 0), told);
        tell(PAIR, resolved(zeros + (zero ? 1 : 0), ones + (one ? 1 : 0)), told);
        for (int i = 0; i < on.length; i++) {
            tell(ENABLES + i, on[i] > 0 ? '1' : '0', told);
        }
    }

    /** Hears of a wire that changes. */
    @FunctionalInterface
    interface WireChange {
        void to(int wire, char level);
    }

    private boolean drives(int position, int wanted) {
        int puts = inverted[position] ? 1 - level[position] : level[position];
        boolean leaves =
                level[position] == 1 && talkers.zerosOnly(talkers.indices().get(position));
        return on[position] > 0 && puts == wanted && !leaves;
    }

    private static char resolved(int zeros, int ones) {
        if (zeros > 0 && ones > 0) {
            return 'x';
        }
        return zeros > 0 ? '0' : '1';
    }

    private void tell(int wire, char now, WireChange told) {
        if (known[wire] != now) {
            known[wire] = now;
            told.to(wire, now);
        }
    }
}
