package dropline.scenarios.firmware;

import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.run.LaneRun;
import dropline.bus.trace.TraceSink;
import dropline.harness.fault.FaultOptions;
import dropline.harness.pitfile.PitFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * A pit with emulated boards on its only segment, played: every signal becomes another every 100 ms, and every control
 * is moved in turn.
 */
final class Played implements TraceSink {
    static final long MILLI = 1_000_000;
    private static final long EVERY = 100 * MILLI;

    /** A value that was shown, and how long after it had changed. */
    record Shown(int slot, int serial, long atNanos, long afterNanos) {}

    final Pit pit;
    final Layout layout;
    final List<Shown> shown = new ArrayList<>();
    final TreeMap<Integer, Integer> told = new TreeMap<>();
    final TreeMap<Integer, Integer> moved = new TreeMap<>();
    final TreeMap<Integer, Integer> answered = new TreeMap<>();
    int timedOut;
    int clashes;
    int broadcasts;
    long digest;
    private final TreeMap<Long, Long> changed = new TreeMap<>();
    private long last;

    private Played(Pit pit) {
        this.pit = pit;
        layout = Layout.of(pit);
    }

    /** The pit of a text; its images are those of this module. */
    static Pit pit(String text) {
        String file = Path.of("firmware/images/pit.yaml").toString();
        if (PitFile.parse(file, text) instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError(PitFile.parse(file, text));
    }

    /**
     * A pit of nothing but one board of address 7, which shows one signal, of 0 to 99, or none.
     *
     * @param firmware further lines of its program's keys
     */
    static Pit onePanel(String image, String firmware, String indicators, String controls) {
        return pit("""
                pit: One panel
                host: {state-rate: as recorded}
                hubs:
                  one: {kind: board, adapter: none}
                budgets: {update: 150 ms, control: 150 ms, source: a test}
                signals:
                  value: {unit: percent, range: 0..99, number: 0}
                segments:
                  s:
                    baud: 250000 baud
                    protocol: dropline
                    controller: {hub: one, time-out: 10 ms, gap: 200 us}
                nodes:
                  board:
                    segment: s
                    address: 7
                    profile: 8-bit loop
                    firmware:
                      image: '%s'
                      chip: atmega328p
                      driver-enable: PD2
                      %s
                panels:
                  panel:
                    node: board
                    indicators: {%s}
                    controls: {%s}
                """.formatted(image, firmware, indicators, controls));
    }

    /** @param stretchNanos how much of it is played at a time */
    static Played played(Pit pit, long forNanos, long stretchNanos, String... faults) {
        FaultOptions.Read read = FaultOptions.read(List.of(faults), pit, OptionalLong.of(forNanos));
        if (!read.problems().isEmpty()) {
            throw new AssertionError(read.problems());
        }
        Played played = new Played(pit);
        played.run(read.faults(), forNanos, stretchNanos);
        return played;
    }

    private void run(List<Fault> faults, long forNanos, long stretchNanos) {
        LaneRun run = new LaneRun(pit, 0, 1, faults, segment -> this);
        StateBlock block = new StateBlock();
        long next = 0;
        int row = 0;
        for (long from = 0; from < forNanos; from += stretchNanos) {
            long to = Math.min(forNanos, from + stretchNanos);
            block.clear();
            while (next < to) {
                change(block, row, next);
                row++;
                next = row * EVERY;
            }
            run.offer(block);
            run.advanceTo(to);
        }
        run.end();
        digest = run.segment(0).digest();
    }

    private void change(StateBlock block, int row, long at) {
        block.addRow(at);
        for (int signal = 0; signal < pit.signals().size(); signal++) {
            long range = pit.signals().get(signal).steps();
            block.addChange(signal, range == 1 ? (row + signal) % 2 : row * 17L % (range + 1));
        }
        if (!layout.controls().isEmpty() && row > 0) {
            int control = row % layout.controls().size();
            int turn = row / layout.controls().size();
            int value =
                    switch (layout.controls().get(control).control().kind()) {
                        case AXIS -> 100 + turn * 331 % 900;
                        case SELECTOR -> (turn + 1) % 3;
                        case ENCODER -> turn % 5 < 3 ? turn + 1 : turn - 1;
                        default -> (turn + 1) % 2;
                    };
            block.addMove(at, control, value);
        }
    }

    /** The longest that a change took to be shown, ns. */
    long longestNanos() {
        return shown.stream().mapToLong(Shown::afterNanos).max().orElse(0);
    }

    /** Nothing is told after what came later. */
    private void inOrder(long atNanos) {
        if (atNanos < last) {
            throw new AssertionError("an event at " + atNanos + " was told after one at " + last);
        }
        last = atNanos;
    }

    @Override
    public void driverOn(long atNanos, int talker) {
        inOrder(atNanos);
    }

    @Override
    public void driverOff(long atNanos, int talker) {
        inOrder(atNanos);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        inOrder(atNanos);
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        inOrder(atNanos);
        changed.put((long) signal << 32 | serial, atNanos);
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        inOrder(atNanos);
        int signal = layout.slots().get(slot).signal();
        long since = changed.getOrDefault((long) signal << 32 | serial, Long.MIN_VALUE);
        shown.add(new Shown(slot, serial, atNanos, atNanos - since));
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        moved.put(control, serial);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        told.put(control, serial);
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        inOrder(atNanos);
        answered.merge(node, 1, Integer::sum);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        timedOut++;
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        inOrder(atNanos);
        broadcasts += frame == BROADCAST ? 1 : 0;
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        clashes++;
    }
}
