package dropline.harness.layout;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Numerals;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.Bytes;
import dropline.protocol.custom.Checksum;
import dropline.protocol.custom.Field;
import dropline.protocol.custom.FrameLayout.Kind;
import dropline.protocol.custom.NumberForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Reads the fields of one frame, each a group of keys whose first says what it is. */
final class FrameFields {
    private static final Map<String, Field.Counted> COUNTED = Map.of(
            "items", Field.Counted.ITEMS,
            "payload", Field.Counted.PAYLOAD,
            "rest", Field.Counted.REST,
            "frame", Field.Counted.FRAME);
    private static final List<String> PARTS_OF_ITEM = LayoutKeys.PARTS;
    private static final List<String> NUMBERS = List.of("address", "length", "counter", "check");

    private final Kind kind;
    private final Report report;
    private final Forms forms;
    private final List<String> inFrame;
    private final List<Field> fields = new ArrayList<>();
    private final List<Tree> places = new ArrayList<>();
    private final List<List<Tree>> partPlaces = new ArrayList<>();
    private boolean whole = true;

    FrameFields(Kind kind, Forms forms, Report report) {
        this.kind = kind;
        this.forms = forms;
        this.report = report;
        List<String> known = new ArrayList<>(List.of("bytes", "text", "spare"));
        known.addAll(NUMBERS);
        known.add(itemsKey());
        inFrame = List.copyOf(known);
    }

    /** Reads the list; false where any of it is wrong. */
    boolean read(Tree tree) {
        if (!(tree instanceof Tree.Sequence list) || list.items().isEmpty()) {
            String expected = "a list of fields, each on a line that begins with - and one of " + words(inFrame);
            report.at(tree, kind.word(), KeyCode.WRONG_TYPE, expected, null);
            return false;
        }
        List<Group> checks = new ArrayList<>();
        for (Tree item : list.items()) {
            Optional<String> what = what(item, inFrame);
            if (what.isEmpty() || !(item instanceof Tree.Mapping mapping)) {
                whole = false;
                continue;
            }
            Group group = new Group(
                    mapping, LayoutKeys.field(what.get()), "a field with " + what.get(), LayoutFile.PAGE, report);
            Optional<Field> field = read(group, what.get());
            group.nothingElse();
            if (field.isEmpty()) {
                whole = false;
                continue;
            }
            if (field.get() instanceof Field.Check) {
                checks.add(group);
            }
            fields.add(field.get());
            places.add(item);
            if (!(field.get() instanceof Field.Items)) {
                partPlaces.add(List.of());
            }
        }
        if (whole) {
            ranges(checks);
        }
        return whole;
    }

    List<Field> fields() {
        return fields;
    }

    Tree place(int field) {
        return places.get(field);
    }

    Tree place(int field, int part) {
        return partPlaces.get(field).get(part);
    }

    private String itemsKey() {
        return kind == Kind.REPLY ? "controls" : "signals";
    }

    /** Which of the known fields this is, or empty with the reason reported. */
    private Optional<String> what(Tree item, List<String> known) {
        if (!(item instanceof Tree.Mapping mapping)) {
            String expected = "a field: one of " + words(known) + ", and a colon";
            report.at(item, kind.word(), KeyCode.WRONG_TYPE, expected, null);
            return Optional.empty();
        }
        List<String> present = mapping.entries().stream()
                .map(entry -> entry.key().text())
                .filter(known::contains)
                .distinct()
                .toList();
        if (present.size() > 1) {
            String fix = "begin each field with a - of its own";
            report.at(item, present.get(1), LayoutCode.CONFLICT, "one of " + words(present) + " in a field", fix);
        } else if (present.isEmpty()) {
            unknown(mapping, known);
        }
        return present.size() == 1 ? Optional.of(present.get(0)) : Optional.empty();
    }

    /** Which field was meant is not known, so that nothing can be said of the keys beside its own. */
    private void unknown(Tree.Mapping field, List<String> known) {
        String expected = "a field: one of " + words(known) + ", and a colon";
        List<Tree.Scalar> keys = field.entries().stream().map(Tree.Entry::key).toList();
        if (keys.isEmpty()) {
            report.at(field, kind.word(), KeyCode.WRONG_TYPE, expected, null);
            return;
        }
        Tree.Scalar meant = keys.stream()
                .filter(key -> Nearest.to(key.text(), known).isPresent())
                .findFirst()
                .orElse(keys.get(0));
        String fix = Nearest.to(meant.text(), known)
                .map(near -> "write " + near + ":")
                .orElse("see " + LayoutFile.PAGE + " for what there is");
        report.at(meant, meant.text(), KeyCode.UNKNOWN_KEY, expected, fix);
    }

    private Optional<Field> read(Group group, String what) {
        return switch (what) {
            case "bytes", "text" -> constant(group, what);
            case "spare" -> {
                int chars = Numerals.whole(group, "spare", 1, 1000, 1);
                yield Optional.of(new Field.Spare(name(group, what), chars));
            }
            case "address" -> {
                int plus = plus(group);
                int toAll = Numerals.whole(group, "to-all", 0, 65_535, 0);
                String name = name(group, what);
                yield forms.read(group, what).map(form -> new Field.Address(name, form, plus, toAll));
            }
            case "counter" -> {
                int plus = plus(group);
                String name = name(group, what);
                yield forms.read(group, what).map(form -> new Field.Counter(name, form, plus));
            }
            case "length" -> length(group);
            case "check" -> check(group);
            default -> items(group);
        };
    }

    private Optional<Field> constant(Group group, String key) {
        boolean text = key.equals("text");
        String expected = text ? "text, in quotes" : "pairs of hexadecimal digits: A5 5A";
        Optional<Tree.Scalar> scalar = group.needText(key, expected);
        Function<String, Optional<Bytes>> reading = text ? Numerals::ascii : Numerals::pairs;
        Optional<Bytes> bytes = scalar.map(Tree.Scalar::text).flatMap(reading);
        if (scalar.isPresent() && bytes.isEmpty()) {
            String fix = text ? "write bytes: and the byte values" : "write text: for what a person can read";
            report.at(scalar.get(), key, KeyCode.WRONG_TYPE, expected, fix);
        }
        String name = name(group, key);
        return bytes.map(b -> new Field.Constant(name, b));
    }

    private Optional<Field> length(Group group) {
        Optional<NumberForm> form = forms.read(group, "length");
        int plus = plus(group);
        String expected = "of: frame, items, payload or rest";
        Optional<Field.Counted> of =
                group.need("of", expected).isPresent() ? group.choice("of", COUNTED) : Optional.empty();
        String name = name(group, "length");
        return form.isPresent() && of.isPresent()
                ? Optional.of(new Field.Length(name, form.get(), of.get(), plus))
                : Optional.empty();
    }

    private Optional<Field> check(Group group) {
        Optional<Checksum> sum = new Checks(report).read(group);
        Optional<NumberForm> form =
                forms.readOr(group, "as", sum.map(Checksum::bits).orElse(8));
        String expected = "the first and the last field it covers, such as address..signals";
        boolean range = group.needText("over", expected).isPresent();
        String name = name(group, "check");
        return sum.isPresent() && form.isPresent() && range
                ? Optional.of(new Field.Check(name, sum.get(), form.get(), 0, 0))
                : Optional.empty();
    }

    private Optional<Field> items(Group group) {
        String key = itemsKey();
        int slots = Numerals.whole(group, "slots", 1, 1000, 0);
        int most = Numerals.whole(group, "most", 1, 1000, 0);
        Optional<Tree> value = group.need(key, "how one is written, a list of fields");
        String name = name(group, key);
        if (value.isEmpty()
                || !(value.get() instanceof Tree.Sequence list)
                || list.items().isEmpty()) {
            value.ifPresent(v -> report.at(
                    v, key, KeyCode.WRONG_TYPE, "how one is written: a list of " + words(PARTS_OF_ITEM), null));
            return Optional.empty();
        }
        List<Field> each = new ArrayList<>();
        for (Tree part : list.items()) {
            part(part).ifPresent(each::add);
        }
        if (each.size() < list.items().size()) {
            return Optional.empty();
        }
        partPlaces.add(list.items());
        return Optional.of(new Field.Items(name, each, slots, most));
    }

    private Optional<Field> part(Tree tree) {
        Optional<String> what = what(tree, PARTS_OF_ITEM);
        if (what.isEmpty() || !(tree instanceof Tree.Mapping mapping)) {
            return Optional.empty();
        }
        Group group =
                new Group(mapping, LayoutKeys.part(what.get()), "a field with " + what.get(), LayoutFile.PAGE, report);
        Optional<Field> part =
                switch (what.get()) {
                    case "number" -> {
                        int plus = plus(group);
                        String name = name(group, "number");
                        yield forms.read(group, "number").map(form -> new Field.ItemNumber(name, form, plus));
                    }
                    case "value" -> {
                        String name = name(group, "value");
                        yield forms.read(group, "value").map(form -> new Field.Value(name, form));
                    }
                    default -> constant(group, what.get());
                };
        group.nothingElse();
        return part;
    }

    private static int plus(Group group) {
        return Numerals.whole(group, "plus", -65_536, 65_536, 0);
    }

    private static String name(Group group, String standard) {
        return group.text("name", "a name").map(Tree.Scalar::text).orElse(standard);
    }

    /** Which fields a check covers can be told once all have their names. */
    private void ranges(List<Group> checks) {
        int next = 0;
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i) instanceof Field.Check check) {
                Tree.Scalar over =
                        checks.get(next++).text("over", "first..last").orElseThrow();
                String[] ends = over.text().split("\\.\\.", -1);
                if (ends.length > 2) {
                    report.at(over, "over", KeyCode.WRONG_TYPE, "first..last, two names of fields", null);
                    whole = false;
                    continue;
                }
                Optional<Integer> first =
                        ends[0].strip().equals("start") ? Optional.of(Field.Check.START) : named(over, ends[0].strip());
                Optional<Integer> last = named(over, ends[ends.length - 1].strip());
                whole &= first.isPresent() && last.isPresent();
                if (first.isPresent() && last.isPresent()) {
                    fields.set(i, new Field.Check(check.name(), check.sum(), check.form(), first.get(), last.get()));
                }
            }
        }
    }

    private Optional<Integer> named(Tree.Scalar over, String name) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).name().equals(name)) {
                found.add(i);
            }
        }
        if (found.size() == 1) {
            return Optional.of(found.get(0));
        }
        if (found.isEmpty()) {
            List<String> names = fields.stream().map(Field::name).distinct().toList();
            String fix = Nearest.to(name, names)
                    .map(near -> "write " + near + " in place of " + name)
                    .orElse("give the field meant a name: with name: " + name);
            String expected = "fields of this frame: " + String.join(", ", names);
            report.at(over, "over", LayoutCode.UNKNOWN_NAME, expected, fix);
        } else {
            String many = String.format(Locale.ROOT, "%s, which %d fields are called", name, found.size());
            String fix = "give them names: - {bytes: A5, name: begin}";
            report.at(over, "over", LayoutCode.AMBIGUOUS_FIELD, many, "a name that one field has", fix);
        }
        return Optional.empty();
    }

    private static String words(List<String> keys) {
        return String.join(", ", keys.subList(0, keys.size() - 1)) + " or " + keys.get(keys.size() - 1);
    }
}
