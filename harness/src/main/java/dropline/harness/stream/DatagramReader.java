package dropline.harness.stream;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.FileSort;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Numerals;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import dropline.protocol.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a datagram file; notes every problem and reads on. */
final class DatagramReader {
    private static final String PAGE = "docs/record.md";
    private static final int LONGEST = 65_507;
    private static final int MOST_VALUES = 8_192;

    /** What makes a part, by the key it begins with. */
    private static final List<String> PARTS =
            List.of("text", "bytes", "skip", "counter", "time", "signal", "index", "values", "repeat");

    private static final List<String> ONLY_REPEATED = List.of("index", "values");
    private static final List<String> NEVER_REPEATED = List.of("signal", "counter", "time", "repeat");
    private static final Map<String, NumberForm> FORMS = forms(false);
    private static final Map<String, NumberForm> COUNTING_FORMS = forms(true);
    private static final Map<String, Boolean> ORDERS = Map.of("big", false, "little", true);
    private static final Map<String, Long> UNITS =
            Map.of("s", 1_000_000_000L, "ms", 1_000_000L, "us", 1_000L, "ns", 1L);

    private final Report report;
    private boolean little;

    private DatagramReader(Report report) {
        this.report = report;
    }

    private static Map<String, NumberForm> forms(boolean counting) {
        Map<String, NumberForm> forms = new LinkedHashMap<>();
        Stream.of(NumberForm.values())
                .filter(form -> !counting || form.counts())
                .forEach(form -> forms.put(form.word(), form));
        return forms;
    }

    static DatagramLayout read(String file, String text) throws DatagramException {
        Report report = new Report();
        Optional<Tree> tree = TreeReader.read(file, text, report);
        if (tree.isPresent() && FileSort.DATAGRAM.isAnother(tree.get(), report)) {
            throw new DatagramException(report.list());
        }
        Optional<DatagramLayout> layout = tree.flatMap(root -> new DatagramReader(report).layout(file, root));
        if (layout.isEmpty() || !report.isEmpty()) {
            throw new DatagramException(report.list());
        }
        return layout.get();
    }

    private Optional<DatagramLayout> layout(String file, Tree root) {
        if (!(root instanceof Tree.Mapping mapping)) {
            report.at(root, "", KeyCode.WRONG_TYPE, "a group of keys, datagram: among them", "see " + PAGE);
            return Optional.empty();
        }
        Group group = new Group(mapping, "a datagram file", PAGE, report);
        little = order(group);
        DatagramLayout layout = new DatagramLayout(file, parts(group, "datagram", false), names(group));
        group.nothingElse();
        return Optional.of(layout);
    }

    private List<Part> parts(Group group, String key, boolean repeated) {
        List<Part> parts = new ArrayList<>();
        Optional<Tree> list = group.need(key, "a list of parts, as in - skip: 4");
        if (list.isPresent()
                && list.get() instanceof Tree.Sequence items
                && !items.items().isEmpty()) {
            items.items().forEach(item -> part(item, key, repeated).ifPresent(parts::add));
        } else {
            list.ifPresent(tree ->
                    report.at(tree, key, KeyCode.WRONG_TYPE, "a list of parts, each after a dash", "see " + PAGE));
        }
        return parts;
    }

    private Optional<Part> part(Tree item, String key, boolean repeated) {
        if (!(item instanceof Tree.Mapping mapping) || mapping.entries().isEmpty()) {
            report.at(item, key, KeyCode.WRONG_TYPE, "a part, as in - skip: 4", "see " + PAGE);
            return Optional.empty();
        }
        Optional<String> what = mapping.entries().stream()
                .map(entry -> entry.key().text())
                .filter(PARTS::contains)
                .findFirst();
        if (what.isEmpty()) {
            unknown(mapping);
            return Optional.empty();
        }
        if (repeated ? NEVER_REPEATED.contains(what.get()) : ONLY_REPEATED.contains(what.get())) {
            String expected = repeated ? "only outside a repeat" : "only inside the of: of a repeat";
            String fix = repeated ? "write values: inside a repeat" : "write signal: for a single value";
            report.at(mapping, what.get(), DatagramCode.MISPLACED_PART, what.get(), expected, fix);
            return Optional.empty();
        }
        Group group = new Group(mapping, "a part with " + what.get(), PAGE, report);
        Optional<Part> part = read(group, what.get());
        group.nothingElse();
        return part;
    }

    /** Notes that no key says which part this is, at the one that may have been meant to. */
    private void unknown(Tree.Mapping mapping) {
        Tree.Scalar key = mapping.entries().stream()
                .map(Tree.Entry::key)
                .filter(candidate -> Nearest.to(candidate.text(), PARTS).isPresent())
                .findFirst()
                .orElse(mapping.entries().get(0).key());
        String fix =
                Nearest.to(key.text(), PARTS).map(near -> "write " + near + ":").orElse("see " + PAGE);
        report.at(key, key.text(), DatagramCode.UNKNOWN_PART, "one of " + String.join(", ", PARTS), fix);
    }

    private Optional<Part> read(Group group, String what) {
        return switch (what) {
            case "text" ->
                group.needText(what, "a text")
                        .map(text -> text.text().getBytes(StandardCharsets.UTF_8))
                        .map(bytes -> new Part.Constant(Bytes.copyOf(bytes, 0, bytes.length)));
            case "bytes" -> bytes(group);
            case "skip" -> Optional.of(new Part.Skip(Numerals.whole(group, what, 1, LONGEST, 1)));
            case "counter" -> counting(group, what).map(form -> new Part.Counter(form, order(group)));
            case "index" -> counting(group, what).map(form -> new Part.Index(form, order(group)));
            case "time" -> time(group);
            case "signal" -> signal(group);
            case "values" -> values(group);
            case "repeat" -> repeat(group);
            default -> throw new AssertionError(what);
        };
    }

    private static Optional<Part> bytes(Group group) {
        String expected = "pairs of hexadecimal digits, as in 0D 0A";
        Optional<Tree.Scalar> text = group.needText("bytes", expected);
        Optional<Bytes> bytes = text.flatMap(pairs -> Numerals.pairs(pairs.text()));
        if (text.isPresent() && bytes.isEmpty()) {
            group.problem(text.get(), "bytes", KeyCode.WRONG_TYPE, expected, null);
        }
        return bytes.map(Part.Constant::new);
    }

    private Optional<Part> time(Group group) {
        Optional<NumberForm> form = form(group, "time");
        boolean order = order(group);
        long unit = group.choice("unit", UNITS).orElse(1_000_000_000L);
        return form.map(known -> new Part.Time(known, order, unit));
    }

    private Optional<Part> signal(Group group) {
        Optional<Tree.Scalar> name = group.needText("signal", "the name of a signal");
        Optional<NumberForm> form = form(group, "as");
        boolean order = order(group);
        double scale = scale(group);
        double offset = number(group, "offset", 0);
        return name.flatMap(known -> form.map(as -> new Part.Signal(known.text(), as, order, scale, offset)));
    }

    private Optional<Part> values(Group group) {
        Optional<NumberForm> form = form(group, "values");
        boolean order = order(group);
        double scale = scale(group);
        double offset = number(group, "offset", 0);
        int count = Numerals.whole(group, "count", 1, MOST_VALUES, 1);
        return form.map(known -> new Part.Values(known, order, scale, offset, count));
    }

    private Optional<Part> repeat(Group group) {
        boolean toTheEnd = group.text("repeat", "to the end, or how often")
                .filter(text -> text.text().equals("to the end"))
                .isPresent();
        int times = toTheEnd ? Part.Repeat.TO_THE_END : Numerals.whole(group, "repeat", 1, LONGEST, 1);
        return Optional.of(new Part.Repeat(times, parts(group, "of", true)));
    }

    private static double scale(Group group) {
        double scale = number(group, "scale", 1);
        if (scale == 0) {
            group.get("scale")
                    .ifPresent(at -> group.problem(at, "scale", KeyCode.OUT_OF_RANGE, "a number other than 0", null));
        }
        return scale;
    }

    private static double number(Group group, String key, double standard) {
        Optional<Tree.Scalar> text = group.text(key, "a number");
        if (text.isEmpty()) {
            return standard;
        }
        try {
            double value = Double.parseDouble(text.get().text());
            if (Double.isFinite(value)) {
                return value;
            }
            group.problem(text.get(), key, KeyCode.OUT_OF_RANGE, "a finite number", null);
        } catch (NumberFormatException e) {
            group.problem(text.get(), key, KeyCode.WRONG_TYPE, "a number", null);
        }
        return standard;
    }

    private static Optional<NumberForm> form(Group group, String key) {
        return group.need(key, "one of " + String.join(", ", FORMS.keySet())).isEmpty()
                ? Optional.empty()
                : group.choice(key, FORMS);
    }

    private static Optional<NumberForm> counting(Group group, String key) {
        return group.choice(key, COUNTING_FORMS);
    }

    private boolean order(Group group) {
        return group.choice("order", ORDERS).orElse(little);
    }

    /** What the values of repeated groups are called; none if nothing is said. */
    private Map<String, String> names(Group group) {
        Map<String, String> names = new LinkedHashMap<>();
        Optional<Tree> tree = group.get("names");
        if (tree.isPresent() && tree.get() instanceof Tree.Mapping mapping) {
            Group values = new Group(mapping, "names", PAGE, report);
            for (Tree.Entry entry : mapping.entries()) {
                String key = entry.key().text();
                values.text(key, "the name of a signal").ifPresent(name -> names.put(key, name.text()));
            }
        } else {
            tree.ifPresent(
                    other -> report.at(other, "names", KeyCode.WRONG_TYPE, "a group of keys, as in 20.3: pitch", null));
        }
        return names;
    }
}
