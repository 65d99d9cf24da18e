package dropline.bus.avr.core;

/** Reaches into a processor's data space as an instruction does, without one. */
public final class Poke {
    private Poke() {}

    /** As STS at this cycle. */
    public static void write(Cpu cpu, int address, int value) {
        cpu.store(address, value, cpu.cycles);
    }

    /** As LDS at this cycle. */
    public static int read(Cpu cpu, int address) {
        return cpu.load(address, cpu.cycles);
    }

    /** Sets or clears the flag that lets interrupts in. */
    public static void interrupts(Cpu cpu, boolean isOn) {
        cpu.sreg = isOn ? cpu.sreg | Arithmetic.I : cpu.sreg & ~Arithmetic.I;
    }
}
