package dropline.harness.layout;

import dropline.harness.yaml.Form;
import dropline.harness.yaml.Form.Entry;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The keys of layout files, declared once: what {@link LayoutReader} may ask for, and what a schema is made of. */
final class LayoutKeys {
    /** What an item of a list is written with. */
    static final List<String> PARTS = List.of("bytes", "text", "number", "value");

    private static final Form YES_NO = Form.choice("yes", "no");
    private static final Entry NAME = Entry.optional("name", Form.text(), "its name, for check and for people");
    private static final Entry PLUS = Entry.optional("plus", whole(-65_536, 65_536), "what is added to it on the wire");
    private static final Entry ORDER =
            Entry.optional("order", Form.choice("big", "little"), "which of its bytes comes first");

    static final Form.Keys FRAMING = Form.keys(
            "where a frame begins and ends",
            Entry.optional("gap", Form.text(), "the silence between frames, such as 3.5 characters"),
            Entry.optional("start", Form.text(), "the byte before a frame"),
            Entry.optional("end", Form.text(), "the byte after it"),
            Entry.optional("escape", Form.text(), "the byte that escapes these inside a frame"),
            Entry.optional("xor", Form.text(), "what an escaped byte is combined with"));

    static final Form.Keys FRAMES = frames();

    static final Form.Keys LAYOUT = Form.keys(
            "A protocol of one's own, for Dropline (docs/custom-protocols.md).",
            Entry.optional("layout", Form.text(), "its name"),
            Entry.required(
                    "framing",
                    new Form.Any(List.of(Form.choice("length"), FRAMING)),
                    "how frames are told apart: length, a gap, or bytes around them"),
            Entry.optional("longest", whole(2, 65_535), "the longest frame, in characters"),
            Entry.optional("order", Form.choice("big", "little"), "which byte of a number comes first"),
            Entry.required("frames", FRAMES, "request, reply, and what else there is"));

    private LayoutKeys() {}

    /** A whole number, decimal or hexadecimal with 0x. */
    private static Form whole(long least, long most) {
        return new Form.Any(List.of(new Form.Whole(least, most), new Form.Pattern("0[xX][0-9A-Fa-f]+")));
    }

    private static Form.Keys frames() {
        List<Entry> frames = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            List<String> items = kind == Kind.REPLY ? List.of("controls") : List.of("signals");
            List<Form> fields = Stream.concat(
                            Stream.of("bytes", "text", "spare", "address", "length", "counter", "check"),
                            items.stream())
                    .<Form>map(LayoutKeys::field)
                    .toList();
            frames.add(Entry.optional(kind.word(), new Form.Items(new Form.Any(fields), 1), "its fields, in order"));
        }
        return new Form.Keys("frames", frames);
    }

    /** The keys of a field of a frame, by the one that says what it is. */
    static Form.Keys field(String what) {
        return switch (what) {
            case "bytes", "text" -> constant(what);
            case "spare" ->
                Form.keys("bytes that mean nothing", Entry.required("spare", whole(1, 1000), "how many"), NAME);
            case "address" ->
                Form.keys(
                        "the address of the node that is meant",
                        Entry.required("address", Form.text(), Forms.WORDS),
                        PLUS,
                        ORDER,
                        Entry.optional("to-all", whole(0, 65_535), "the address that means all nodes"),
                        NAME);
            case "counter" ->
                Form.keys("a counter", Entry.required("counter", Form.text(), Forms.WORDS), PLUS, ORDER, NAME);
            case "length" ->
                Form.keys(
                        "a length",
                        Entry.required("length", Form.text(), Forms.WORDS),
                        Entry.required("of", Form.choice("items", "payload", "rest", "frame"), "what it counts"),
                        PLUS,
                        ORDER,
                        NAME);
            case "check" ->
                Form.keys(
                        "a check",
                        Entry.required("check", Form.text(), "a CRC by its name, sum8, sum16, xor8 or crc"),
                        Entry.required("over", Form.text(), "the first and the last field it covers"),
                        Entry.optional("as", Form.text(), Forms.WORDS),
                        ORDER,
                        NAME,
                        Entry.optional(
                                "complement", Form.choice("none", "ones", "twos"), "of a sum: how it is turned over"),
                        Entry.optional("width", whole(8, 32), "of crc: 8, 16 or 32"),
                        Entry.optional("polynomial", Form.text(), "of crc: hexadecimal, without its highest bit"),
                        Entry.optional("initial", Form.text(), "of crc: hexadecimal"),
                        Entry.optional("reflect-in", YES_NO, "of crc"),
                        Entry.optional("reflect-out", YES_NO, "of crc"),
                        Entry.optional("final-xor", Form.text(), "of crc: hexadecimal"));
            default ->
                Form.keys(
                        "what is told, as a list of how one item is written",
                        Entry.required(
                                what,
                                new Form.Items(
                                        new Form.Any(PARTS.stream()
                                                .<Form>map(LayoutKeys::part)
                                                .toList()),
                                        1),
                                "how one is written"),
                        Entry.optional("slots", whole(1, 1000), "how many there always are"),
                        Entry.optional("most", whole(1, 1000), "how many there are at most"),
                        NAME);
        };
    }

    /** The keys of a part of an item. */
    static Form.Keys part(String what) {
        return switch (what) {
            case "number" ->
                Form.keys(
                        "the number of the signal or control",
                        Entry.required("number", Form.text(), Forms.WORDS),
                        PLUS,
                        ORDER,
                        NAME);
            case "value" -> Form.keys("its value", Entry.required("value", Form.text(), Forms.WORDS), ORDER, NAME);
            default -> constant(what);
        };
    }

    private static Form.Keys constant(String what) {
        return Form.keys("bytes that are always the same", Entry.required(what, Form.text(), "what they are"), NAME);
    }
}
