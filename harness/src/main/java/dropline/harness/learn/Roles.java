package dropline.harness.learn;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Who speaks in each frame, and where a frame says so. On a polled pair a reply carries the address of the request
 * before it, and addresses come round; so a place whose values come in twos, in the same order again and again, is the
 * address.
 *
 * @param address where it stands; null where no place behaves like one
 * @param isOnlyAddress whether no other place behaves like one
 * @param kind where requests and replies always differ, or -1
 * @param requests frames that are followed by one of the same address
 * @param replies those that follow
 * @param others frames that stand alone: for all, unanswered, or next to noise
 */
record Roles(
        @Nullable Place address,
        boolean isOnlyAddress,
        int kind,
        List<byte[]> requests,
        List<byte[]> replies,
        List<byte[]> others) {
    private static final int MOST_NODES = 64;
    private static final int LEAST_ROUNDS = 4;
    private static final int MOST_KINDS = 4;
    private static final int LAST_PLACE = 12;
    private static final double CERTAIN = 0.75;
    private static final int HIGH_BIT = 0x80;

    /**
     * Where a number stands.
     *
     * @param offset from the begin of a frame
     * @param width bytes
     * @param digits whether it is written in decimal digits
     * @param marked whether the highest bit tells requests from replies
     */
    record Place(int offset, int width, boolean digits, boolean marked) {
        /** What stands there, or -1. */
        int in(byte[] frame) {
            if (offset + width > frame.length) {
                return -1;
            }
            int value = 0;
            for (int i = offset; i < offset + width; i++) {
                int b = frame[i] & 0xFF;
                if (digits && (b < '0' || b > '9')) {
                    return -1;
                }
                value = digits ? value * 10 + b - '0' : b;
            }
            return marked ? value & ~HIGH_BIT : value;
        }

        boolean covers(int at) {
            return at >= offset && at < offset + width;
        }
    }

    Roles {
        requests = List.copyOf(requests);
        replies = List.copyOf(replies);
        others = List.copyOf(others);
    }

    /**
     * @param from the first place that may be an address
     * @param lengthAt where the length stands, or -1
     * @param tail bytes of a frame's check and what follows it
     */
    static Roles of(Walk walk, int from, int lengthAt, int tail) {
        List<byte[]> frames = walk.frames();
        boolean text = walk.isText();
        int shortest = frames.stream().mapToInt(frame -> frame.length).min().orElse(0);
        List<Place> likely = new ArrayList<>();
        for (int offset = from; offset < Math.min(LAST_PLACE, shortest - tail); offset++) {
            if (offset == lengthAt
                    || (!likely.isEmpty() && likely.get(likely.size() - 1).covers(offset))) {
                continue;
            }
            Place place = place(frames, offset, text, shortest - tail);
            if (place != null) {
                likely.add(place);
            }
        }
        Place address = likely.isEmpty() ? null : likely.get(0);
        List<byte[]> requests = new ArrayList<>();
        List<byte[]> replies = new ArrayList<>();
        List<byte[]> others = new ArrayList<>();
        if (address != null) {
            part(frames, address, requests, replies, others);
        }
        int kind = address == null || address.marked
                ? -1
                : kind(requests, replies, from, address, lengthAt, shortest - tail);
        return new Roles(address, likely.size() == 1, kind, requests, replies, others);
    }

    private static @Nullable Place place(List<byte[]> frames, int offset, boolean text, int before) {
        List<Place> tried = new ArrayList<>();
        if (text) {
            for (int width = Math.min(3, before - offset); width >= 1; width--) {
                tried.add(new Place(offset, width, true, false));
            }
        } else {
            tried.add(new Place(offset, 1, false, false));
            tried.add(new Place(offset, 1, false, true));
        }
        return tried.stream()
                .filter(place -> comesInTwos(frames, place))
                .findFirst()
                .orElse(null);
    }

    private static boolean comesInTwos(List<byte[]> frames, Place place) {
        Map<Integer, Map<Integer, Integer>> followers = new LinkedHashMap<>();
        int runs = 0;
        int twos = 0;
        int at = 0;
        int before = -1;
        while (at < frames.size()) {
            int value = place.in(frames.get(at));
            int length = 1;
            while (at + length < frames.size() && place.in(frames.get(at + length)) == value) {
                length++;
            }
            if (value < 0) {
                return false;
            }
            runs++;
            twos += length == 2 ? 1 : 0;
            if (before >= 0) {
                followers.computeIfAbsent(before, b -> new LinkedHashMap<>()).merge(value, 1, Integer::sum);
            }
            before = value;
            at += length;
        }
        int known = followers.size();
        int usual = followers.values().stream()
                .mapToInt(
                        after -> after.values().stream().mapToInt(n -> n).max().orElse(0))
                .sum();
        return known >= 2
                && known <= MOST_NODES
                && runs >= known * LEAST_ROUNDS
                && twos >= CERTAIN * runs
                && usual >= CERTAIN * (runs - 1);
    }

    private static void part(
            List<byte[]> frames, Place address, List<byte[]> requests, List<byte[]> replies, List<byte[]> others) {
        int at = 0;
        while (at < frames.size()) {
            int value = address.in(frames.get(at));
            int length = 1;
            while (at + length < frames.size() && address.in(frames.get(at + length)) == value) {
                length++;
            }
            if (length == 2) {
                requests.add(frames.get(at));
                replies.add(frames.get(at + 1));
            } else if (length == 1) {
                others.add(frames.get(at));
            }
            at += length;
        }
    }

    private static int kind(
            List<byte[]> requests, List<byte[]> replies, int from, Place address, int lengthAt, int before) {
        for (int at = from; at < Math.min(LAST_PLACE, before); at++) {
            Set<Integer> asked = values(requests, at);
            Set<Integer> answered = values(replies, at);
            boolean few = asked.size() <= MOST_KINDS && answered.size() <= MOST_KINDS;
            asked.retainAll(answered);
            if (!address.covers(at) && at != lengthAt && few && asked.isEmpty()) {
                return at;
            }
        }
        return -1;
    }

    /** What stands at a place in most frames: what stands there in hardly one is noise that passed its check. */
    static Set<Integer> values(List<byte[]> frames, int at) {
        int[] counts = new int[256];
        frames.forEach(frame -> counts[frame[at] & 0xFF]++);
        Set<Integer> values = new TreeSet<>();
        for (int value = 0; value < counts.length; value++) {
            if (counts[value] > frames.size() / 100) {
                values.add(value);
            }
        }
        return values;
    }
}
