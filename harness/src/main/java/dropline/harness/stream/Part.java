package dropline.harness.stream;

import dropline.protocol.Bytes;
import java.util.List;

/** One part of a datagram, in the order in which they stand. */
sealed interface Part {

    /** The fewest bytes it takes. */
    int leastLength();

    /** Bytes that are always the same. */
    record Constant(Bytes bytes) implements Part {
        @Override
        public int leastLength() {
            return bytes.length();
        }
    }

    /** Bytes of no interest. */
    record Skip(int leastLength) implements Part {}

    /** A number counted up by the sender with every datagram. */
    record Counter(NumberForm form, boolean little) implements Part {
        @Override
        public int leastLength() {
            return form.length();
        }
    }

    /** The sender's time, in units of so many ns. */
    record Time(NumberForm form, boolean little, long unitNanos) implements Part {
        @Override
        public int leastLength() {
            return form.length();
        }
    }

    /** A signal; its value is what stands there times {@code scale} plus {@code offset}. */
    record Signal(String name, NumberForm form, boolean little, double scale, double offset) implements Part {
        @Override
        public int leastLength() {
            return form.length();
        }
    }

    /** Which values follow, within a repeated group. */
    record Index(NumberForm form, boolean little) implements Part {
        @Override
        public int leastLength() {
            return form.length();
        }
    }

    /** So many values, named by the group's index and, if there are several, their place, counted from 0. */
    record Values(NumberForm form, boolean little, double scale, double offset, int count) implements Part {
        @Override
        public int leastLength() {
            return form.length() * count;
        }
    }

    /** A group of parts again and again. */
    record Repeat(int times, List<Part> parts) implements Part {
        /** Up to the datagram's end. */
        static final int TO_THE_END = 0;

        public Repeat {
            parts = List.copyOf(parts);
        }

        @Override
        public int leastLength() {
            return times * groupLength();
        }

        int groupLength() {
            return parts.stream().mapToInt(Part::leastLength).sum();
        }
    }
}
