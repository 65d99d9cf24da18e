package dropline.harness.layout;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** Keys and values that belong together. Whoever reads them asks for each key; what nobody asked for is unknown. */
final class Group {
    private final Tree place;
    private final String what;
    private final Report report;
    private final Map<String, Tree> values = new LinkedHashMap<>();
    private final Map<String, Tree.Scalar> names = new LinkedHashMap<>();
    private final List<String> asked = new ArrayList<>();

    /** @param what a person would call it: {@code a field} */
    Group(Tree.Mapping mapping, String what, Report report) {
        this.place = mapping;
        this.what = what;
        this.report = report;
        for (Tree.Entry entry : mapping.entries()) {
            Tree.Scalar earlier = names.putIfAbsent(entry.key().text(), entry.key());
            if (earlier != null) {
                String fix = "delete one of the two; the first is in " + earlier.line(entry.key());
                report.at(entry.key(), entry.key().text(), LayoutCode.DUPLICATE_KEY, "each key once", fix);
            } else {
                values.put(entry.key().text(), entry.value());
            }
        }
    }

    Tree place() {
        return place;
    }

    boolean has(String key) {
        asked.add(key);
        return values.containsKey(key);
    }

    /** The value of a key. */
    Optional<Tree> get(String key) {
        asked.add(key);
        return Optional.ofNullable(values.get(key));
    }

    /** The value of a key, which must be there. */
    Optional<Tree> need(String key, String expected) {
        Optional<Tree> value = get(key);
        if (value.isEmpty()) {
            report.at(place, key, LayoutCode.MISSING_KEY, what + " without " + key, key + ": " + expected, null);
        }
        return value;
    }

    /** A value that is a piece of text. */
    Optional<Tree.Scalar> text(String key, String expected) {
        return get(key).flatMap(tree -> scalar(tree, key, expected));
    }

    /** A value that is a piece of text and must be there. */
    Optional<Tree.Scalar> needText(String key, String expected) {
        return need(key, expected).flatMap(tree -> scalar(tree, key, expected));
    }

    /** One of some words. */
    <T> Optional<T> choice(String key, Map<String, T> words) {
        String expected = "one of " + String.join(", ", new TreeSet<>(words.keySet()));
        Optional<Tree.Scalar> text = text(key, expected);
        if (text.isPresent() && !words.containsKey(text.get().text())) {
            String fix = Nearest.to(text.get().text(), new TreeSet<>(words.keySet()))
                    .map(near -> "write " + key + ": " + near)
                    .orElse(null);
            report.at(text.get(), key, LayoutCode.WRONG_TYPE, expected, fix);
        }
        return text.map(scalar -> words.get(scalar.text()));
    }

    /** A whole number, decimal or hexadecimal with 0x, or what counts where it is left out. */
    int whole(String key, int least, int most, int standard) {
        String expected = "a whole number, " + least + ".." + most;
        Optional<Tree.Scalar> text = text(key, expected);
        if (text.isEmpty()) {
            return standard;
        }
        Optional<Long> number = Numerals.whole(text.get().text());
        if (number.isEmpty()) {
            report.at(text.get(), key, LayoutCode.WRONG_TYPE, expected, null);
            return standard;
        }
        if (number.get() < least || number.get() > most) {
            report.at(text.get(), key, LayoutCode.OUT_OF_RANGE, expected, null);
            return standard;
        }
        return number.get().intValue();
    }

    /** A number written in hexadecimal digits, which must be there. */
    Optional<Long> needHex(String key, long most) {
        String expected = "hexadecimal digits, 0.." + Long.toHexString(most).toUpperCase(Locale.ROOT);
        Optional<Tree.Scalar> text = needText(key, expected);
        Optional<Long> number = text.flatMap(scalar -> Numerals.hex(scalar.text()));
        if (text.isPresent() && (number.isEmpty() || number.get() > most)) {
            report.at(
                    text.get(),
                    key,
                    number.isEmpty() ? LayoutCode.WRONG_TYPE : LayoutCode.OUT_OF_RANGE,
                    expected,
                    null);
            return Optional.empty();
        }
        return number;
    }

    /** Reports every key that nobody has asked for. */
    void nothingElse() {
        names.forEach((name, key) -> {
            if (!asked.contains(name)) {
                String expected = "a key known to " + what + ": "
                        + String.join(", ", asked.stream().distinct().toList());
                String fix = Nearest.to(name, asked)
                        .map(near -> "write " + near + ":")
                        .orElse("delete it, or see docs/custom-protocols.md for where it goes");
                report.at(key, name, LayoutCode.UNKNOWN_KEY, expected, fix);
            }
        });
    }

    private Optional<Tree.Scalar> scalar(Tree tree, String key, String expected) {
        if (tree instanceof Tree.Scalar scalar && !scalar.isNothing()) {
            return Optional.of(scalar);
        }
        report.at(tree, key, LayoutCode.WRONG_TYPE, expected, null);
        return Optional.empty();
    }
}
