package dropline.protocol;

/**
 * How one character stands on the wire: a start bit, the data bits least significant first, perhaps a parity bit, the
 * stop bits. {@code 8N1} is ten bits, Modbus RTU's {@code 8E1} eleven (MODBUS over serial line V1.02, section 2.5.1).
 *
 * @param dataBits 5..9
 * @param parity none, even or odd
 * @param stopBits 1 or 2
 */
public record CharacterFormat(int dataBits, Parity parity, int stopBits) {

    /** Ten bits: eight data bits, no parity, one stop bit. */
    public static final CharacterFormat EIGHT_N_ONE = new CharacterFormat(8, Parity.NONE, 1);

    /** Eleven bits: eight data bits, even parity, one stop bit; the default of Modbus RTU. */
    public static final CharacterFormat EIGHT_E_ONE = new CharacterFormat(8, Parity.EVEN, 1);

    /** The bit that guards a character, if any. */
    public enum Parity {
        NONE('N'),
        EVEN('E'),
        ODD('O');

        private final char letter;

        Parity(char letter) {
            this.letter = letter;
        }
    }

    public CharacterFormat {
        if (dataBits < 5 || dataBits > 9) {
            throw new IllegalArgumentException("data bits must be 5..9: dataBits=" + dataBits);
        }
        if (stopBits < 1 || stopBits > 2) {
            throw new IllegalArgumentException("stop bits must be 1 or 2: stopBits=" + stopBits);
        }
    }

    /** Bits from the edge of the start bit to the end of the last stop bit, 7..13. */
    public int bits() {
        return 1 + dataBits + (parity == Parity.NONE ? 0 : 1) + stopBits;
    }

    /**
     * One bit of a character as it stands on the wire: 0 the start bit, then data, parity, stop bits.
     *
     * @param value the character
     * @param index 0 to {@link #bits()} - 1
     * @return 0 or 1
     */
    public int bit(int value, int index) {
        if (index == 0) {
            return 0;
        }
        if (index <= dataBits) {
            return value >>> (index - 1) & 1;
        }
        if (index == dataBits + 1 && parity != Parity.NONE) {
            int ones = Integer.bitCount(value & ((1 << dataBits) - 1));
            return (ones & 1) ^ (parity == Parity.EVEN ? 0 : 1);
        }
        return 1;
    }

    /** As written on a data sheet: {@code 8N1}. */
    @Override
    public String toString() {
        return "" + dataBits + parity.letter + stopBits;
    }
}
