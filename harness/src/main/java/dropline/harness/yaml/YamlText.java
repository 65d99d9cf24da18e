package dropline.harness.yaml;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import tools.jackson.core.io.JsonStringEncoder;

/** Text as it must stand in a YAML file that a person will go on editing: quoted only where it has to be. */
public final class YamlText {
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z][A-Za-z0-9_-]*( [A-Za-z0-9_.-]+)*");
    private static final Set<String> WORDS = Set.of("true", "false", "yes", "no", "on", "off", "null", "none");

    private YamlText() {}

    /** A key or a value: plain where that is safe, else as a JSON string, which YAML 1.2 takes in. */
    public static String scalar(String text) {
        if (PLAIN.matcher(text).matches() && !WORDS.contains(text.toLowerCase(Locale.ROOT))) {
            return text;
        }
        StringBuilder quoted = new StringBuilder("\"");
        JsonStringEncoder.getInstance().quoteAsString(text, quoted);
        return quoted.append('"').toString();
    }

    /** A comment: one line, whatever the text held. */
    public static String comment(String text) {
        return "# " + text.replaceAll("[\\s\\p{Cntrl}]+", " ").strip();
    }
}
