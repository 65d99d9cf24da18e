package dropline.harness.learn;

import dropline.protocol.Bytes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The ways of finding frames that are worth a closer look. */
final class Framings {
    private static final double MARKER_SHARE = 1.0 / 80;
    private static final double END_SHARE = 1.0 / 150;
    private static final int MOST_MARKERS = 14;
    private static final int MOST_ENDS = 24;
    private static final int LAST_OFFSET = 4;
    private static final int MOST_PLUS = 14;
    private static final int MOST_EACH = 4;
    private static final int MOST_BY_LENGTH = 40;
    /** How much of the sample must lie in chained frames for a length to be worth its checks. */
    private static final double CHAINED = 0.4;

    private static final long[] SILENCES_NANOS = {150_000, 400_000, 900_000, 1_700_000, 3_000_000, 6_000_000};

    private Framings() {}

    /** Those that find frames by themselves. */
    static List<Framing> of(Sample sample) {
        List<Framing> all = new ArrayList<>(byLength(sample, markers(sample)));
        for (int end : sample.frequent(END_SHARE, MOST_ENDS)) {
            all.addAll(byEnd(sample, end));
        }
        for (long silence : SILENCES_NANOS) {
            all.add(new Framing.BySilence(silence));
        }
        return all;
    }

    /** Those that need a right check to know a frame. */
    static List<Framing> blind(Sample sample) {
        List<Framing> all = new ArrayList<>();
        for (int offset = 0; offset < LAST_OFFSET; offset++) {
            for (int plus = offset + 2; plus <= offset + 6; plus++) {
                all.add(new Framing.ByLength(Bytes.of(), offset, 1, plus));
            }
            all.add(new Framing.ByLength(Bytes.of(), offset, 1, 0));
        }
        markers(sample).forEach(marker -> all.add(new Framing.ByMarker(marker)));
        return all;
    }

    private static List<Bytes> markers(Sample sample) {
        List<Bytes> markers = new ArrayList<>();
        Map<Integer, Integer> pairs = new TreeMap<>();
        for (int i = 0; i + 1 < sample.length(); i++) {
            pairs.merge(sample.at(i) << 8 | sample.at(i + 1), 1, Integer::sum);
        }
        pairs.entrySet().stream()
                .filter(pair -> pair.getValue() >= MARKER_SHARE * sample.length())
                .sorted(Comparator.comparing((Map.Entry<Integer, Integer> pair) -> -pair.getValue()))
                .limit(MOST_MARKERS)
                .forEach(pair -> markers.add(Bytes.of(pair.getKey() >> 8, pair.getKey() & 0xFF)));
        sample.frequent(MARKER_SHARE, MOST_MARKERS).forEach(value -> markers.add(Bytes.of(value)));
        return markers;
    }

    private static List<Framing> byLength(Sample sample, List<Bytes> markers) {
        Map<Framing, Integer> chained = new LinkedHashMap<>();
        for (Bytes marker : markers) {
            for (int offset = marker.length(); offset <= marker.length() + LAST_OFFSET; offset++) {
                for (int each = 1; each <= MOST_EACH; each++) {
                    for (int plus = 0; plus <= MOST_PLUS; plus++) {
                        Framing.ByLength framing = new Framing.ByLength(marker, offset, each, plus);
                        int covered = framing.walk(sample).covered();
                        if (covered >= CHAINED * sample.length()) {
                            chained.put(framing, covered);
                        }
                    }
                }
            }
        }
        return chained.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<Framing, Integer> one) -> -one.getValue()))
                .limit(MOST_BY_LENGTH)
                .map(Map.Entry::getKey)
                .toList();
    }

    private static List<Framing> byEnd(Sample sample, int end) {
        List<Framing> all = new ArrayList<>();
        Framing.ByEnd plain = new Framing.ByEnd(-1, end, -1, 0);
        all.add(plain);
        int start = usualBegin(plain.walk(sample));
        if (start >= 0) {
            all.add(new Framing.ByEnd(start, end, -1, 0));
        }
        all.add(new Framing.ByEnd(end, end, -1, 0));
        return all;
    }

    /** What most frames begin with, or -1. */
    private static int usualBegin(Walk walk) {
        int[] counts = new int[256];
        walk.frames().forEach(frame -> counts[frame[0] & 0xFF]++);
        for (int value = 0; value < counts.length; value++) {
            if (counts[value] > walk.frames().size() * 0.8) {
                return value;
            }
        }
        return -1;
    }

    /**
     * The same with escapes. An escape is a byte after which only few others ever come, each a special one with the
     * same bits turned.
     */
    static List<Framing> escaped(Framing.ByEnd plain, Sample sample) {
        int[][] after = new int[256][256];
        for (int i = 0; i + 1 < sample.length(); i++) {
            after[sample.at(i)][sample.at(i + 1)]++;
        }
        List<Framing> all = new ArrayList<>();
        for (int escape = 0; escape < 256; escape++) {
            int count = Arrays.stream(after[escape]).sum();
            for (int xor = 1; count > 1 && escape != plain.end() && escape != plain.start() && xor < 256; xor++) {
                int special = after[escape][plain.end() ^ xor] + after[escape][escape ^ xor];
                if (plain.start() >= 0 && plain.start() != plain.end()) {
                    special += after[escape][plain.start() ^ xor];
                }
                if (special >= count * 0.8) {
                    all.add(new Framing.ByEnd(plain.start(), plain.end(), escape, xor));
                }
            }
        }
        return all;
    }
}
