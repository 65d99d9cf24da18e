package dropline.protocol.custom;

import dropline.protocol.custom.Boundary.Delimiters;

/**
 * How many characters of a frame are escaped, if every character that can stand in a place is as likely there as any
 * other.
 *
 * @param fixedMean in its fields, on average
 * @param fixedMost at most
 * @param itemMean in one item, on average
 * @param itemMost at most
 */
record EscapeCount(double fixedMean, int fixedMost, double itemMean, int itemMost) {
    private static final EscapeCount NONE = new EscapeCount(0, 0, 0, 0);

    static EscapeCount of(Layout layout, FrameLayout frame) {
        if (!(layout.boundary() instanceof Delimiters delimiters) || delimiters.escape() == null) {
            return NONE;
        }
        double mean = 0;
        int most = 0;
        double itemMean = 0;
        int itemMost = 0;
        for (Field field : frame.fields()) {
            mean += mean(delimiters, field);
            most += most(delimiters, field);
            if (field instanceof Field.Items items) {
                for (Field part : items.each()) {
                    itemMean += mean(delimiters, part);
                    itemMost += most(delimiters, part);
                }
            }
        }
        return new EscapeCount(mean, most, itemMean, itemMost);
    }

    boolean mayOccur() {
        return fixedMost + itemMost > 0;
    }

    /** On average, rounded up. */
    int mean(int items) {
        // constants count whole, and whole numbers must not be rounded up by the error of a sum
        return (int) Math.ceil(fixedMean + items * itemMean - 1e-9);
    }

    int most(int items) {
        return fixedMost + items * itemMost;
    }

    private static double mean(Delimiters delimiters, Field field) {
        double mean = 0;
        for (int i = 0; i < field.chars(); i++) {
            int possible = 0;
            int special = 0;
            for (int value = 0; value < 256; value++) {
                if (field.canBe(i, value)) {
                    possible++;
                    special += delimiters.isSpecial(value) ? 1 : 0;
                }
            }
            mean += (double) special / possible;
        }
        return mean;
    }

    private static int most(Delimiters delimiters, Field field) {
        int most = 0;
        for (int i = 0; i < field.chars(); i++) {
            boolean special = false;
            for (int value = 0; value < 256; value++) {
                special |= delimiters.isSpecial(value) && field.canBe(i, value);
            }
            most += special ? 1 : 0;
        }
        return most;
    }
}
