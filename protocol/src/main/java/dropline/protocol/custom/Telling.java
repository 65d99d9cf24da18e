package dropline.protocol.custom;

import dropline.protocol.custom.Boundary.Counted;
import dropline.protocol.custom.FrameLayout.Kind;

/** Whether two kinds of frame can be told apart, whatever they say. */
final class Telling {
    private Telling() {}

    static boolean apart(Layout layout, FrameLayout one, FrameLayout other) {
        return byCharacters(layout, one, other)
                || byAddress(one, other)
                || byAddress(other, one)
                || (!(layout.boundary() instanceof Counted) && byLength(layout, one, other));
    }

    /** No character can stand in both at some place that both always have. */
    private static boolean byCharacters(Layout layout, FrameLayout one, FrameLayout other) {
        int common = Math.min(one.prefixChars(), other.prefixChars());
        for (int offset = 0; offset < common; offset++) {
            boolean shared = false;
            for (int value = 0; value < 256; value++) {
                shared |= canBe(layout, one, offset, value) && canBe(layout, other, offset, value);
            }
            if (!shared) {
                return true;
            }
        }
        return false;
    }

    /** Of an address in one byte it also counts that no frame holds a higher one than all can. */
    private static boolean canBe(Layout layout, FrameLayout frame, int offset, int value) {
        int at = 0;
        for (Field field : frame.fields()) {
            boolean single = field instanceof Field.Address && field.chars() == 1 && at == offset;
            if (single && ((Field.Address) field).form() instanceof BinaryForm) {
                int address = value - ((Field.Address) field).plus();
                boolean toAll = frame.kind() == Kind.STATE && address == ((Field.Address) field).toAll();
                return toAll || (address >= 0 && address <= layout.highestAddress());
            }
            at += field.chars();
        }
        return frame.canBe(offset, value);
    }

    /** One is for all nodes, the other for one, and both say so in the same place. */
    private static boolean byAddress(FrameLayout state, FrameLayout other) {
        int mine = addressAt(state);
        int theirs = addressAt(other);
        if (state.kind() != Kind.STATE || other.kind() == Kind.STATE || mine < 0 || mine != theirs) {
            return false;
        }
        Field.Address all = state.first(Field.Address.class).orElseThrow();
        Field.Address single = other.first(Field.Address.class).orElseThrow();
        return all.form().equals(single.form()) && all.plus() == single.plus() && all.toAll() == single.toAll();
    }

    private static int addressAt(FrameLayout frame) {
        for (int i = 0; i < frame.fields().size(); i++) {
            Field field = frame.fields().get(i);
            if (field instanceof Field.Address) {
                int offset = frame.offset(i);
                return offset + field.chars() <= frame.prefixChars() ? offset : -1;
            }
        }
        return -1;
    }

    private static boolean byLength(Layout layout, FrameLayout one, FrameLayout other) {
        return longest(layout, one) < shortest(other) || longest(layout, other) < shortest(one);
    }

    private static int shortest(FrameLayout frame) {
        int slots = frame.items().map(Field.Items::slots).orElse(0);
        int chars = frame.chars(slots);
        for (Field field : frame.fields()) {
            chars -= field.isFree() ? field.chars() - 1 : 0;
        }
        return chars
                - slots
                        * frame.items().stream()
                                .flatMap(items -> items.each().stream())
                                .filter(Field::isFree)
                                .mapToInt(field -> field.chars() - 1)
                                .sum();
    }

    private static int longest(Layout layout, FrameLayout frame) {
        int slots = frame.items().map(Field.Items::slots).orElse(0);
        return frame.items().isPresent() && slots == 0 ? layout.longest() : frame.chars(slots);
    }
}
