package dropline.harness.starter;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * What a signal of some name is likely to be. Nobody measured it: ranges are those of small aircraft in general, from
 * memory.
 *
 * @param unit as a pit file would have it; empty where the name does not tell
 * @param range as a pit file writes it
 * @param resolution as a pit file writes it
 * @param wraps whether it goes round, as a heading does
 */
record SignalGuess(String unit, String range, String resolution, boolean wraps) {
    static final SignalGuess ON_OFF = new SignalGuess("on/off", "0..1", "1", false);
    static final SignalGuess BRIGHTNESS = new SignalGuess("%", "0..100", "1", false);
    private static final SignalGuess UNKNOWN = new SignalGuess("", "0..100", "0.5", false);

    private record Known(Pattern name, SignalGuess guess) {}

    private static Known known(String words, String unit, String range, String resolution, boolean wraps) {
        return new Known(Pattern.compile(".*\\b(" + words + ")\\b.*"), new SignalGuess(unit, range, resolution, wraps));
    }

    private static final List<Known> KNOWN = List.of(
            known("vertical speed|climb|vsi|variometer", "ft/min", "-4000..4000", "50", false),
            known("heading|hdg|course|crs|bearing|compass|adf|rmi|gyro", "deg", "0..360", "1", true),
            known("airspeed|ias|tas|speed|asi|knots", "kt", "0..300", "1", false),
            known("altitude|alt|altimeter|radio height", "ft", "0..25000", "10", false),
            known("pitch|elevation", "deg", "-90..90", "0.5", false),
            known("roll|bank", "deg", "-180..180", "0.5", true),
            known("slip|skid|turn|turn rate", "", "-1..1", "0.02", false),
            known("rpm|tachometer|tach", "rpm", "0..3000", "10", false),
            known("egt|itt|tit|tgt|exhaust", "degC", "0..1000", "2", false),
            known("temp|temperature|oat|cht", "degC", "-50..250", "1", false),
            known("pressure|press|manifold|vacuum|suction", "", "0..100", "0.5", false),
            known("volts|volt|voltage|voltmeter", "V", "0..32", "0.1", false),
            known("amps|amp|ammeter|current", "A", "-60..60", "1", false),
            known("com|nav|radio|frequency|freq", "MHz", "108..137", "0.005", false),
            known("clock|time|timer|chronometer", "s", "0..86400", "1", false),
            known("torque|n1|n2|ng|np|power|flap|flaps|trim|throttle|fuel|oxygen|level", "%", "0..100", "0.5", false));

    /** By the words in its name; whole of 0..100 where none is known. */
    static SignalGuess of(String name) {
        String lower = name.toLowerCase(Locale.ROOT).replace('_', ' ');
        return KNOWN.stream()
                .filter(known -> known.name().matcher(lower).matches())
                .map(Known::guess)
                .findFirst()
                .orElse(UNKNOWN);
    }

    /** Whether the name told nothing. */
    boolean isUnknown() {
        return equals(UNKNOWN);
    }
}
