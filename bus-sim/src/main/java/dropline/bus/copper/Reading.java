package dropline.bus.copper;

import dropline.bus.rule.Unit;

/** What a multimeter is held to, always at one stop and between D1 and D0 or from one of them to common. */
public enum Reading {
    /** Between D1 and D0: everything off, bias that can be unplugged unplugged. */
    OHMS("ohms", Unit.OHMS),
    /** The same with the bias in place; its supply, off, is taken to be as good as joined to common. */
    OHMS_BIASED("ohms-biased", Unit.OHMS),
    /** D1 above D0 with everything on and nobody speaking. */
    IDLE("idle", Unit.VOLTS),
    /** D1 against common, the same. */
    D1("d1", Unit.VOLTS),
    /** D0 against common, the same. */
    D0("d0", Unit.VOLTS);

    private final String word;
    private final Unit unit;

    Reading(String word, Unit unit) {
        this.word = word;
        this.unit = unit;
    }

    /** As one writes it on a command line. */
    public String word() {
        return word;
    }

    public Unit unit() {
        return unit;
    }

    /** Whether it is taken with all power off. */
    public boolean isPowerOff() {
        return unit == Unit.OHMS;
    }

    double of(PairNetwork network, int stop) {
        return switch (this) {
            case OHMS, OHMS_BIASED -> network.ohms(stop);
            case IDLE -> network.rest(stop);
            case D1 -> network.restOfD1(stop);
            case D0 -> network.restOfD0(stop);
        };
    }

    /** What is there while it is taken. */
    Circuit taken(Circuit circuit) {
        return this == OHMS
                ? circuit.withBiases(
                        circuit.biases().stream().filter(Circuit.Bias::own).toList())
                : circuit;
    }
}
