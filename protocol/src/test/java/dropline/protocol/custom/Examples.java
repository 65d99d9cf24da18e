package dropline.protocol.custom;

import dropline.protocol.Bytes;
import dropline.protocol.crc.Crc;
import dropline.protocol.crc.CrcCatalogue;
import dropline.protocol.custom.Boundary.Counted;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Escape;
import dropline.protocol.custom.Boundary.Gap;
import dropline.protocol.custom.Boundary.SilenceUnit;
import dropline.protocol.custom.Checksum.Complement;
import dropline.protocol.custom.Checksum.Cyclic;
import dropline.protocol.custom.Checksum.ExclusiveOr;
import dropline.protocol.custom.Checksum.Sum;
import dropline.protocol.custom.DigitsForm.Style;
import dropline.protocol.custom.Field.Address;
import dropline.protocol.custom.Field.Check;
import dropline.protocol.custom.Field.Constant;
import dropline.protocol.custom.Field.Counter;
import dropline.protocol.custom.Field.ItemNumber;
import dropline.protocol.custom.Field.Items;
import dropline.protocol.custom.Field.Length;
import dropline.protocol.custom.Field.Value;
import dropline.protocol.custom.FrameLayout.Kind;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Layouts of several styles, invented for these tests. */
final class Examples {
    static final NumberForm UINT8 = new BinaryForm(1, false, false);
    static final NumberForm UINT16 = new BinaryForm(2, false, false);
    static final NumberForm LITTLE = new BinaryForm(2, false, true);
    static final NumberForm INT32 = new BinaryForm(4, true, false);

    /** Found by a constant and a length; CRC-16/IBM-3740, low byte first. */
    static final Layout COUNTED = new Layout(
            "counted",
            new Counted(),
            80,
            List.of(
                    counted(Kind.REQUEST, 0x31, signals()),
                    counted(Kind.STATE, 0x32, signals()),
                    counted(Kind.REPLY, 0x33, controls())));

    /** Lines of text that end with a line feed; exclusive-or in two hexadecimal digits. */
    static final Layout LINES = new Layout(
            "lines",
            new Delimiters(Delimiters.NO_START, '\n', null),
            250,
            List.of(
                    line(Kind.REQUEST, "?", List.of()),
                    line(Kind.REQUEST_WITH_STATE, ">", List.of(lineItems("S", 0, digits(Style.SIGNED, 12)))),
                    line(Kind.STATE, "!", List.of(lineItems("S", 4, digits(Style.SIGNED, 12)))),
                    line(Kind.REPLY, "=", List.of(lineItems("C", 0, digits(Style.DIGITS, 5))))));

    /** The same with numbers as wide as they need to be. */
    static final Layout FREE = new Layout(
            "free",
            new Delimiters('$', '\n', null),
            250,
            List.of(
                    line(Kind.REQUEST, "?", List.of()),
                    line(Kind.STATE, "!", List.of(lineItems("S", 0, new DigitsForm(Style.SIGNED, 7, true)))),
                    line(Kind.REPLY, "=", List.of(lineItems("C", 0, new DigitsForm(Style.DIGITS, 5, true))))));

    /** Between silences; all signals every time, a sum of 16 bits. */
    static final Layout GAPS = new Layout(
            "gaps",
            new Gap(2_500, SilenceUnit.CHARACTERS),
            1000,
            List.of(
                    gap(Kind.REQUEST, 0x10, new Items("signals", List.of(new Value("value", INT32)), 0, 0)),
                    gap(Kind.STATE, 0x20, new Items("signals", List.of(new Value("value", INT32)), 0, 0)),
                    gap(Kind.REPLY, 0x30, new Items("controls", List.of(new Value("value", UINT16)), 0, 0))));

    /** Escaped: start, end and escape byte hidden, sum of 8 bits in two's complement. */
    static final Layout ESCAPED = escaped(0x7C, 0x7E);

    /** The same with one byte for start and end. */
    static final Layout ONE_FLAG = escaped(0x7E, 0x7E);

    static final List<Layout> ALL = List.of(COUNTED, LINES, FREE, GAPS, ESCAPED, ONE_FLAG);

    private static final List<Custom> SPOKEN = ALL.stream().map(Custom::of).toList();

    private Examples() {}

    static Custom custom(Layout layout) {
        return SPOKEN.get(ALL.indexOf(layout));
    }

    static Constant hex(String name, String pairs) {
        return new Constant(name, Bytes.ofHex(pairs));
    }

    static Constant text(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        return new Constant(text, Bytes.copyOf(bytes, 0, bytes.length));
    }

    static DigitsForm digits(Style style, int width) {
        return new DigitsForm(style, width, false);
    }

    static Items signals() {
        return new Items("signals", List.of(new ItemNumber("number", UINT16, 0), new Value("value", INT32)), 0, 0);
    }

    static Items controls() {
        return new Items("controls", List.of(new ItemNumber("number", UINT8, 0), new Value("value", LITTLE)), 0, 0);
    }

    private static FrameLayout counted(Kind kind, int code, Items items) {
        return new FrameLayout(
                kind,
                List.of(
                        hex("begin", "A5 5A"),
                        new Constant("kind", Bytes.of(code)),
                        new Address("address", UINT8, 0, 0),
                        new Counter("counter", UINT8, 0),
                        new Length("length", UINT8, Field.Counted.ITEMS, 0),
                        items,
                        new Check("check", new Cyclic(new Crc(CrcCatalogue.CRC_16_IBM_3740)), LITTLE, 1, 5)));
    }

    private static FrameLayout line(Kind kind, String sign, List<Items> items) {
        List<Field> fields = new ArrayList<>();
        fields.add(text(sign));
        fields.add(new Address("address", digits(Style.DIGITS, 3), 0, 0));
        fields.addAll(items);
        fields.add(text("*"));
        fields.add(new Check("check", new ExclusiveOr(), digits(Style.HEX, 2), 0, fields.size() - 2));
        return new FrameLayout(kind, fields);
    }

    private static Items lineItems(String letter, int most, NumberForm value) {
        return new Items(
                letter,
                List.of(
                        text("," + letter),
                        new ItemNumber("number", digits(Style.DIGITS, 5), 0),
                        text("="),
                        new Value("value", value)),
                0,
                most);
    }

    private static FrameLayout gap(Kind kind, int code, Items items) {
        return new FrameLayout(
                kind,
                List.of(
                        new Address("address", UINT8, 0, 0),
                        new Constant("kind", Bytes.of(code)),
                        items,
                        new Check("check", new Sum(16, Complement.ONES), UINT16, 0, 2)));
    }

    private static Layout escaped(int start, int end) {
        return new Layout(
                "escaped",
                new Delimiters(start, end, new Escape(0x7D, 0x20)),
                64,
                List.of(
                        flagged(Kind.REQUEST, 0x01, List.of()),
                        flagged(Kind.STATE, 0x02, List.of(signals())),
                        flagged(Kind.REPLY, 0x81, List.of(controls()))));
    }

    private static FrameLayout flagged(Kind kind, int code, List<Items> items) {
        List<Field> fields = new ArrayList<>();
        fields.add(new Constant("kind", Bytes.of(code)));
        fields.add(new Address("address", UINT8, 0, 0));
        fields.add(new Counter("counter", UINT8, 0));
        fields.addAll(items);
        fields.add(new Check("check", new Sum(8, Complement.TWOS), UINT8, Check.START, fields.size() - 1));
        return new FrameLayout(kind, fields);
    }
}
