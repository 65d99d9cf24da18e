package dropline.protocol.custom;

import java.util.List;
import java.util.Optional;

/**
 * How one kind of frame looks, from its first field to its last; start and end bytes come on top.
 *
 * @param kind who says it and what for
 * @param fields in the order sent
 */
public record FrameLayout(Kind kind, List<Field> fields) {

    /** The frames a protocol may have, as they are called in a layout file. */
    public enum Kind {
        /** A poll; it carries state if it has signals. */
        REQUEST("request"),
        /** A poll that carries state, where it looks different from one that does not. */
        REQUEST_WITH_STATE("request-with-state"),
        /** State for all nodes, which nobody answers. */
        STATE("state"),
        /** A node's answer. */
        REPLY("reply");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** As written in a layout file. */
        public String word() {
            return word;
        }
    }

    public FrameLayout {
        fields = List.copyOf(fields);
    }

    /** The first field of a kind. */
    <F extends Field> Optional<F> first(Class<F> type) {
        return fields.stream().filter(type::isInstance).map(type::cast).findFirst();
    }

    /** The signals or controls it carries. */
    public Optional<Field.Items> items() {
        return first(Field.Items.class);
    }

    /** Characters of all fields but the items, at most. */
    int fixedChars() {
        return fields.stream().mapToInt(Field::chars).sum();
    }

    /** Characters of a frame with so many items, at most. */
    int chars(int items) {
        return fixedChars() + items().map(i -> i.eachChars() * items).orElse(0);
    }

    boolean isFree() {
        return fields.stream().anyMatch(Field::isFree)
                || items().map(Field.Items::eachIsFree).orElse(false);
    }

    /** Index of the items among the fields, or the number of fields. */
    int itemsIndex() {
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i) instanceof Field.Items) {
                return i;
            }
        }
        return fields.size();
    }

    /** Characters from the beginning whose place never varies. */
    int prefixChars() {
        int chars = 0;
        for (Field field : fields.subList(0, itemsIndex())) {
            if (field.isFree()) {
                return chars;
            }
            chars += field.chars();
        }
        return chars;
    }

    /** Whether a character of this value can stand so far from the beginning, within {@link #prefixChars}. */
    boolean canBe(int offset, int value) {
        int at = offset;
        for (Field field : fields) {
            if (at < field.chars()) {
                return field.canBe(at, value);
            }
            at -= field.chars();
        }
        throw new IndexOutOfBoundsException("offset must lie before the items: offset=" + offset);
    }

    /** Offset of a field's first character, where no free width and no items stand before it. */
    int offset(int field) {
        return fields.subList(0, field).stream().mapToInt(Field::chars).sum();
    }
}
