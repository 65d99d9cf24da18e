package dropline.harness.pitfile;

import dropline.harness.yaml.Place;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A figure with its origin taken off: {@code about 300 us}, {@code 280 us, measured 2026-11-20}.
 *
 * @param value the figure alone, at its own place
 */
record Stated(Tree.Scalar value, Origin origin) {
    /** Stands in place of a figure: the one of what its group is like. */
    static final String PRESET = "preset";

    private static final Pattern ABOUT = Pattern.compile("about\\s+(.+)", Pattern.DOTALL);
    private static final Pattern MEASURED = Pattern.compile("(.+?)\\s*,\\s*measured\\b\\s*(.*)", Pattern.DOTALL);

    /** Whether a figure is that of its like. */
    static boolean isPreset(Tree tree) {
        return tree instanceof Tree.Scalar scalar && scalar.text().equals(PRESET);
    }

    /** The figure and its origin, or empty with the reason reported. */
    static Optional<Stated> of(Tree.Scalar written, String key, Report report) {
        Origin usual = written.place().file().equals(Presets.FILE) ? Origin.PRESET : Origin.UNSTATED;
        Matcher about = ABOUT.matcher(written.text());
        Matcher measured = MEASURED.matcher(written.text());
        if (measured.matches()) {
            if (about.matches()) {
                String fix = "delete about, or what comes after the figure";
                report.at(written, key, PitCode.CONFLICT, "a figure that is guessed or measured, not both", fix);
                return Optional.empty();
            }
            if (!isDate(measured.group(2))) {
                String expected = "the day it was measured: year-month-day, such as 2026-11-20";
                String fix = "write " + key + ": " + measured.group(1) + ", measured 2026-11-20";
                report.at(written, key, PitCode.WRONG_TYPE, expected, fix);
                return Optional.empty();
            }
            return Optional.of(new Stated(part(written, 0, measured.end(1)), Origin.MEASURED));
        }
        return Optional.of(
                about.matches()
                        ? new Stated(part(written, about.start(1), about.end(1)), Origin.GUESSED)
                        : new Stated(written, usual));
    }

    private static boolean isDate(String text) {
        try {
            return text.length() == 10 && LocalDate.parse(text).getYear() > 1900;
        } catch (DateTimeException e) {
            return false;
        }
    }

    private static Tree.Scalar part(Tree.Scalar written, int from, int to) {
        Place at = written.place();
        int before = from == 0 ? 0 : from + (written.quoted() ? 1 : 0);
        Place shifted = new Place(at.file(), at.line(), at.column() + before);
        return new Tree.Scalar(written.text().substring(from, to), written.quoted(), shifted);
    }
}
