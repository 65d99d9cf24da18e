package dropline.harness.timeline;

import dropline.harness.report.Figures;

/** Figures as the drawing writes them. */
final class Words {
    private Words() {}

    /** A margin with its unit: {@code 40.0 us}. */
    static String micros(long nanos) {
        return Figures.decimal(nanos / 1000.0, 1) + " us";
    }

    /** A length in bit times: {@code 20.0 bits}. */
    static String bits(double bits) {
        return Figures.decimal(bits, 1) + " bits";
    }

    /** As much of it as fits, with two dots for the rest. */
    static String shortened(String words, int letters) {
        return words.length() <= letters ? words : words.substring(0, letters - 2) + "..";
    }
}
