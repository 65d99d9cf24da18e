package dropline.harness.stream;

import dropline.harness.yaml.FileSort;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import dropline.protocol.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads a datagram file; notes every problem and reads on. */
final class DatagramReader {
    private static final int LONGEST = 65_507;
    private static final List<String> FORMS =
            Stream.of(NumberForm.values()).map(NumberForm::word).toList();
    private static final Map<String, List<String>> PARTS = parts();

    private boolean little;

    private DatagramReader() {}

    /** Every kind of part by its first key, with the other keys it may have. */
    private static Map<String, List<String>> parts() {
        Map<String, List<String>> parts = new LinkedHashMap<>();
        parts.put("text", List.of());
        parts.put("bytes", List.of());
        parts.put("skip", List.of());
        parts.put("counter", List.of("order"));
        parts.put("time", List.of("order", "unit"));
        parts.put("signal", List.of("as", "order", "scale", "offset"));
        parts.put("index", List.of("order"));
        parts.put("values", List.of("count", "order", "scale", "offset"));
        parts.put("repeat", List.of("of"));
        return parts;
    }

    static DatagramLayout read(String file, String text) throws DatagramException {
        Report report = new Report();
        Optional<Tree> tree = TreeReader.read(file, text, report);
        DatagramReader reader = new DatagramReader();
        DatagramLayout layout = null;
        if (tree.isPresent() && FileSort.DATAGRAM.isAnother(tree.get(), report)) {
            throw new DatagramException(report.list());
        }
        if (tree.isPresent() && tree.get() instanceof Tree.Mapping mapping) {
            layout = reader.layout(file, new Group(mapping, report));
        } else if (tree.isPresent()) {
            String expected = "a group of keys that begins with datagram:";
            report.at(tree.get(), "", DatagramCode.WRONG_TYPE, expected, "see docs/record.md");
        }
        if (layout == null || !report.isEmpty()) {
            throw new DatagramException(report.list());
        }
        return layout;
    }

    private DatagramLayout layout(String file, Group root) {
        root.only(List.of("order", "datagram", "names"));
        little = order(root);
        return new DatagramLayout(file, parts(root, "datagram", false), root.texts("names"));
    }

    private List<Part> parts(Group group, String key, boolean repeated) {
        List<Part> parts = new ArrayList<>();
        for (Group item : group.groups(key)) {
            String kind = PARTS.keySet().stream().filter(item::has).findFirst().orElse(null);
            if (kind == null) {
                item.unknownPart(List.copyOf(PARTS.keySet()));
                continue;
            }
            List<String> allowed = new ArrayList<>(List.of(kind));
            allowed.addAll(PARTS.get(kind));
            item.only(allowed);
            Part part = part(item, kind, repeated);
            if (part != null) {
                parts.add(part);
            }
        }
        return parts;
    }

    private @Nullable Part part(Group item, String kind, boolean repeated) {
        boolean grouped = kind.equals("index") || kind.equals("values");
        boolean single = kind.equals("signal") || kind.equals("counter") || kind.equals("time");
        if (grouped && !repeated || repeated && (single || kind.equals("repeat"))) {
            item.unused(
                    kind,
                    grouped ? "only inside the of: of a repeat" : "only outside a repeat",
                    grouped ? "write signal: for a single value" : "write values: inside a repeat");
            return null;
        }
        return switch (kind) {
            case "text" -> constant(item);
            case "bytes" -> bytes(item);
            case "skip" -> new Part.Skip(item.whole(kind, 1, LONGEST));
            case "counter" -> new Part.Counter(counting(item, kind), order(item));
            case "time" -> new Part.Time(form(item, kind), order(item), unitNanos(item));
            case "signal" ->
                new Part.Signal(item.text(kind), form(item, "as"), order(item), scale(item), item.number("offset", 0));
            case "index" -> new Part.Index(counting(item, kind), order(item));
            case "values" ->
                new Part.Values(
                        form(item, kind),
                        order(item),
                        scale(item),
                        item.number("offset", 0),
                        item.has("count") ? item.whole("count", 1, 8_192) : 1);
            case "repeat" -> repeat(item);
            default -> throw new AssertionError(kind);
        };
    }

    private static @Nullable Part constant(Group item) {
        byte[] text = item.text("text").getBytes(StandardCharsets.UTF_8);
        return text.length == 0 ? null : new Part.Constant(Bytes.copyOf(text, 0, text.length));
    }

    private static @Nullable Part bytes(Group item) {
        String pairs = item.text("bytes");
        try {
            byte[] bytes = HexFormat.of().parseHex(pairs.replace(" ", ""));
            return bytes.length == 0 ? null : new Part.Constant(Bytes.copyOf(bytes, 0, bytes.length));
        } catch (IllegalArgumentException e) {
            item.wrong("bytes", DatagramCode.WRONG_TYPE, "pairs of hexadecimal digits, as in 0D 0A");
            return null;
        }
    }

    private Part repeat(Group item) {
        boolean toTheEnd = item.text("repeat").equals("to the end");
        int times = toTheEnd ? Part.Repeat.TO_THE_END : item.whole("repeat", 1, LONGEST);
        return new Part.Repeat(times, parts(item, "of", true));
    }

    private static double scale(Group item) {
        double scale = item.number("scale", 1);
        if (scale == 0) {
            item.wrong("scale", DatagramCode.OUT_OF_RANGE, "a number other than 0");
        }
        return scale;
    }

    private NumberForm counting(Group item, String key) {
        NumberForm form = form(item, key);
        if (!form.counts()) {
            item.wrong(key, DatagramCode.WRONG_TYPE, "uint8, uint16 or uint32");
        }
        return form;
    }

    private static NumberForm form(Group item, String key) {
        int chosen = item.choice(key, FORMS);
        return NumberForm.values()[chosen];
    }

    private boolean order(Group group) {
        List<String> orders = List.of("big", "little");
        return group.has("order") ? group.choice("order", orders) == 1 : little;
    }

    private static long unitNanos(Group item) {
        List<String> units = List.of("s", "ms", "us", "ns");
        int unit = item.has("unit") ? item.choice("unit", units) : 0;
        return new long[] {1_000_000_000L, 1_000_000L, 1_000L, 1L}[unit];
    }
}
