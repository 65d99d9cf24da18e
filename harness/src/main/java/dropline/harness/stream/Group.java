package dropline.harness.stream;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Some keys of a datagram file and their values. What is wrong is noted, and something harmless returned in its place.
 */
final class Group {
    private static final String DOCUMENT = "see docs/record.md";

    private final Tree.Mapping place;
    private final Report report;
    private final Map<String, Tree> values = new LinkedHashMap<>();

    Group(Tree.Mapping place, Report report) {
        this.place = place;
        this.report = report;
        for (Tree.Entry entry : place.entries()) {
            String key = entry.key().text();
            if (values.putIfAbsent(key, entry.value()) != null) {
                report.at(entry.key(), key, DatagramCode.DUPLICATE_KEY, "each key once", null);
            }
        }
    }

    boolean has(String key) {
        return values.containsKey(key);
    }

    /** Notes every other key than these. */
    void only(List<String> allowed) {
        for (Tree.Entry entry : place.entries()) {
            if (!allowed.contains(entry.key().text())) {
                unknown(entry.key(), allowed);
            }
        }
    }

    /** Notes that none of the keys says which part this is; of the others nothing can be said then. */
    void unknownPart(List<String> allowed) {
        if (place.entries().isEmpty()) {
            report.at(place, "", DatagramCode.MISSING_KEY, "one of " + String.join(", ", allowed), DOCUMENT);
        } else {
            List<Tree.Scalar> keys =
                    place.entries().stream().map(Tree.Entry::key).toList();
            unknown(
                    keys.stream()
                            .filter(key -> near(key, allowed) != null)
                            .findFirst()
                            .orElse(keys.get(0)),
                    allowed);
        }
    }

    private void unknown(Tree.Scalar key, List<String> allowed) {
        report.at(
                key, key.text(), DatagramCode.UNKNOWN_KEY, "one of " + String.join(", ", allowed), near(key, allowed));
    }

    private static @Nullable String near(Tree.Scalar typed, List<String> allowed) {
        return Nearest.to(typed.text(), allowed)
                .map(near -> "did you mean " + near + "?")
                .orElse(null);
    }

    /** Notes that a key has no meaning here. */
    void unused(String key, String expected, String fix) {
        report.at(place, key, DatagramCode.UNUSED_KEY, key, expected, fix);
    }

    /** Notes that a key's value is wrong. */
    void wrong(String key, DatagramCode code, String expected) {
        report.at(values.getOrDefault(key, place), key, code, expected, null);
    }

    private Tree.@Nullable Scalar scalar(String key, String expected) {
        Tree value = values.get(key);
        if (value == null) {
            report.at(place, key, DatagramCode.MISSING_KEY, null, expected, "add " + key + ":");
            return null;
        }
        if (value instanceof Tree.Scalar scalar && !scalar.text().isBlank()) {
            return scalar;
        }
        wrong(key, DatagramCode.WRONG_TYPE, expected);
        return null;
    }

    String text(String key) {
        Tree.Scalar text = scalar(key, "a text");
        return text == null ? "" : text.text();
    }

    int whole(String key, int least, int most) {
        String expected = "a whole number " + least + ".." + most;
        Tree.Scalar text = scalar(key, expected);
        if (text != null) {
            try {
                int value = Integer.parseInt(text.text());
                if (value >= least && value <= most) {
                    return value;
                }
                wrong(key, DatagramCode.OUT_OF_RANGE, expected);
            } catch (NumberFormatException e) {
                wrong(key, DatagramCode.WRONG_TYPE, expected);
            }
        }
        return least;
    }

    double number(String key, double otherwise) {
        Tree.Scalar text = has(key) ? scalar(key, "a number") : null;
        if (text != null) {
            try {
                double value = Double.parseDouble(text.text());
                if (Double.isFinite(value)) {
                    return value;
                }
                wrong(key, DatagramCode.OUT_OF_RANGE, "a finite number");
            } catch (NumberFormatException e) {
                wrong(key, DatagramCode.WRONG_TYPE, "a number");
            }
        }
        return otherwise;
    }

    /** The place of the word among those allowed. */
    int choice(String key, List<String> allowed) {
        String expected = "one of " + String.join(", ", allowed);
        Tree.Scalar text = scalar(key, expected);
        int chosen = text == null ? 0 : allowed.indexOf(text.text());
        if (chosen < 0 && text != null) {
            report.at(text, key, DatagramCode.UNKNOWN_NAME, expected, near(text, allowed));
        }
        return Math.max(0, chosen);
    }

    /** A list of groups; a missing or empty one is noted. */
    List<Group> groups(String key) {
        List<Group> groups = new ArrayList<>();
        Tree value = values.get(key);
        if (value == null) {
            report.at(place, key, DatagramCode.MISSING_KEY, null, "a list of parts", "add " + key + ":; " + DOCUMENT);
        } else if (!(value instanceof Tree.Sequence list) || list.items().isEmpty()) {
            report.at(value, key, DatagramCode.WRONG_TYPE, "a list of parts, each after a dash", DOCUMENT);
        } else {
            for (Tree item : list.items()) {
                if (item instanceof Tree.Mapping mapping) {
                    groups.add(new Group(mapping, report));
                } else {
                    report.at(item, key, DatagramCode.WRONG_TYPE, "a part, as in - skip: 4", DOCUMENT);
                }
            }
        }
        return groups;
    }

    /** A group of texts by name; empty if it is missing. */
    Map<String, String> texts(String key) {
        Map<String, String> texts = new LinkedHashMap<>();
        Tree value = values.get(key);
        if (value instanceof Tree.Mapping mapping) {
            Group group = new Group(mapping, report);
            group.values.keySet().forEach(name -> texts.put(name, group.text(name)));
        } else if (value != null) {
            report.at(value, key, DatagramCode.WRONG_TYPE, "a group of keys, as in 20.3: pitch", null);
        }
        return texts;
    }
}
