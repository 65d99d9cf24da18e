package dropline.protocol.custom;

import dropline.protocol.Bytes;
import java.util.List;

/** One field of a frame. Fields follow each other without anything between them. */
public sealed interface Field {

    /** What a person calls it. */
    String name();

    /** Characters it takes, at most; 0 for items, whose number varies. */
    int chars();

    /** Whether it may take fewer characters than {@link #chars} when read. */
    default boolean isFree() {
        return false;
    }

    /** Whether a character of this value can stand at that offset of it. */
    boolean canBe(int offset, int value);

    /** Bytes that are always the same; what tells frames apart is such a constant too. */
    record Constant(String name, Bytes bytes) implements Field {
        @Override
        public int chars() {
            return bytes.length();
        }

        @Override
        public boolean canBe(int offset, int value) {
            return bytes.at(offset) == value;
        }
    }

    /** Bytes that this layout does not explain: sent as zeros, taken as they come. */
    record Spare(String name, int chars) implements Field {
        @Override
        public boolean canBe(int offset, int value) {
            return true;
        }
    }

    /** A field that holds one number. */
    sealed interface Numeric extends Field {
        NumberForm form();

        @Override
        default int chars() {
            return form().chars();
        }

        @Override
        default boolean isFree() {
            return form().isFree();
        }

        @Override
        default boolean canBe(int offset, int value) {
            return form().canBe(offset, value);
        }
    }

    /**
     * Who is meant, or who replies.
     *
     * @param plus added to the address before it is written
     * @param toAll stands in place of an address in a state frame for all nodes
     */
    record Address(String name, NumberForm form, int plus, int toAll) implements Numeric {}

    /**
     * The number of a state frame, modulo what fits; in a reply, that of the last one its node has.
     *
     * @param plus added before it is written
     */
    record Counter(String name, NumberForm form, int plus) implements Numeric {
        /** What stands for a sequence number, before {@link #plus}. */
        long wrapped(long sequence) {
            return Math.floorMod(sequence, Math.max(1, form.most() - plus + 1));
        }
    }

    /** What a length counts. */
    enum Counted {
        /** The items of the frame. */
        ITEMS,
        /** The characters of its items. */
        PAYLOAD,
        /** The characters after the length, up to the end of the frame, an end byte not counted. */
        REST,
        /** All characters, the length included, start and end bytes not counted. */
        FRAME
    }

    /**
     * How long something is.
     *
     * @param plus added to the count before it is written
     */
    record Length(String name, NumberForm form, Counted counted, int plus) implements Numeric {}

    /**
     * A check over the fields {@code first} to {@code last}.
     *
     * @param first index of the first field it covers; {@link #START} where it begins with the start byte
     * @param last index of the last field it covers
     */
    record Check(String name, Checksum sum, NumberForm form, int first, int last) implements Numeric {
        /** In place of an index: the start byte before the first field. */
        public static final int START = -1;
    }

    /** The number of a signal or control; stands in items only. */
    record ItemNumber(String name, NumberForm form, int plus) implements Numeric {}

    /** The value of a signal, in steps of its resolution, or of a control; stands in items only. */
    record Value(String name, NumberForm form) implements Numeric {}

    /**
     * The signals of a request or state frame, the controls of a reply, each written in the same way.
     *
     * <p>With a number in each, a frame carries those that changed; without, all of a node's in the order of their
     * numbers, every time, since only their places tell them apart.
     *
     * @param each how one is written: constants, {@link ItemNumber}, {@link Value}
     * @param slots so many each time, the last ones 0 where a node has fewer; 0 where there are as many as it has
     * @param most at most so many in a frame; 0 where only the longest frame limits them
     */
    record Items(String name, List<Field> each, int slots, int most) implements Field {
        public Items {
            each = List.copyOf(each);
        }

        @Override
        public int chars() {
            return 0;
        }

        @Override
        public boolean canBe(int offset, int value) {
            throw new IllegalStateException("items have no fixed place");
        }

        /** Characters of one item, at most. */
        public int eachChars() {
            return each.stream().mapToInt(Field::chars).sum();
        }

        boolean eachIsFree() {
            return each.stream().anyMatch(Field::isFree);
        }

        /** Whether each says which signal or control it is. */
        public boolean numbered() {
            return each.stream().anyMatch(ItemNumber.class::isInstance);
        }
    }
}
