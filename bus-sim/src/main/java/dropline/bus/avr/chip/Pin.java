package dropline.bus.avr.chip;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** A pin by its port's letter and its bit: {@code PD2}. */
public record Pin(char port, int bit) {
    private static final Pattern NAME = Pattern.compile("P[A-L][0-7]");

    public Pin {
        if (bit < 0 || bit > 7) {
            throw new IllegalArgumentException("a port has bits 0..7: bit=" + bit);
        }
    }

    /** The pin of a name, large or small. */
    public static Optional<Pin> named(String name) {
        String upper = name.toUpperCase(Locale.ROOT);
        return NAME.matcher(upper).matches()
                ? Optional.of(new Pin(upper.charAt(1), upper.charAt(2) - '0'))
                : Optional.empty();
    }

    @Override
    public String toString() {
        return "P" + port + bit;
    }
}
