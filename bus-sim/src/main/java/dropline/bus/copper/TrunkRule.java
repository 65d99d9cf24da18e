package dropline.bus.copper;

/**
 * How long a pair may be from end to end at a rate. Guidance for 24 AWG twisted pair, not a law: the curve behind it
 * was measured (TIA/EIA-422-B, A.1.1, as quoted by others).
 */
public enum TrunkRule {
    /**
     * Metres times bits a second up to 10^8, and never more than 1200 m (embedcalc, RS-485 tool). A manual of
     * Teltonika's has the same rule and, beside it, 1200 m at 100 kbit/s, a fifth more; this is the shorter.
     */
    LENGTH_TIMES_RATE {
        @Override
        public double metres(int baud) {
            return Math.min(1200, 1e8 / baud);
        }
    },
    /**
     * 1000 m up to 9600 baud on 26 AWG or thicker (MODBUS over serial line V1.02, 3.4.3); NaN above, of which it says
     * nothing.
     */
    MODBUS {
        @Override
        public double metres(int baud) {
            return baud <= 9600 ? 1000 : Double.NaN;
        }
    };

    /** The longest line, m. */
    public abstract double metres(int baud);
}
