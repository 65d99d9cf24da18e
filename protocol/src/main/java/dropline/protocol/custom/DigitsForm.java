package dropline.protocol.custom;

/**
 * A whole number as text.
 *
 * <p>A free width is for reading: as many digits as stand there. It is written in full width with leading zeros, so
 * that a frame's length never depends on its values and the time reckoned is the longest.
 *
 * @param style what its characters are
 * @param width characters, 1..18, sign included
 * @param free whether fewer may be read
 */
public record DigitsForm(Style style, int width, boolean free) implements NumberForm {
    private static final int WIDEST = 18;
    private static final String DIGITS = "0123456789ABCDEF";

    /** What the characters of a number in text are. */
    public enum Style {
        /** Decimal with leading zeros: 0042. */
        DIGITS("digits"),
        /** A plus or a minus, then decimal with leading zeros: -042. */
        SIGNED("signed"),
        /** Decimal with leading spaces, a minus before the digits where it has one. */
        PADDED("padded"),
        /** Hexadecimal with leading zeros, written in capitals, read in either. */
        HEX("hex");

        private final String word;

        Style(String word) {
            this.word = word;
        }

        /** As written in a layout file. */
        public String word() {
            return word;
        }
    }

    public DigitsForm {
        int narrowest = style == Style.SIGNED ? 2 : 1;
        int widest = style == Style.HEX ? 8 : WIDEST;
        if (width < narrowest || width > widest) {
            throw new IllegalArgumentException(
                    style.word + " must have a width of " + narrowest + ".." + widest + ": width=" + width);
        }
    }

    @Override
    public int chars() {
        return width;
    }

    @Override
    public boolean isFree() {
        return free;
    }

    @Override
    public long least() {
        return switch (style) {
            case DIGITS, HEX -> 0;
            case SIGNED -> -most();
            case PADDED -> width == 1 ? 0 : 1 - power(10, width - 1);
        };
    }

    @Override
    public long most() {
        return switch (style) {
            case DIGITS, PADDED -> power(10, width) - 1;
            case SIGNED -> power(10, width - 1) - 1;
            case HEX -> power(16, width) - 1;
        };
    }

    @Override
    public void put(long value, byte[] target, int at) {
        boolean minus = value < 0 && (style == Style.SIGNED || style == Style.PADDED);
        int base = style == Style.HEX ? 16 : 10;
        long rest = value;
        int first = style == Style.SIGNED ? 1 : 0;
        int place = width - 1;
        while (place >= first) {
            // a remainder has the sign of what is divided; in plain digits and hex minus counts down from the top
            int digit = (int) (minus ? -(rest % base) : Math.floorMod(rest, (long) base));
            target[at + place--] = (byte) DIGITS.charAt(digit);
            rest = minus ? rest / base : Math.floorDiv(rest, (long) base);
            if (style == Style.PADDED && rest == 0) {
                break;
            }
        }
        if (style == Style.PADDED) {
            if (minus && place >= 0) {
                target[at + place--] = '-';
            }
            while (place >= 0) {
                target[at + place--] = ' ';
            }
        } else if (style == Style.SIGNED) {
            target[at] = (byte) (minus ? '-' : '+');
        }
    }

    @Override
    public long read(Cursor cursor) {
        int start = cursor.at();
        while (style == Style.PADDED && cursor.peek() == ' ' && cursor.at() - start < width) {
            cursor.next();
        }
        boolean minus = sign(cursor, cursor.at() - start);
        int base = style == Style.HEX ? 16 : 10;
        long read = 0;
        int digits = 0;
        while (cursor.at() - start < width && digit(cursor.peek(), base) >= 0) {
            read = read * base + digit(cursor.next(), base);
            digits++;
        }
        if (digits == 0 || (!free && cursor.at() - start != width)) {
            cursor.fail();
        }
        return minus ? -read : read;
    }

    @Override
    public boolean canBe(int offset, int value) {
        boolean isDigit = digit(value, style == Style.HEX ? 16 : 10) >= 0;
        return switch (style) {
            case DIGITS, HEX -> isDigit;
            case SIGNED -> free ? isDigit || isSign(value) : offset == 0 ? isSign(value) : isDigit;
            case PADDED -> isDigit || value == ' ' || value == '-';
        };
    }

    private boolean sign(Cursor cursor, int taken) {
        int next = cursor.peek();
        if (style == Style.SIGNED && isSign(next)) {
            return cursor.next() == '-';
        }
        if (style == Style.SIGNED && !free) {
            cursor.fail();
        }
        if (style == Style.PADDED && next == '-' && taken < width) {
            return cursor.next() == '-';
        }
        return false;
    }

    private static boolean isSign(int value) {
        return value == '+' || value == '-';
    }

    private static int digit(int value, int base) {
        int digit = value < 0 || value > 'f' ? -1 : DIGITS.indexOf(value >= 'a' ? value - 32 : value);
        return digit < base ? digit : -1;
    }

    private static long power(long base, int exponent) {
        long power = 1;
        for (int i = 0; i < exponent; i++) {
            power *= base;
        }
        return power;
    }

    @Override
    public String toString() {
        return style.word + (free ? " up to " : " ") + width;
    }
}
