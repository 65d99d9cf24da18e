package dropline.harness.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A word of a fault's text. Single quotes keep spaces together; a quote opens at a word's begin or after a slash, and
 * two quotes inside a pair stand for one.
 *
 * @param text without its quotes
 * @param quoted whether any of it stood in quotes, so that it is a name whatever it says
 */
record Token(String text, boolean quoted) {

    /** The words of a text; empty where a quote is not closed. */
    static Optional<List<Token>> of(String text) {
        List<Token> tokens = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean inside = false;
        boolean quoted = false;
        boolean begun = false;
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            if (inside && letter == '\'' && i + 1 < text.length() && text.charAt(i + 1) == '\'') {
                word.append(letter);
                i++;
            } else if (inside && letter == '\'') {
                inside = false;
            } else if (!inside && letter == '\'' && opens(word, begun)) {
                inside = true;
                quoted = true;
                begun = true;
            } else if (!inside && Character.isWhitespace(letter)) {
                if (begun) {
                    tokens.add(new Token(word.toString(), quoted));
                }
                word.setLength(0);
                quoted = false;
                begun = false;
            } else {
                word.append(letter);
                begun = true;
            }
        }
        if (begun) {
            tokens.add(new Token(word.toString(), quoted));
        }
        return inside ? Optional.empty() : Optional.of(tokens);
    }

    /** A name as it must be written: in quotes if it would otherwise fall apart or be taken for a part's word. */
    static String written(String name) {
        boolean plain = !name.isEmpty()
                && name.chars().noneMatch(Character::isWhitespace)
                && !name.startsWith("'")
                && !name.contains("/'")
                && Clause.of(name).isEmpty();
        return plain ? name : "'" + name.replace("'", "''") + "'";
    }

    /** The clause it begins, if it does. */
    Optional<Clause> clause() {
        return quoted ? Optional.empty() : Clause.of(text);
    }

    private static boolean opens(StringBuilder word, boolean begun) {
        return !begun || (word.length() > 0 && word.charAt(word.length() - 1) == '/');
    }

    /** A part of a fault's text that begins with a word of its own. */
    enum Clause {
        AS,
        AT,
        FOR,
        RATE,
        BY;

        static Optional<Clause> of(String word) {
            for (Clause clause : values()) {
                if (clause.word().equalsIgnoreCase(word)) {
                    return Optional.of(clause);
                }
            }
            return Optional.empty();
        }

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
