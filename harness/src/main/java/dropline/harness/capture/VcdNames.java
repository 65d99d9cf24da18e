package dropline.harness.capture;

import java.util.HashSet;
import java.util.Set;

/** Names and identifier codes of a VCD file (IEEE 1364-2005, clause 18). */
final class VcdNames {
    /** Codes are made of the printable characters from {@code !} to {@code ~}. */
    private static final int LETTERS = 94;

    private final Set<String> used = new HashSet<>();

    /** The code of the n-th wire, from 0: one character for the first 94, then two. */
    static String code(int wire) {
        StringBuilder code = new StringBuilder();
        int rest = wire;
        do {
            code.append((char) ('!' + rest % LETTERS));
            rest = rest / LETTERS - 1;
        } while (rest >= 0);
        return code.toString();
    }

    /** A name that any reader takes: letters, digits and underscores, none of them first a digit, not given before. */
    String unique(String name) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char letter = name.charAt(i);
            boolean plain = letter < 128 && Character.isLetterOrDigit(letter);
            text.append(plain ? letter : '_');
        }
        if (text.isEmpty() || Character.isDigit(text.charAt(0))) {
            text.insert(0, '_');
        }
        String first = text.toString();
        String found = first;
        for (int number = 2; !used.add(found); number++) {
            found = first + "_" + number;
        }
        return found;
    }
}
