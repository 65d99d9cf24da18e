package dropline.bus.avr.part;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Flash;
import dropline.bus.avr.core.Poke;

/** An ATmega328P at 16 MHz whose program does nothing, so that its registers can be used from outside. */
final class IdleChip {
    private static final int STAY = 0xCFFF;

    final Microcontroller chip;
    final Cpu cpu;

    IdleChip() {
        Flash flash = new Flash(0x4000);
        flash.set(0, STAY);
        chip = new Microcontroller(Chip.ATMEGA328P, 16_000_000, flash, 0);
        cpu = chip.cpu();
        cpu.skipLoops(false);
        chip.reset(Microcontroller.POWER_ON);
    }

    void write(int address, int value) {
        Poke.write(cpu, address, value);
    }

    int read(int address) {
        return Poke.read(cpu, address);
    }

    /** Runs up to the first instruction that begins at or after a cycle. */
    void runTo(long cycle) {
        cpu.run(cycle);
    }
}
