package dropline.bus.copper;

/**
 * Where the resistor of a transceiver's unit load is taken to lie. Published worked examples differ, and what one gives
 * the other does not: never mix them. Between the two wires, a load from each to common counts half of one across.
 */
public enum LoadModel {
    /** From each of the two wires to common, as in TI's worked examples (SLYT324, SLLA272). */
    LINE_TO_GROUND("from each wire to common, as TI's examples have it"),
    /** Across the pair, as in B&amp;B Electronics' worked examples (RS-422/485 Application Note, 2006). */
    LINE_TO_LINE("across the pair, as B&B Electronics' examples have it");

    /** The one that leaves less volts on the pair, at rest and driven. */
    public static final LoadModel CONSERVATIVE = LINE_TO_LINE;

    private final String words;

    LoadModel(String words) {
        this.words = words;
    }

    /** Where the load lies, for people. */
    public String words() {
        return words;
    }
}
