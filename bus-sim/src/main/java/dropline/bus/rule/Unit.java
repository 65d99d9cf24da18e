package dropline.bus.rule;

/** What a rule's value and limit are measured in. */
public enum Unit {
    NUMBER(""),
    UNIT_LOADS("unit loads"),
    VOLTS("V"),
    AMPERES("A"),
    WATTS("W"),
    OHMS("ohm"),
    METRES("m"),
    SECONDS("s"),
    SHARE("");

    private final String symbol;

    Unit(String symbol) {
        this.symbol = symbol;
    }

    /** As written behind a number; empty where a number has none, or is better told as a percentage. */
    public String symbol() {
        return symbol;
    }
}
