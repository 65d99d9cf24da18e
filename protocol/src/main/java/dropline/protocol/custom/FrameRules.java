package dropline.protocol.custom;

import static dropline.protocol.custom.LayoutRules.hex;

import dropline.protocol.custom.Boundary.Counted;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Flaw.Code;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.ArrayList;
import java.util.List;

/** What must hold for one frame. */
final class FrameRules {
    private final Layout layout;
    private final FrameLayout frame;
    private final List<Flaw> flaws = new ArrayList<>();

    private FrameRules(Layout layout, FrameLayout frame) {
        this.layout = layout;
        this.frame = frame;
    }

    static List<Flaw> of(Layout layout, FrameLayout frame) {
        FrameRules rules = new FrameRules(layout, frame);
        rules.presence();
        if (!rules.flaws.isEmpty()) {
            return rules.flaws;
        }
        rules.items();
        rules.numbers();
        rules.checks();
        rules.widths();
        if (layout.boundary() instanceof Counted) {
            rules.counted();
        } else if (layout.boundary() instanceof Delimiters delimiters) {
            rules.delimiters(delimiters);
        }
        if (rules.flaws.stream().allMatch(Flaw::isCaution)) {
            rules.length();
        }
        return rules.flaws;
    }

    private void presence() {
        twice(Field.Items.class);
        twice(Field.Address.class);
        twice(Field.Counter.class);
        twice(Field.Length.class);
        if (frame.kind() == Kind.REQUEST && frame.first(Field.Address.class).isEmpty()) {
            String found = "a request without an address";
            missing(found, "an address: every node hears every request", "add the byte that says which node is meant");
        }
        boolean state = frame.kind() == Kind.STATE || frame.kind() == Kind.REQUEST_WITH_STATE;
        if (state && frame.items().isEmpty()) {
            String found = "a " + frame.kind().word() + " without signals";
            missing(found, "signals: how each value is written", "add signals:, or delete the frame");
        }
        if (frame.fields().isEmpty()) {
            missing("a frame without fields", "at least one field", "write what is sent, byte by byte");
        }
        if (frame.first(Field.Check.class).isEmpty()) {
            String found = "a " + frame.kind().word() + " without a check";
            String expected = "a check: one flipped bit otherwise shows a wrong value";
            add(Code.NO_CHECK, Flaw.NONE, found, expected, "even sum8 or xor8 finds every single flipped bit");
        }
    }

    private void twice(Class<? extends Field> type) {
        boolean seen = false;
        for (int i = 0; i < frame.fields().size(); i++) {
            Field field = frame.fields().get(i);
            if (type.isInstance(field) && seen) {
                add(Code.FIELD_TWICE, i, "a second one: " + field.name(), "one in a frame", "delete one of the two");
            }
            seen |= type.isInstance(field);
        }
    }

    private void missing(String found, String expected, String fix) {
        add(Code.FIELD_MISSING, Flaw.NONE, found, expected, fix);
    }

    private void items() {
        int index = frame.itemsIndex();
        if (frame.items().isEmpty()) {
            return;
        }
        Field.Items items = frame.items().get();
        long values =
                items.each().stream().filter(Field.Value.class::isInstance).count();
        long numbers =
                items.each().stream().filter(Field.ItemNumber.class::isInstance).count();
        if (values != 1 || numbers > 1) {
            String found = "an item with " + values + " values and " + numbers + " numbers";
            add(Code.ITEM_WRONG, index, found, "one value, and one number or none", "describe how one item is written");
        } else if (items.slots() > 0 && numbers > 0) {
            String found = "a number in each of " + items.slots() + " slots";
            String expected = "slots for items that are known by their place, or items with numbers, not both";
            add(Code.ITEM_WRONG, index, found, expected, "delete slots:, or number:");
        }
    }

    private void numbers() {
        for (int i = 0; i < frame.fields().size(); i++) {
            Field field = frame.fields().get(i);
            if (field instanceof Field.Check check
                    && check.form().most() < (1L << check.sum().bits()) - 1) {
                String found =
                        check.sum() + ", up to " + ((1L << check.sum().bits()) - 1) + ", written as " + check.form();
                String expected = "room for " + check.sum().bits() + " bits";
                add(
                        Code.DOES_NOT_HOLD,
                        i,
                        found,
                        expected,
                        "write as: uint" + check.sum().bits() + ", or more digits");
            } else if (field instanceof Field.Address address
                    && frame.kind() == Kind.STATE
                    && !address.form().holds((long) address.toAll() + address.plus())) {
                String found = "to-all " + address.toAll() + " written as " + address.form();
                add(Code.DOES_NOT_HOLD, i, found, "an address that fits", "check to-all and plus");
            } else if (field instanceof Field.Counter counter
                    && !(counter.form().holds(counter.plus()) && counter.form().holds(1L + counter.plus()))) {
                String found = "a counter written as " + counter.form() + " with " + counter.plus() + " added";
                add(Code.DOES_NOT_HOLD, i, found, "room for at least 0 and 1", "check the form and plus");
            }
        }
    }

    private void checks() {
        for (int i = 0; i < frame.fields().size(); i++) {
            if (!(frame.fields().get(i) instanceof Field.Check check)) {
                continue;
            }
            if (check.first() > check.last()) {
                String found = "a range that ends before it begins";
                add(Code.CHECK_RANGE, i, found, "first..last in the order of the fields", "turn it round");
            } else if (check.first() <= i && i <= check.last()) {
                String found = "a check that covers itself";
                add(
                        Code.CHECK_RANGE,
                        i,
                        found,
                        "a range that ends before or begins after it",
                        "end it one field earlier");
            } else if (coversLaterCheck(check, i)) {
                String found = "a check that covers another which is made after it";
                add(Code.CHECK_RANGE, i, found, "checks that cover only earlier ones", "change the range");
            } else if (check.first() == Field.Check.START && layout.lead() == 0) {
                String found = "a range from start, where no start byte is";
                add(Code.CHECK_RANGE, i, found, "a range that begins with a field", "name the first field it covers");
            }
        }
    }

    private boolean coversLaterCheck(Field.Check check, int index) {
        for (int i = index + 1; i <= check.last(); i++) {
            if (i >= check.first() && frame.fields().get(i) instanceof Field.Check) {
                return true;
            }
        }
        return false;
    }

    /** Behind a number of free width must stand what cannot be part of it. */
    private void widths() {
        List<Field> fields = frame.fields();
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            if (field.isFree() && (i > frame.itemsIndex() || runsOn(field, i + 1))) {
                widthUnknown(i, Flaw.NONE, field);
            }
            if (!(field instanceof Field.Items items)) {
                continue;
            }
            for (int part = 0; part < items.each().size(); part++) {
                Field one = items.each().get(part);
                boolean last = part == items.each().size() - 1;
                Field follows = last ? items.each().get(0) : items.each().get(part + 1);
                if (one.isFree() && (shares(one, follows) || (last && runsOn(one, i + 1)))) {
                    widthUnknown(i, part, one);
                }
            }
        }
    }

    private void widthUnknown(int field, int part, Field found) {
        String expected =
                "after a number of free width, a byte that cannot be part of it; after items, fixed widths only";
        String fix = "describe the separator, or give it a fixed width";
        flaws.add(new Flaw(
                Code.WIDTH_UNKNOWN, frame.kind(), field, part, found.name() + " of free width", expected, fix));
    }

    /** Whether what stands from that field on can go on as this number does; the frame's end cannot. */
    private boolean runsOn(Field number, int from) {
        if (from == frame.fields().size()) {
            return false;
        }
        Field next = frame.fields().get(from);
        if (next instanceof Field.Items items) {
            return shares(number, items.each().get(0)) || runsOn(number, from + 1);
        }
        return shares(number, next);
    }

    private static boolean shares(Field number, Field next) {
        for (int value = 0; value < 256; value++) {
            if (number.canBe(1, value) && next.canBe(0, value)) {
                return true;
            }
        }
        return false;
    }

    private void counted() {
        if (!(frame.fields().get(0) instanceof Field.Constant)) {
            String found = "a " + frame.kind().word() + " that begins with "
                    + frame.fields().get(0).name();
            String expected = "a constant at the beginning, by which a receiver finds it";
            add(
                    Code.LENGTH_UNKNOWN,
                    0,
                    found,
                    expected,
                    "describe what it begins with, or frame by delimiters or gaps");
        }
        if (frame.isFree()) {
            String found = "numbers of free width in a frame without an end";
            add(
                    Code.LENGTH_UNKNOWN,
                    Flaw.NONE,
                    found,
                    "fixed widths",
                    "frame by delimiters or gaps, or fix the widths");
        }
        boolean varies = frame.items().map(items -> items.slots() == 0).orElse(false);
        boolean said = frame.fields().subList(0, frame.itemsIndex()).stream().anyMatch(Field.Length.class::isInstance);
        if (varies && !said) {
            String found = "items without a length before them";
            String expected = "a length before the items, or slots: for a fixed number of them";
            add(Code.LENGTH_UNKNOWN, frame.itemsIndex(), found, expected, "how does your sketch know where it ends?");
        }
    }

    private void delimiters(Delimiters delimiters) {
        if (delimiters.escape() != null) {
            return;
        }
        for (int i = 0; i < frame.fields().size(); i++) {
            Field field = frame.fields().get(i);
            inside(delimiters, field, i, Flaw.NONE);
            if (field instanceof Field.Items items) {
                for (int part = 0; part < items.each().size(); part++) {
                    inside(delimiters, items.each().get(part), i, part);
                }
            }
        }
    }

    private void inside(Delimiters delimiters, Field field, int index, int part) {
        for (int value : new int[] {delimiters.start(), delimiters.end()}) {
            boolean occurs = false;
            for (int offset = 0; value >= 0 && offset < field.chars(); offset++) {
                occurs |= field.canBe(offset, value);
            }
            if (occurs) {
                boolean always = field instanceof Field.Constant;
                String which = value == delimiters.end() ? "end" : "start";
                String found =
                        "the " + which + " byte " + hex(value) + (always ? " in " : " may stand in ") + field.name();
                String expected = "no " + which + " byte inside a frame, unless it is escaped";
                String fix = always
                        ? "delete it here: the " + which + " byte is added to every frame"
                        : "write the value as text digits, or add escape: if your sketch escapes; as it is, such a"
                                + " frame is cut short";
                Code code = always ? Code.DELIMITER_INSIDE : Code.DELIMITER_MAY_OCCUR;
                flaws.add(new Flaw(code, frame.kind(), index, part, found, expected, fix));
                return;
            }
        }
    }

    private void length() {
        int slots = frame.items().map(Field.Items::slots).orElse(0);
        int least = Math.max(slots, frame.items().isPresent() && frame.kind() != Kind.REPLY ? 1 : slots);
        int chars = frame.chars(least) + layout.wrapping();
        if (chars > layout.longest()) {
            String found =
                    chars + " characters" + (least > 0 ? " with " + least + (least == 1 ? " item" : " items") : "");
            String expected = "at most " + layout.longest() + ", the longest frame";
            add(Code.FRAME_TOO_LONG, Flaw.NONE, found, expected, "raise longest: if your sketch's buffer is larger");
        }
        for (int i = 0; i < frame.fields().size(); i++) {
            if (frame.fields().get(i) instanceof Field.Length length) {
                long written = Fit.written(frame, i, length, least);
                if (!length.form().holds(written)) {
                    String found = length.name() + " of " + written + " in a frame with " + least
                            + (least == 1 ? " item" : " items") + ", written as " + length.form();
                    String expected =
                            length.form().least() + ".." + length.form().most();
                    add(Code.DOES_NOT_HOLD, i, found, expected, "check what it counts and plus:");
                }
            }
        }
    }

    private void add(Code code, int field, String found, String expected, String fix) {
        flaws.add(Flaw.of(code, frame.kind(), field, found, expected, fix));
    }
}
