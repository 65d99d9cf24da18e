package dropline.harness.learn;

import dropline.protocol.Bytes;
import java.io.ByteArrayOutputStream;

/** A way in which a receiver might find where frames begin and end. */
sealed interface Framing {
    /** No frame is shorter, or longer. */
    int SHORTEST = 3;

    int LONGEST = 255;

    /** The frames that one finds so; where only a right check tells an end, none. */
    Walk walk(Sample sample);

    /** Those whose check is right. */
    default Walk walk(Sample sample, CheckPlace check) {
        return walk(sample).sound(check);
    }

    /** Whether frames are known only by their checks. */
    default boolean needsCheck() {
        return false;
    }

    /** Of two that explain a stretch equally well, the one of the lower rank is meant: it says more. */
    int rank();

    /** What all frames begin with, as far as it takes part in finding them. */
    default int markerLength() {
        return 0;
    }

    /**
     * Frames that say how long they are.
     *
     * @param marker what they begin with; may be empty
     * @param offset of the length, from the begin
     * @param each bytes counted by one of it
     * @param plus bytes of a frame whose length says 0
     */
    record ByLength(Bytes marker, int offset, int each, int plus) implements Framing {
        @Override
        public int rank() {
            return 0;
        }

        @Override
        public int markerLength() {
            return marker.length();
        }

        @Override
        public boolean needsCheck() {
            return marker.length() == 0;
        }

        @Override
        public Walk walk(Sample sample) {
            Walk walk = new Walk();
            int at = 0;
            while (at < sample.length() && !needsCheck()) {
                int end = end(sample, at);
                if (end > 0 && (end == sample.length() || begins(sample, end))) {
                    walk.add(sample.part(at, end), end - at);
                    at = end;
                } else {
                    at++;
                }
            }
            return walk;
        }

        @Override
        public Walk walk(Sample sample, CheckPlace check) {
            Walk walk = new Walk();
            int at = 0;
            while (at < sample.length()) {
                int end = end(sample, at);
                if (end > 0 && check.holds(sample.bytes(), at, end)) {
                    walk.add(sample.part(at, end), end - at);
                    at = end;
                } else {
                    at++;
                }
            }
            return walk;
        }

        private boolean begins(Sample sample, int at) {
            for (int i = 0; i < marker.length(); i++) {
                if (at + i >= sample.length() || sample.at(at + i) != marker.at(i)) {
                    return false;
                }
            }
            return true;
        }

        /** Where a frame that begins here ends; 0 where none begins. */
        private int end(Sample sample, int at) {
            if (at + offset >= sample.length() || !begins(sample, at)) {
                return 0;
            }
            int length = sample.at(at + offset) * each + plus;
            return length > offset && length >= SHORTEST && length <= LONGEST && at + length <= sample.length()
                    ? at + length
                    : 0;
        }
    }

    /** Frames that begin with a marker and end where the check is right, next to another marker. */
    record ByMarker(Bytes marker) implements Framing {
        @Override
        public int rank() {
            return 2;
        }

        @Override
        public int markerLength() {
            return marker.length();
        }

        @Override
        public boolean needsCheck() {
            return true;
        }

        @Override
        public Walk walk(Sample sample) {
            return new Walk();
        }

        @Override
        public Walk walk(Sample sample, CheckPlace check) {
            Walk walk = new Walk();
            int at = next(sample, 0);
            while (at < sample.length()) {
                int end = next(sample, at + SHORTEST);
                while (end < sample.length() && end - at <= LONGEST && !check.holds(sample.bytes(), at, end)) {
                    end = next(sample, end + 1);
                }
                if (end - at <= LONGEST && check.holds(sample.bytes(), at, end)) {
                    walk.add(sample.part(at, end), end - at);
                    at = end;
                } else {
                    at = next(sample, at + 1);
                }
            }
            return walk;
        }

        /** The next marker, or the end of the sample. */
        private int next(Sample sample, int from) {
            for (int at = from; at + marker.length() <= sample.length(); at++) {
                int i = 0;
                while (i < marker.length() && sample.at(at + i) == marker.at(i)) {
                    i++;
                }
                if (i == marker.length()) {
                    return at;
                }
            }
            return sample.length();
        }
    }

    /**
     * Frames that end with a byte.
     *
     * @param start begins them, or -1
     * @param escape stands before a byte that would be taken for one of these, or -1
     * @param xor turned in the byte after it
     */
    record ByEnd(int start, int end, int escape, int xor) implements Framing {
        @Override
        public int rank() {
            return start >= 0 ? 1 : 3;
        }

        @Override
        public int markerLength() {
            return start >= 0 ? 1 : 0;
        }

        @Override
        public Walk walk(Sample sample) {
            Walk walk = new Walk();
            int begin = 0;
            for (int at = 0; at < sample.length(); at++) {
                if (sample.at(at) == end) {
                    frame(sample, begin, at, walk);
                    begin = at + 1;
                }
            }
            return walk;
        }

        private void frame(Sample sample, int begin, int at, Walk walk) {
            int from = begin;
            if (start == end && !hasOwnStart(sample, begin)) {
                return;
            }
            if (start >= 0 && start != end) {
                from = at - 1;
                while (from >= begin && sample.at(from) != start) {
                    from--;
                }
                if (from < begin) {
                    return;
                }
            }
            if (at - from < SHORTEST - 1 || at - from > LONGEST) {
                return;
            }
            byte[] frame = escape < 0 ? sample.part(from, at) : unescaped(sample, from, at);
            if (start >= 0 && start == end) {
                byte[] whole = new byte[frame.length + 1];
                whole[0] = (byte) start;
                System.arraycopy(frame, 0, whole, 1, frame.length);
                frame = whole;
            }
            walk.add(frame, at - from + (start == end ? 2 : 1));
        }

        /** Where one byte both begins and ends a frame, two stand between frames. */
        private boolean hasOwnStart(Sample sample, int begin) {
            return begin > 0 && (begin == 1 || sample.at(begin - 2) == end);
        }

        private byte[] unescaped(Sample sample, int from, int to) {
            ByteArrayOutputStream plain = new ByteArrayOutputStream(to - from);
            for (int i = from; i < to; i++) {
                boolean turned = sample.at(i) == escape && i + 1 < to;
                plain.write(turned ? sample.at(++i) ^ xor : sample.at(i));
            }
            return plain.toByteArray();
        }
    }

    /**
     * Frames between silences.
     *
     * @param leastNanos the shortest silence that ends one, ns
     */
    record BySilence(long leastNanos) implements Framing {
        @Override
        public int rank() {
            return 4;
        }

        @Override
        public Walk walk(Sample sample) {
            Walk walk = new Walk();
            int begin = 0;
            for (int at = 1; at <= sample.length(); at++) {
                if (at == sample.length() || sample.silenceNanos(at) >= leastNanos) {
                    if (at - begin >= SHORTEST && at - begin <= LONGEST) {
                        walk.add(sample.part(begin, at), at - begin);
                    }
                    begin = at;
                }
            }
            return walk;
        }
    }
}
