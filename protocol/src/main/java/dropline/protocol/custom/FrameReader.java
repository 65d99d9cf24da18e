package dropline.protocol.custom;

import dropline.protocol.Decoded.Reason;
import dropline.protocol.custom.CustomFrame.Item;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads one frame of a known kind from bytes that hold nothing else, the start byte included, the end byte not. */
final class FrameReader {
    private final Layout layout;
    private final FrameLayout frame;
    private final byte[] bytes;
    private final Cursor cursor;
    private final int end;
    private final int[] starts;
    private final int[] ends;
    private final List<Item> items = new ArrayList<>();
    private int address = CustomFrame.NONE;
    private int counter = CustomFrame.NONE;
    private long counted;
    private @Nullable Reason reason;

    FrameReader(Layout layout, FrameLayout frame, byte[] bytes, int end) {
        this.layout = layout;
        this.frame = frame;
        this.bytes = bytes;
        this.end = end;
        this.cursor = new Cursor(bytes, layout.lead(), end);
        this.starts = new int[frame.fields().size()];
        this.ends = new int[frame.fields().size()];
    }

    /** The frame, or null where the bytes are none of this kind; {@link #reason} then says why. */
    @Nullable
    CustomFrame read() {
        List<Field> fields = frame.fields();
        for (int i = 0; i < fields.size() && reason == null; i++) {
            starts[i] = cursor.at();
            read(fields.get(i), i);
            ends[i] = cursor.at();
        }
        if (reason == null && cursor.at() != end) {
            reason = Reason.BAD_LENGTH;
        }
        if (reason == null) {
            lengths();
        }
        if (reason == null) {
            checks();
        }
        return reason == null ? new CustomFrame(frame.kind(), address, counter, items) : null;
    }

    /** Why the last reading failed. */
    Reason reason() {
        return reason == null ? Reason.BAD_KIND : reason;
    }

    private void read(Field field, int index) {
        if (field instanceof Field.Constant constant) {
            constant(constant);
        } else if (field instanceof Field.Spare spare) {
            cursor.skip(spare.chars());
            fail(cursor.failed(), Reason.TOO_SHORT);
        } else if (field instanceof Field.Items some) {
            items(some, index);
        } else if (field instanceof Field.Numeric numeric) {
            long value = numeric.form().read(cursor);
            fail(cursor.failed(), cursor.at() == end ? Reason.TOO_SHORT : Reason.BAD_VALUE);
            numeric(numeric, value);
        } else {
            throw new AssertionError(field);
        }
    }

    private void constant(Field.Constant constant) {
        for (int i = 0; i < constant.bytes().length() && reason == null; i++) {
            boolean over = cursor.peek() < 0;
            fail(cursor.next() != constant.bytes().at(i), over ? Reason.TOO_SHORT : Reason.BAD_KIND);
        }
    }

    private void numeric(Field.Numeric numeric, long value) {
        if (numeric instanceof Field.Address at) {
            long whose = value - at.plus();
            boolean toAll = whose == at.toAll();
            fail(whose < 0 || (whose > layout.highestAddress() && !toAll), Reason.BAD_ADDRESS);
            boolean hasAll = layout.frame(Kind.STATE).isPresent();
            fail(frame.kind() == Kind.STATE ? !toAll : toAll && hasAll, Reason.BAD_ADDRESS);
            address = (int) whose;
        } else if (numeric instanceof Field.Counter number) {
            long count = value - number.plus();
            fail(count < 0 || count > Integer.MAX_VALUE, Reason.BAD_VALUE);
            counter = (int) count;
        } else if (numeric instanceof Field.Length length) {
            counted = value - length.plus();
        }
    }

    /** Items fill what the fields after them leave, or are as many as a length or the layout says. */
    private void items(Field.Items some, int index) {
        int after = frame.fields().subList(index + 1, frame.fields().size()).stream()
                .mapToInt(Field::chars)
                .sum();
        boolean known = some.slots() > 0;
        while (reason == null && (known ? items.size() < some.slots() : cursor.at() < end - after)) {
            int number = CustomFrame.NONE;
            long value = 0;
            for (Field field : some.each()) {
                if (field instanceof Field.Constant constant) {
                    constant(constant);
                    continue;
                }
                Field.Numeric numeric = (Field.Numeric) field;
                long read = numeric.form().read(cursor);
                if (numeric instanceof Field.ItemNumber of) {
                    fail(read < of.plus() || read - of.plus() > 65_535, Reason.BAD_VALUE);
                    number = (int) (read - of.plus());
                } else {
                    value = read;
                }
            }
            fail(cursor.failed(), Reason.BAD_VALUE);
            items.add(new Item(number, value));
        }
    }

    private void lengths() {
        for (int i = 0; i < frame.fields().size(); i++) {
            if (frame.fields().get(i) instanceof Field.Length length) {
                long real = LengthCount.of(length, items.size(), payloadChars(), end - ends[i], end - layout.lead());
                fail(real != counted, Reason.BAD_LENGTH);
            }
        }
    }

    private int payloadChars() {
        int index = frame.itemsIndex();
        return index == starts.length ? 0 : ends[index] - starts[index];
    }

    private void checks() {
        for (int i = 0; i < frame.fields().size(); i++) {
            if (frame.fields().get(i) instanceof Field.Check check) {
                int from = check.first() == Field.Check.START ? 0 : starts[check.first()];
                long received = check.form().read(new Cursor(bytes, starts[i], ends[i]));
                fail(check.sum().of(bytes, from, ends[check.last()]) != received, Reason.BAD_CHECK);
            }
        }
    }

    private void fail(boolean wrong, Reason why) {
        if (wrong && reason == null) {
            reason = why;
        }
    }
}
