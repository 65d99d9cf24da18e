package dropline.harness.cli;

import java.util.regex.Pattern;

/** Paints the verdicts in a text for a terminal; the words say the same without. */
final class Colours {
    private static final Pattern GOOD = Pattern.compile("(?m)^( {0,2})(PASS|pass)(?=[ .])");
    private static final Pattern BAD = Pattern.compile("(?m)^( {0,2})(FAIL)(?=[ .])");
    private static final Pattern OPEN = Pattern.compile("(?m)^( {0,2})(UNDECIDED|undecided)(?=[ .])");

    private Colours() {}

    static String painted(String text, boolean colour) {
        if (!colour) {
            return text;
        }
        String good = GOOD.matcher(text).replaceAll("$1\u001B[36m$2\u001B[0m");
        String bad = BAD.matcher(good).replaceAll("$1\u001B[1;31m$2\u001B[0m");
        return OPEN.matcher(bad).replaceAll("$1\u001B[33m$2\u001B[0m");
    }
}
