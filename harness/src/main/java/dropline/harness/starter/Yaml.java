package dropline.harness.starter;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Text as it must stand in a YAML file that a person will go on editing: quoted only where it has to be. */
final class Yaml {
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z\\u00C0-\\u024F][A-Za-z0-9\\u00C0-\\u024F _./%()+-]*");
    private static final Set<String> WORDS = Set.of("true", "false", "null", "yes", "no", "on", "off");

    private Yaml() {}

    /** A key or a value, on one line. */
    static String text(String text) {
        String line = text.replaceAll("\\s+", " ").strip();
        boolean plain =
                PLAIN.matcher(line).matches() && !line.endsWith(" ") && !WORDS.contains(line.toLowerCase(Locale.ROOT));
        return plain ? line : '"' + line.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    /** A comment's text: one line, whatever it held. */
    static String comment(String text) {
        return "# " + text.replaceAll("[\\s\\p{Cntrl}]+", " ").strip();
    }
}
