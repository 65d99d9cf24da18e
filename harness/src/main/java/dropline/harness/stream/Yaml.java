package dropline.harness.stream;

import dropline.harness.problem.Nearest;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** A layout's text as groups of keys, with the place of every one for problems. */
final class Yaml {
    private static final String DOCUMENT = "see docs/record.md";

    private final String file;
    private final Problems problems = new Problems();

    Yaml(String file) {
        this.file = file;
    }

    List<Problem> problems() {
        return problems.list();
    }

    /** The document's keys; null if it has none, with the reason noted. */
    @Nullable
    Group parse(String text) {
        try {
            LoadSettings settings = LoadSettings.builder()
                    .setLabel(file)
                    .setAllowDuplicateKeys(true)
                    .setAllowRecursiveKeys(false)
                    .build();
            Optional<Node> root = new Compose(settings).composeString(text);
            if (root.isPresent() && root.get() instanceof MappingNode mapping) {
                return new Group(mapping);
            }
            add(0, 0, "", "EMPTY_FILE", null, "a group of keys that begins with datagram:", DOCUMENT);
        } catch (MarkedYamlEngineException e) {
            Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
            int line = mark.map(m -> m.getLine() + 1).orElse(0);
            int column = mark.map(m -> m.getColumn() + 1).orElse(0);
            String found = e.getProblem().strip().replaceAll("\\s+", " ");
            add(line, column, "", "BAD_YAML", found, "YAML 1.2", "check indentation, colons and quotes here");
        } catch (YamlEngineException e) {
            add(0, 0, "", "BAD_YAML", null, "YAML 1.2, in UTF-8", "look for characters that are no text");
        }
        return null;
    }

    private void add(
            int line,
            int column,
            String key,
            String code,
            @Nullable String found,
            @Nullable String expected,
            @Nullable String fix) {
        problems.add(new Problem(file, line, column, key, code, found, expected, fix));
    }

    private void add(
            Node at, String key, String code, @Nullable String found, @Nullable String expected, @Nullable String fix) {
        Optional<Mark> mark = at.getStartMark();
        int line = mark.map(m -> m.getLine() + 1).orElse(0);
        int column = mark.map(m -> m.getColumn() + 1).orElse(0);
        add(line, column, key, code, found, expected, fix);
    }

    private static String found(Node node) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue().isEmpty() ? "nothing" : scalar.getValue();
        }
        return node instanceof SequenceNode ? "a list" : "a group of keys";
    }

    /** Some keys and their values. What is wrong is noted, and something harmless returned in its place. */
    final class Group {
        private final MappingNode node;
        private final Map<String, Node> values = new LinkedHashMap<>();

        Group(MappingNode node) {
            this.node = node;
            for (NodeTuple tuple : node.getValue()) {
                String key = found(tuple.getKeyNode());
                if (values.putIfAbsent(key, tuple.getValueNode()) != null) {
                    add(tuple.getKeyNode(), key, "DUPLICATE_KEY", key, "each key once", null);
                }
            }
        }

        boolean has(String key) {
            return values.containsKey(key);
        }

        String firstKey() {
            return values.isEmpty() ? "nothing" : values.keySet().iterator().next();
        }

        void only(List<String> allowed) {
            for (NodeTuple tuple : node.getValue()) {
                String key = found(tuple.getKeyNode());
                if (!allowed.contains(key)) {
                    add(
                            tuple.getKeyNode(),
                            key,
                            "UNKNOWN_KEY",
                            key,
                            "one of " + String.join(", ", allowed),
                            Nearest.to(key, allowed)
                                    .map(near -> "did you mean " + near + "?")
                                    .orElse(null));
                }
            }
        }

        void problem(String code, String key, @Nullable String found, @Nullable String expected, @Nullable String fix) {
            add(node, key, code, found, expected, fix);
        }

        /** Notes that a key's value is wrong. */
        void wrong(String key, String code, String expected, @Nullable String fix) {
            Node value = values.get(key);
            add(value == null ? node : value, key, code, value == null ? null : found(value), expected, fix);
        }

        private @Nullable String scalar(String key, String expected) {
            Node value = values.get(key);
            if (value == null) {
                problem("MISSING_KEY", key, null, expected, "add " + key + ":");
                return null;
            }
            if (value instanceof ScalarNode scalar && !scalar.getValue().isBlank()) {
                return scalar.getValue();
            }
            wrong(key, "WRONG_TYPE", expected, null);
            return null;
        }

        String text(String key) {
            String text = scalar(key, "a text");
            return text == null ? "" : text;
        }

        int whole(String key, int least, int most, int otherwise) {
            String expected = "a whole number " + least + ".." + most;
            String text = scalar(key, expected);
            if (text == null) {
                return otherwise;
            }
            try {
                int value = Integer.parseInt(text);
                if (value >= least && value <= most) {
                    return value;
                }
                wrong(key, "OUT_OF_RANGE", expected, null);
            } catch (NumberFormatException e) {
                wrong(key, "WRONG_TYPE", expected, null);
            }
            return otherwise;
        }

        double number(String key, double otherwise) {
            if (!has(key)) {
                return otherwise;
            }
            String text = scalar(key, "a number");
            try {
                double value = text == null ? otherwise : Double.parseDouble(text);
                if (Double.isFinite(value)) {
                    return value;
                }
            } catch (NumberFormatException e) {
                // Said below, as for numbers beyond all bounds.
            }
            wrong(key, "WRONG_TYPE", "a number", null);
            return otherwise;
        }

        /** The place of the word among those allowed. */
        int choice(String key, List<String> allowed, int otherwise) {
            String expected = "one of " + String.join(", ", allowed);
            String text = scalar(key, expected);
            if (text == null || allowed.contains(text)) {
                return text == null ? otherwise : allowed.indexOf(text);
            }
            String fix = Nearest.to(text, allowed)
                    .map(near -> "did you mean " + near + "?")
                    .orElse(null);
            wrong(key, "UNKNOWN_NAME", expected, fix);
            return otherwise;
        }

        /** A list of groups; a missing or empty one is noted. */
        List<Group> groups(String key) {
            List<Group> groups = new ArrayList<>();
            Node value = values.get(key);
            if (value == null) {
                problem("MISSING_KEY", key, null, "a list of parts", "add " + key + ":; " + DOCUMENT);
            } else if (!(value instanceof SequenceNode list) || list.getValue().isEmpty()) {
                wrong(key, "WRONG_TYPE", "a list of parts, each after a dash", DOCUMENT);
            } else {
                for (Node item : list.getValue()) {
                    if (item instanceof MappingNode mapping) {
                        groups.add(new Group(mapping));
                    } else {
                        add(item, key, "WRONG_TYPE", found(item), "a part, as in - skip: 4", DOCUMENT);
                    }
                }
            }
            return groups;
        }

        /** A group of texts by name; empty if it is missing. */
        Map<String, String> texts(String key) {
            Map<String, String> texts = new LinkedHashMap<>();
            Node value = values.get(key);
            if (value instanceof MappingNode mapping) {
                Group group = new Group(mapping);
                group.values.keySet().forEach(name -> texts.put(name, group.text(name)));
            } else if (value != null) {
                wrong(key, "WRONG_TYPE", "a group of keys, as in 20.3: pitch", null);
            }
            return texts;
        }
    }
}
