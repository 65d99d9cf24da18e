package dropline.bus.avr.board;

import dropline.bus.avr.core.Cpu;

/** Where a program is, looked at again and again in steps that nothing regular keeps pace with. */
public final class Samples {
    /** About a thousand times a second at 16 MHz; a prime. */
    private static final int STEP_CYCLES = 16_411;

    private final Cpu cpu;
    private final int alarm;
    private final int[] counts;
    private long all;

    Samples(Cpu cpu, int words) {
        this.cpu = cpu;
        counts = new int[words];
        alarm = cpu.add(this::look);
        cpu.due(alarm, STEP_CYCLES);
    }

    private void look(long cycle) {
        counts[cpu.byteAddress() / 2]++;
        all++;
        cpu.due(alarm, cycle + STEP_CYCLES);
    }

    /** The share of looks that found it between two byte addresses, the second one not included. */
    public double share(int fromByte, int toByte) {
        long found = 0;
        for (int word = fromByte / 2; word < Math.min(counts.length, (toByte + 1) / 2); word++) {
            found += counts[word];
        }
        return all == 0 ? 0 : (double) found / all;
    }
}
