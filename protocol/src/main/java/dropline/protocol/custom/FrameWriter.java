package dropline.protocol.custom;

import dropline.protocol.Bytes;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Escape;
import dropline.protocol.custom.CustomFrame.Item;
import java.util.ArrayList;
import java.util.List;

/** Writes one frame. */
final class FrameWriter {
    private final Layout layout;
    private final FrameLayout layoutOf;
    private final CustomFrame frame;
    private final byte[] bytes;
    private final int[] starts;
    private final int itemCount;

    FrameWriter(Layout layout, FrameLayout layoutOf, CustomFrame frame) {
        this.layout = layout;
        this.layoutOf = layoutOf;
        this.frame = frame;
        int slots = layoutOf.items().map(Field.Items::slots).orElse(0);
        itemCount = slots == 0 ? frame.items().size() : slots;
        if (frame.items().size() > itemCount
                || (itemCount > 0 && layoutOf.items().isEmpty())) {
            throw new IllegalArgumentException("a " + layoutOf.kind().word() + " must have room for its items: items="
                    + frame.items().size());
        }
        bytes = new byte[layout.lead() + layoutOf.chars(itemCount)];
        starts = new int[layoutOf.fields().size() + 1];
    }

    /** The frame part by part, as it goes over the wire: start byte, fields, end byte. */
    List<Part> parts() {
        if (layout.boundary() instanceof Delimiters delimiters && layout.lead() == 1) {
            bytes[0] = (byte) delimiters.start();
        }
        List<Field> fields = layoutOf.fields();
        starts[0] = layout.lead();
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            starts[i + 1] =
                    starts[i] + field.chars() + (field instanceof Field.Items s ? itemCount * s.eachChars() : 0);
        }
        for (int i = 0; i < fields.size(); i++) {
            write(fields.get(i), i);
        }
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i) instanceof Field.Check check) {
                int from = check.first() == Field.Check.START ? 0 : starts[check.first()];
                check.form().put(check.sum().of(bytes, from, starts[check.last() + 1]), bytes, starts[i]);
            }
        }
        return onTheWire();
    }

    private void write(Field field, int index) {
        int at = starts[index];
        if (field instanceof Field.Constant constant) {
            put(constant, at);
        } else if (field instanceof Field.Address address) {
            boolean all = frame.kind() == FrameLayout.Kind.STATE;
            address.form().put((all ? address.toAll() : frame.address()) + (long) address.plus(), bytes, at);
        } else if (field instanceof Field.Counter counter) {
            counter.form().put(counter.wrapped(frame.counter()) + counter.plus(), bytes, at);
        } else if (field instanceof Field.Length length) {
            int payload = layoutOf.items().map(Field.Items::eachChars).orElse(0) * itemCount;
            int end = starts[starts.length - 1];
            long counted = LengthCount.of(length, itemCount, payload, end - starts[index + 1], end - layout.lead());
            length.form().put(counted + length.plus(), bytes, at);
        } else if (field instanceof Field.Items items) {
            items(items, at);
        }
    }

    private void put(Field.Constant constant, int at) {
        for (int i = 0; i < constant.bytes().length(); i++) {
            bytes[at + i] = (byte) constant.bytes().at(i);
        }
    }

    private void items(Field.Items items, int from) {
        int at = from;
        for (int i = 0; i < itemCount; i++) {
            Item item = i < frame.items().size() ? frame.items().get(i) : new Item(0, 0);
            for (Field field : items.each()) {
                if (field instanceof Field.Constant constant) {
                    put(constant, at);
                } else if (field instanceof Field.ItemNumber number) {
                    number.form().put((long) item.number() + number.plus(), bytes, at);
                } else if (field instanceof Field.Value value) {
                    value.form().put(item.value(), bytes, at);
                }
                at += field.chars();
            }
        }
    }

    private List<Part> onTheWire() {
        List<Part> parts = new ArrayList<>();
        if (layout.lead() == 1) {
            parts.add(new Part("start", Bytes.of(bytes[0])));
        }
        for (int i = 0; i < layoutOf.fields().size(); i++) {
            if (starts[i + 1] > starts[i]) {
                parts.add(new Part(layoutOf.fields().get(i).name(), hidden(starts[i], starts[i + 1])));
            }
        }
        if (layout.boundary() instanceof Delimiters delimiters) {
            parts.add(new Part("end", Bytes.of(delimiters.end())));
        }
        return parts;
    }

    private Bytes hidden(int from, int to) {
        byte[] sent = new byte[2 * (to - from)];
        int length = 0;
        Delimiters delimiters = layout.boundary() instanceof Delimiters some ? some : null;
        Escape escape = delimiters == null ? null : delimiters.escape();
        for (int i = from; i < to; i++) {
            int value = bytes[i] & 0xFF;
            if (delimiters != null && escape != null && delimiters.isSpecial(value)) {
                sent[length++] = (byte) escape.with();
                value ^= escape.xor();
            }
            sent[length++] = (byte) value;
        }
        return Bytes.copyOf(sent, 0, length);
    }
}
