package dropline.harness.layout;

import dropline.harness.yaml.FileSort;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Numerals;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.Bytes;
import dropline.protocol.custom.Boundary;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Escape;
import dropline.protocol.custom.Boundary.Gap;
import dropline.protocol.custom.Boundary.SilenceUnit;
import dropline.protocol.custom.Flaw;
import dropline.protocol.custom.FrameLayout;
import dropline.protocol.custom.FrameLayout.Kind;
import dropline.protocol.custom.Layout;
import dropline.protocol.custom.LayoutRules;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Makes a layout of a tree, and says where the rules of layouts are broken. */
final class LayoutReader {
    private static final String FRAMING =
            "length, or gap: 3.5 characters, or end: and perhaps start:, escape: and xor:";
    private static final String SILENCE = "a silence such as 3.5 characters, 20 bits or 750 us";
    private static final String ONE_BYTE =
            "one byte: two hexadecimal digits (7E), or one character in quotes (\"\\n\")";
    private static final int LONGEST = 64;
    private static final Pattern GAP = Pattern.compile("([0-9]{1,6}(?:\\.[0-9]{1,3})?) ?(characters?|bits?|us|ms)");

    private final Report report;
    private final Map<Kind, FrameFields> frames = new EnumMap<>(Kind.class);
    private final Map<Kind, Tree> frameNames = new EnumMap<>(Kind.class);

    LayoutReader(Report report) {
        this.report = report;
    }

    /** The layout, or empty with the reasons reported. Cautions go into {@code cautions}. */
    Optional<Layout> read(Tree tree, Report cautions) {
        if (FileSort.LAYOUT.isAnother(tree, report)) {
            return Optional.empty();
        }
        if (!(tree instanceof Tree.Mapping mapping)) {
            report.at(tree, "", KeyCode.WRONG_TYPE, "keys: framing, frames, and what else a layout has", null);
            return Optional.empty();
        }
        Group root = new Group(mapping, LayoutKeys.LAYOUT, "a layout", LayoutFile.PAGE, report);
        Optional<String> name = root.text("layout", "a name for the layout").map(Tree.Scalar::text);
        Optional<Boundary> boundary = root.need("framing", FRAMING).flatMap(this::boundary);
        int longest = Numerals.whole(root, "longest", 2, 65_535, LONGEST);
        boolean little = Forms.order(root).orElse(false);
        List<FrameLayout> laidOut = root.need("frames", "request, reply, and what else there is")
                .map(frame -> frames(frame, new Forms(report, little)))
                .orElse(List.of());
        root.nothingElse();
        if (!report.isEmpty() || boundary.isEmpty()) {
            return Optional.empty();
        }
        Layout layout = new Layout(name.orElse("custom"), boundary.get(), longest, laidOut);
        Tree framing = root.get("framing").orElseThrow();
        for (Flaw flaw : LayoutRules.of(layout)) {
            Tree at = place(flaw, framing, root.get("frames").orElseThrow());
            (flaw.isCaution() ? cautions : report)
                    .at(at, key(flaw), flaw.code(), flaw.found(), flaw.expected(), flaw.fix());
        }
        return report.isEmpty() ? Optional.of(layout) : Optional.empty();
    }

    private List<FrameLayout> frames(Tree tree, Forms forms) {
        List<FrameLayout> laidOut = new ArrayList<>();
        if (!(tree instanceof Tree.Mapping mapping)) {
            report.at(tree, "frames", KeyCode.WRONG_TYPE, "frames, each a list of fields indented below it", null);
            return laidOut;
        }
        Group group = new Group(mapping, LayoutKeys.FRAMES, "frames", LayoutFile.PAGE, report);
        for (Kind kind : Kind.values()) {
            Optional<Tree> fields = group.get(kind.word());
            if (fields.isPresent()) {
                FrameFields reading = new FrameFields(kind, forms, report);
                if (reading.read(fields.get())) {
                    laidOut.add(new FrameLayout(kind, reading.fields()));
                }
                frames.put(kind, reading);
                mapping.entries().stream()
                        .filter(entry -> entry.key().text().equals(kind.word()))
                        .findFirst()
                        .ifPresent(entry -> frameNames.put(kind, entry.key()));
            }
        }
        group.nothingElse();
        return laidOut;
    }

    private Optional<Boundary> boundary(Tree tree) {
        if (tree instanceof Tree.Scalar scalar && scalar.text().equals("length")) {
            return Optional.of(new Boundary.Counted());
        }
        if (!(tree instanceof Tree.Mapping mapping)) {
            report.at(tree, "framing", KeyCode.WRONG_TYPE, FRAMING, null);
            return Optional.empty();
        }
        Group group = new Group(mapping, LayoutKeys.FRAMING, "framing", LayoutFile.PAGE, report);
        Optional<Boundary> boundary = group.has("gap") ? gap(group) : delimiters(group);
        group.nothingElse();
        return boundary;
    }

    private Optional<Boundary> gap(Group group) {
        for (String other : List.of("start", "end", "escape", "xor")) {
            group.get(other)
                    .ifPresent(at -> report.at(
                            at,
                            other,
                            LayoutCode.CONFLICT,
                            "gap: or end:, not both",
                            "delete the one your sketch does not use"));
        }
        Optional<Tree.Scalar> text = group.needText("gap", SILENCE);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Matcher matcher = GAP.matcher(text.get().text());
        if (!matcher.matches()) {
            report.at(text.get(), "gap", KeyCode.WRONG_TYPE, SILENCE, null);
            return Optional.empty();
        }
        String unit = matcher.group(2);
        long thousandths = new BigDecimal(matcher.group(1))
                .movePointRight(unit.equals("ms") ? 6 : 3)
                .longValueExact();
        if (thousandths < 1 || thousandths > 1_000_000_000L) {
            report.at(text.get(), "gap", KeyCode.OUT_OF_RANGE, "above 0 and at most 1 s", null);
            return Optional.empty();
        }
        SilenceUnit counted = unit.startsWith("char")
                ? SilenceUnit.CHARACTERS
                : unit.startsWith("bit") ? SilenceUnit.BITS : SilenceUnit.MICROSECONDS;
        return Optional.of(new Gap(thousandths, counted));
    }

    private Optional<Boundary> delimiters(Group group) {
        boolean hasStart = group.has("start");
        Optional<Integer> start = hasStart ? oneByte(group, "start") : Optional.of(Delimiters.NO_START);
        Optional<Integer> end = oneByte(group, "end");
        boolean xored = group.has("xor");
        boolean escapes = group.has("escape") || xored;
        Optional<Integer> with = escapes ? oneByte(group, "escape") : Optional.empty();
        Optional<Integer> xor = escapes ? oneByte(group, "xor") : Optional.empty();
        if (start.isEmpty() || end.isEmpty() || (escapes && (with.isEmpty() || xor.isEmpty()))) {
            return Optional.empty();
        }
        Escape escape = escapes ? new Escape(with.orElseThrow(), xor.orElseThrow()) : null;
        return Optional.of(new Delimiters(start.get(), end.get(), escape));
    }

    private Optional<Integer> oneByte(Group group, String key) {
        Optional<Tree.Scalar> scalar = group.needText(key, ONE_BYTE);
        Optional<Bytes> bytes = scalar.flatMap(s -> s.quoted() ? Numerals.ascii(s.text()) : Numerals.pairs(s.text()));
        if (scalar.isPresent() && (bytes.isEmpty() || bytes.get().length() != 1)) {
            String fix =
                    "of two end bytes, such as \\r\\n, the last is the end: and the first is the frame's last field";
            report.at(scalar.get(), key, KeyCode.WRONG_TYPE, ONE_BYTE, key.equals("end") ? fix : null);
            return Optional.empty();
        }
        return bytes.map(b -> b.at(0));
    }

    private Tree place(Flaw flaw, Tree framing, Tree all) {
        Kind kind = flaw.frame();
        if (kind == null) {
            return flaw.code() == Flaw.Code.FRAME_MISSING ? all : framing;
        }
        FrameFields fields = frames.get(kind);
        if (flaw.field() == Flaw.NONE || fields == null) {
            return frameNames.getOrDefault(kind, all);
        }
        return flaw.part() == Flaw.NONE ? fields.place(flaw.field()) : fields.place(flaw.field(), flaw.part());
    }

    private String key(Flaw flaw) {
        Kind kind = flaw.frame();
        return kind != null ? kind.word() : flaw.code() == Flaw.Code.FRAME_MISSING ? "frames" : "framing";
    }
}
