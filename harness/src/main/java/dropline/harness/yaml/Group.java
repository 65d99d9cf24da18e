package dropline.harness.yaml;

import dropline.harness.problem.Nearest;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Keys and values that belong together. Whoever reads them asks for each key; what nobody asked for is unknown. */
public final class Group {
    private final Tree place;
    private final Form.@Nullable Keys declared;
    private final String what;
    private final String page;
    private final Report report;
    private final Map<String, Tree> values = new LinkedHashMap<>();
    private final Map<String, Tree.Scalar> names = new LinkedHashMap<>();
    private final List<String> asked = new ArrayList<>();

    /**
     * @param what a person would call it: {@code a field}
     * @param page of the manual that says which keys there are
     */
    public Group(Tree.Mapping mapping, String what, String page, Report report) {
        this(mapping, null, what, page, report);
    }

    /** The same, of keys that are declared: only for these can be asked. */
    public Group(Tree.Mapping mapping, Form.@Nullable Keys declared, String what, String page, Report report) {
        this.place = mapping;
        this.declared = declared;
        this.what = what;
        this.page = page;
        this.report = report;
        for (Tree.Entry entry : mapping.entries()) {
            Tree.Scalar earlier = names.putIfAbsent(entry.key().text(), entry.key());
            if (earlier != null) {
                String fix = "delete one of the two; the first is in " + earlier.line(entry.key());
                report.at(entry.key(), entry.key().text(), KeyCode.DUPLICATE_KEY, "each key once", fix);
            } else {
                values.put(entry.key().text(), entry.value());
            }
        }
    }

    public Tree place() {
        return place;
    }

    public boolean has(String key) {
        ask(key);
        return values.containsKey(key);
    }

    /** The value of a key. */
    public Optional<Tree> get(String key) {
        ask(key);
        return Optional.ofNullable(values.get(key));
    }

    private void ask(String key) {
        if (declared != null && !declared.has(key)) {
            throw new IllegalStateException("a key must be declared to be read: " + what + ", " + key);
        }
        asked.add(key);
    }

    /** The value of a key, which must be there. */
    public Optional<Tree> need(String key, String expected) {
        Optional<Tree> value = get(key);
        if (value.isEmpty()) {
            report.at(place, key, KeyCode.MISSING_KEY, what + " without " + key, key + ": " + expected, null);
        }
        return value;
    }

    /** A value that is a piece of text. */
    public Optional<Tree.Scalar> text(String key, String expected) {
        return get(key).flatMap(tree -> scalar(tree, key, expected));
    }

    /** A value that is a piece of text and must be there. */
    public Optional<Tree.Scalar> needText(String key, String expected) {
        return need(key, expected).flatMap(tree -> scalar(tree, key, expected));
    }

    /** One of some words. */
    public <T> Optional<T> choice(String key, Map<String, T> words) {
        String expected = "one of " + String.join(", ", new TreeSet<>(words.keySet()));
        Optional<Tree.Scalar> text = text(key, expected);
        if (text.isPresent() && !words.containsKey(text.get().text())) {
            String fix = Nearest.to(text.get().text(), new TreeSet<>(words.keySet()))
                    .map(near -> "write " + key + ": " + near)
                    .orElse(null);
            report.at(text.get(), key, KeyCode.WRONG_TYPE, expected, fix);
        }
        return text.map(scalar -> words.get(scalar.text()));
    }

    /** A problem with one of the values. */
    public void problem(Tree at, String key, Enum<?> code, String expected, @Nullable String fix) {
        report.at(at, key, code, expected, fix);
    }

    /** Reports every key that nobody has asked for. */
    public void nothingElse() {
        names.forEach((name, key) -> {
            if (!asked.contains(name)) {
                String expected = "a key known to " + what + ": "
                        + String.join(", ", asked.stream().distinct().toList());
                String fix = Nearest.to(name, asked)
                        .map(near -> "write " + near + ":")
                        .orElse("delete it, or see " + page + " for where it goes");
                report.at(key, name, KeyCode.UNKNOWN_KEY, expected, fix);
            }
        });
    }

    private Optional<Tree.Scalar> scalar(Tree tree, String key, String expected) {
        if (tree instanceof Tree.Scalar scalar && !scalar.isNothing()) {
            return Optional.of(scalar);
        }
        report.at(tree, key, KeyCode.WRONG_TYPE, expected, null);
        return Optional.empty();
    }
}
