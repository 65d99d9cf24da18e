package dropline.harness.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Text to tree: strict YAML 1.2, one document, no aliases, so that every part has one place. */
public final class TreeReader {
    private static final int DEEPEST = 20;

    private final String file;
    private final Report report;

    private TreeReader(String file, Report report) {
        this.file = file;
        this.report = report;
    }

    /** The document, or empty with the reason reported. */
    public static Optional<Tree> read(String file, String text, Report report) {
        return new TreeReader(file, report).read(text);
    }

    private Optional<Tree> read(String text) {
        if (hasTabs(text)) {
            return Optional.empty();
        }
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setAllowDuplicateKeys(true)
                .setCodePointLimit(Integer.MAX_VALUE)
                .build();
        try {
            if (!isPlain(new Parse(settings).parseString(text))) {
                return Optional.empty();
            }
            Optional<Tree> tree = new Compose(settings).composeString(text).map(this::convert);
            if (tree.isEmpty() || (tree.get() instanceof Tree.Scalar scalar && scalar.isNothing())) {
                report.at(
                        Place.whole(file),
                        "",
                        YamlCode.EMPTY_FILE,
                        null,
                        "keys, each with its value",
                        "write what the file is to say; docs/pit-file.md, docs/suite-file.md and"
                                + " docs/custom-protocols.md show how");
                return Optional.empty();
            }
            return report.isEmpty() ? tree : Optional.empty();
        } catch (MarkedYamlEngineException e) {
            badYaml(e);
        } catch (ReaderException e) {
            badCharacter(e, text);
        } catch (YamlEngineException e) {
            report.at(Place.whole(file), "", YamlCode.BAD_YAML, null, e.getMessage(), null);
        }
        return Optional.empty();
    }

    private boolean hasTabs(String text) {
        int line = 0;
        int first = 0;
        int column = 0;
        int lines = 0;
        for (String content : text.split("\n", -1)) {
            line++;
            int at = 0;
            while (at < content.length() && content.charAt(at) == ' ') {
                at++;
            }
            if (at < content.length() && content.charAt(at) == '\t' && !content.isBlank()) {
                first = first == 0 ? line : first;
                column = first == line ? at + 1 : column;
                lines++;
            }
        }
        if (lines > 0) {
            String found = lines == 1 ? "a tab" : "a tab, and on " + (lines - 1) + " more lines";
            report.at(
                    new Place(file, first, column),
                    "",
                    YamlCode.TAB_IN_INDENT,
                    found,
                    "spaces",
                    "replace each tab by two spaces");
        }
        return lines > 0;
    }

    private Place place(Mark mark) {
        return new Place(file, mark.getLine() + 1, mark.getColumn() + 1);
    }

    private boolean isPlain(Iterable<Event> events) {
        int depth = 0;
        for (Event event : events) {
            if (event instanceof AliasEvent alias) {
                Mark mark = alias.getStartMark().orElseThrow();
                report.at(
                        place(mark),
                        "",
                        YamlCode.ALIAS_USED,
                        "*" + alias.getAlias(),
                        "no aliases",
                        "write the values out; in a pit file, give them a name under profiles: or adapters: and use"
                                + " like:");
            }
            depth += event instanceof CollectionStartEvent ? 1 : event instanceof CollectionEndEvent ? -1 : 0;
            if (depth > DEEPEST) {
                Mark mark = event.getStartMark().orElseThrow();
                String most = "at most " + DEEPEST + " groups inside each other";
                report.at(place(mark), "", YamlCode.TOO_DEEP, null, most, null);
                return false;
            }
        }
        return report.isEmpty();
    }

    private void badYaml(MarkedYamlEngineException e) {
        Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
        String context = e.getContext();
        String problem = e.getProblem();
        report.at(
                mark.map(this::place).orElse(Place.whole(file)),
                "",
                YamlCode.BAD_YAML,
                oneLine(problem),
                "YAML 1.2" + (context == null ? "" : " (" + oneLine(context) + ")"),
                "check indentation, colons, quotes and brackets on this line and the one before");
    }

    private void badCharacter(ReaderException e, String text) {
        int at = Math.min(e.getPosition(), text.codePointCount(0, text.length()));
        String before = text.substring(0, text.offsetByCodePoints(0, at));
        int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
        int column = before.length() - before.lastIndexOf('\n');
        String found = String.format(Locale.ROOT, "the character U+%04X", e.getCodePoint());
        report.at(
                new Place(file, line, column), "", YamlCode.BAD_YAML, found, "printable text", "delete the character");
    }

    private static @Nullable String oneLine(@Nullable String text) {
        return text == null ? null : text.strip().replaceAll("\\s+", " ");
    }

    private Tree convert(Node node) {
        Mark mark = node.getStartMark().orElseThrow();
        Place place = place(mark);
        if (node instanceof ScalarNode scalar) {
            return new Tree.Scalar(scalar.getValue(), !scalar.isPlain(), place);
        }
        if (node instanceof SequenceNode sequence) {
            return new Tree.Sequence(
                    sequence.getValue().stream().map(this::convert).toList(), place);
        }
        if (node instanceof MappingNode mapping) {
            List<Tree.Entry> entries = new ArrayList<>();
            for (NodeTuple tuple : mapping.getValue()) {
                Tree key = convert(tuple.getKeyNode());
                if (key instanceof Tree.Scalar name) {
                    entries.add(new Tree.Entry(name, convert(tuple.getValueNode())));
                } else {
                    report.at(key, "", YamlCode.BAD_YAML, "a key that is one word or a line of text", null);
                }
            }
            return new Tree.Mapping(entries, place);
        }
        throw new AssertionError(node);
    }
}
