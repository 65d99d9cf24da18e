package dropline.bus.run;

import dropline.protocol.Bytes;
import dropline.protocol.Protocol;
import dropline.protocol.custom.BinaryForm;
import dropline.protocol.custom.Boundary;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Escape;
import dropline.protocol.custom.Boundary.Gap;
import dropline.protocol.custom.Boundary.SilenceUnit;
import dropline.protocol.custom.Checksum;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.DigitsForm;
import dropline.protocol.custom.DigitsForm.Style;
import dropline.protocol.custom.Field;
import dropline.protocol.custom.FrameLayout;
import dropline.protocol.custom.FrameLayout.Kind;
import dropline.protocol.custom.Layout;
import dropline.protocol.custom.NumberForm;
import java.util.List;

/** Protocols of a builder's own, one for each way a frame can be bounded. */
final class InventedLayouts {
    private static final List<Custom> ALL = List.of(
            laidOut(new Boundary.Counted(), false),
            laidOut(new Delimiters(Delimiters.NO_START, '\n', null), true),
            laidOut(new Delimiters('$', '\n', null), true),
            laidOut(new Delimiters(Delimiters.NO_START, 0x7E, new Escape(0x7D, 0x20)), false),
            laidOut(new Gap(2_500, SilenceUnit.CHARACTERS), false));

    static final int COUNT = ALL.size();

    private InventedLayouts() {}

    static Protocol of(int which) {
        return ALL.get(which);
    }

    private static Custom laidOut(Boundary boundary, boolean text) {
        return Custom.of(new Layout(
                "invented",
                boundary,
                64,
                List.of(
                        frame(Kind.REQUEST, '?', text),
                        frame(Kind.REQUEST_WITH_STATE, '+', text),
                        frame(Kind.STATE, '!', text),
                        frame(Kind.REPLY, '=', text))));
    }

    private static FrameLayout frame(Kind kind, int sign, boolean text) {
        NumberForm shortForm = text ? new DigitsForm(Style.DIGITS, 3, false) : new BinaryForm(1, false, false);
        NumberForm longForm = text ? new DigitsForm(Style.DIGITS, 5, false) : new BinaryForm(2, false, true);
        Field.Items items = new Field.Items(
                "items",
                kind == Kind.REQUEST
                        ? List.of()
                        : List.of(new Field.ItemNumber("number", shortForm, 0), new Field.Value("value", longForm)),
                0,
                0);
        Field begin = new Field.Constant("begin", Bytes.of(sign, '/'));
        Field address = new Field.Address("address", shortForm, 0, 0);
        Field length = new Field.Length("length", shortForm, Field.Counted.ITEMS, 0);
        NumberForm checkForm = text ? new DigitsForm(Style.HEX, 2, false) : new BinaryForm(1, false, false);
        Field check = new Field.Check("check", new Checksum.ExclusiveOr(), checkForm, 0, 1);
        return new FrameLayout(
                kind,
                kind == Kind.REQUEST ? List.of(begin, address, check) : List.of(begin, address, length, items, check));
    }
}
