package dropline.harness.diff;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What stands above a trace's events: what the numbers in them stand for. */
final class TraceHead {
    private final List<String> lines = new ArrayList<>();
    private final Map<String, List<String>> parts = new TreeMap<>();

    /** Takes a line that starts with {@code #}. */
    void take(String line) {
        lines.add(line);
        List<String> words = words(line.substring(1));
        if (words.size() >= 3) {
            parts.put(words.get(0) + " " + words.get(1), words);
        }
    }

    /** The lines that say of which pit it is: all but the seed's. */
    List<String> pit() {
        return lines.stream().filter(line -> !line.startsWith("# seed ")).toList();
    }

    String seed() {
        return lines.stream()
                .filter(line -> line.startsWith("# seed "))
                .map(line -> line.substring("# seed ".length()))
                .findFirst()
                .orElse("unknown");
    }

    /** The name of a part: the last word of its line, for a signal the second. */
    String name(String kind, long number) {
        List<String> words = parts.get(kind + " " + number);
        if (words == null) {
            return kind + " " + number;
        }
        return switch (kind) {
            case "signal" -> words.get(2);
            case "slot" -> words.size() > 5 ? words.get(5) + " of " + words.get(4) : kind + " " + number;
            default -> words.get(words.size() - 1);
        };
    }

    /** The words of a line; one in double quotes may hold spaces. */
    static List<String> words(String line) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char letter = line.charAt(i);
            if (quoted && letter == '\\' && i + 1 < line.length()) {
                word.append(line.charAt(++i));
            } else if (letter == '"') {
                quoted = !quoted;
            } else if (letter == ' ' && !quoted) {
                add(words, word);
            } else {
                word.append(letter);
            }
        }
        add(words, word);
        return words;
    }

    private static void add(List<String> words, StringBuilder word) {
        if (!word.isEmpty()) {
            words.add(word.toString());
            word.setLength(0);
        }
    }
}
