package dropline.bus.avr.board;

import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.core.Cpu;
import java.util.Comparator;
import java.util.PriorityQueue;

/** What holds a board's pins at levels from outside, each change at its instant. */
public final class Contacts {
    private record Change(long cycle, long number, Pin pin, int level) {}

    private final Board board;
    private final Cpu cpu;
    private final int alarm;
    private final int[] analog = new int[64];
    private final PriorityQueue<Change> changes =
            new PriorityQueue<>(Comparator.comparingLong(Change::cycle).thenComparingLong(Change::number));
    private long made;

    public Contacts(Board board) {
        this.board = board;
        cpu = board.chip().cpu();
        alarm = cpu.add(this::happen);
        board.chip().adc().inputs(channel -> channel < analog.length ? analog[channel] : 0);
    }

    /** How far the board has come, ns. */
    public long nowNanos() {
        return board.reachedNanos();
    }

    /**
     * A pin is held at a level from an instant on.
     *
     * @param nanos not before what the board has reached
     */
    public void hold(Pin pin, int level, long nanos) {
        changes.add(new Change(Math.max(board.cycle(nanos), cpu.cycles()), made++, pin, level));
        cpu.due(alarm, changes.element().cycle());
    }

    /** An analog pin is at so much of the converter's range from now on, 0..1023. */
    public void put(Pin pin, int value) {
        analog[board.chip().chip().analogChannel(pin.port(), pin.bit())] = value;
        cpu.acted();
    }

    private void happen(long cycle) {
        while (!changes.isEmpty() && changes.element().cycle() <= cycle) {
            Change change = changes.remove();
            board.chip().port(change.pin().port()).hold(change.pin().bit(), change.level(), cycle);
        }
        cpu.due(alarm, changes.isEmpty() ? Long.MAX_VALUE : changes.element().cycle());
    }
}
