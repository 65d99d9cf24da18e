package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;

/**
 * One bank of pin-change interrupts has its mask here; PCICR and PCIFR are shared (DS40002061, "External Interrupts").
 */
public final class PinChanges implements Registers, Served {
    private static final int PCIFR = 0x3B;
    private static final int PCICR = 0x68;
    private static final int PCMSK0 = 0x6B;

    private final Cpu cpu;
    private final int firstVector;
    private final int[] masks;
    private int enabled;
    private int flags;

    /**
     * @param firstVector of bank 0; the others follow
     * @param banks how many
     */
    public PinChanges(Cpu cpu, int firstVector, int banks) {
        this.cpu = cpu;
        this.firstVector = firstVector;
        masks = new int[banks];
        cpu.claim(this, PCIFR, PCICR);
        for (int bank = 0; bank < banks; bank++) {
            cpu.claim(this, PCMSK0 + bank);
            cpu.own(firstVector + bank, this);
        }
    }

    /**
     * Pins of a port belong to a bank.
     *
     * @param pins a bit for each
     * @param shift how much further up its bit stands in the bank
     */
    public void connect(Port port, int pins, int bank, int shift) {
        port.watch((levels, changed, cycle) -> {
            if (((changed & pins) << shift & masks[bank]) != 0) {
                flags |= 1 << bank;
                ask();
            }
        });
    }

    public void reset() {
        enabled = 0;
        flags = 0;
        java.util.Arrays.fill(masks, 0);
    }

    private void ask() {
        for (int bank = 0; bank < masks.length; bank++) {
            cpu.request(firstVector + bank, (flags & enabled & 1 << bank) != 0);
        }
    }

    @Override
    public void served(int vector) {
        flags &= ~(1 << vector - firstVector);
        ask();
    }

    @Override
    public int read(int address, long cycle) {
        return switch (address) {
            case PCIFR -> flags;
            case PCICR -> enabled;
            default -> masks[address - PCMSK0];
        };
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        switch (address) {
            case PCIFR -> flags &= ~value;
            case PCICR -> enabled = value & (1 << masks.length) - 1;
            default -> masks[address - PCMSK0] = value;
        }
        ask();
    }

    @Override
    public boolean isByOnes(int address) {
        return address == PCIFR;
    }
}
