package dropline.harness.learn;

import dropline.harness.link.Arrival;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Finds the structure of frames nobody has described: tries every framing that its bytes suggest with every check of
 * the catalogue, and keeps what explains most. A check of 8 bits is right in one of 256 frames by chance, so that what
 * explains most of a minute does so for a reason; what several explain alike is told as a doubt.
 */
final class Learning {
    /** The search looks at so many. */
    private static final int SEARCHED = 6_000;
    /** So many where every check must be tried at every byte. */
    private static final int SEARCHED_BLINDLY = 2_500;
    /** Less is not said at all. */
    private static final double WORTH_TELLING = 0.35;

    private static final double SURE = 0.6;
    private static final double ALIKE = 0.02;
    private static final int FRAMES_FOR_SURE = 40;
    private static final int KINDS_FOR_SURE = 12;
    private static final int LENGTHS_FOR_SURE = 3;
    private static final int LATEST_FROM_BLINDLY = 2;
    /** Where a frame may end at many places, a check of 8 bits is right by chance too often. */
    private static final int BITS_BLINDLY = 16;

    private record Way(Framing framing, CheckPlace check, double share) {}

    private Learning() {}

    /** What they say, or empty where no structure explains enough of them. */
    static Optional<Learned> of(List<Arrival.Received> arrivals, int baud) {
        Sample sample = Sample.of(arrivals, baud, Lesson.MOST_BYTES);
        List<Way> ways = ways(sample);
        double most = ways.stream().mapToDouble(Way::share).max().orElse(0);
        if (most < WORTH_TELLING) {
            return Optional.empty();
        }
        List<Way> best = ways.stream()
                .filter(way -> way.share > most - ALIKE)
                .sorted(Comparator.comparingInt((Way way) -> way.framing.rank())
                        .thenComparing(way -> -way.check.sum().bits())
                        .thenComparing(way -> -way.framing.markerLength())
                        .thenComparing(way -> -way.share))
                .toList();
        return Optional.of(learned(best, sample));
    }

    private static List<Way> ways(Sample sample) {
        Sample head = sample.begin(SEARCHED);
        List<Way> ways = new ArrayList<>();
        for (Framing framing : Framings.of(head)) {
            Walk all = framing.walk(head);
            if (all.covered() < WORTH_TELLING * head.length()) {
                continue;
            }
            for (CheckPlace check : CheckPlace.all(all.isText())) {
                if (all.sound(check).covered() >= WORTH_TELLING * head.length()) {
                    add(framing, check, framing.walk(head, check), head, ways);
                }
            }
        }
        return ways.stream().anyMatch(way -> way.share >= SURE) ? ways : blindly(sample.begin(SEARCHED_BLINDLY), ways);
    }

    private static List<Way> blindly(Sample head, List<Way> ways) {
        for (Framing framing : Framings.blind(head)) {
            for (CheckPlace check : CheckPlace.all(false)) {
                if (check.sum().bits() >= BITS_BLINDLY && check.from() <= LATEST_FROM_BLINDLY) {
                    add(framing, check, framing.walk(head, check), head, ways);
                }
            }
        }
        return ways;
    }

    private static void add(Framing framing, CheckPlace check, Walk walk, Sample sample, List<Way> ways) {
        double share = (double) walk.covered() / Math.max(1, sample.length());
        if (share >= WORTH_TELLING) {
            ways.add(new Way(framing, check, share));
        }
    }

    private static Learned learned(List<Way> best, Sample sample) {
        Way chosen = escaped(best.get(0), sample);
        Walk walk = chosen.framing.walk(sample, chosen.check);
        double share = (double) walk.covered() / sample.length();
        int tail = chosen.check.width() + chosen.check.after();
        int lengthAt = chosen.framing instanceof Framing.ByLength byLength ? byLength.offset() : -1;
        Roles roles = Roles.of(walk, chosen.framing.markerLength(), lengthAt, tail);
        List<String> doubts = new ArrayList<>();
        if (share < SURE) {
            doubts.add("Much of what was heard fits no frame; another structure may hide in it.");
        }
        long different = walk.frames().stream().map(Arrays::hashCode).distinct().count();
        if (walk.frames().size() < FRAMES_FOR_SURE || different < KINDS_FOR_SURE) {
            doubts.add("Too few different frames were heard; listen longer, with more boards connected.");
        }
        others(chosen, best, walk, sample, doubts);
        lengths(chosen, walk, doubts);
        if (roles.address() == null) {
            doubts.add("No place behaves like an address; with one board alone none can be told.");
        } else if (!roles.isOnlyAddress()) {
            doubts.add("More than one place behaves like an address; the first is taken.");
        }
        return new Learned(chosen.framing, chosen.check, walk, roles, share, doubts);
    }

    /** The same with escapes, where that explains more: a check is not made right by undoing what is no escape. */
    private static Way escaped(Way plain, Sample sample) {
        if (!(plain.framing instanceof Framing.ByEnd byEnd)) {
            return plain;
        }
        Way best = plain;
        int most = plain.framing.walk(sample, plain.check).covered();
        for (Framing framing : Framings.escaped(byEnd, sample)) {
            int covered = framing.walk(sample, plain.check).covered();
            if (covered > most) {
                most = covered;
                best = new Way(framing, plain.check, plain.share);
            }
        }
        return best;
    }

    private static void others(Way chosen, List<Way> best, Walk walk, Sample sample, List<String> doubts) {
        TreeSet<String> said = new TreeSet<>();
        for (Way other : best) {
            if (other.equals(chosen) || said.size() >= 3) {
                continue;
            }
            boolean sameCheck =
                    other.check.sum().toString().equals(chosen.check.sum().toString())
                            && other.check.form() == chosen.check.form();
            if (!sameCheck) {
                said.add("The check may as well be " + LearnText.check(other.check) + ".");
            } else if (other.framing.equals(chosen.framing)) {
                said.add("The check may as well cover the frame from byte " + other.check.from() + " on.");
            } else if (other.framing instanceof Framing.ByLength two
                    && chosen.framing instanceof Framing.ByLength one
                    && (two.offset() != one.offset() || two.each() != one.each() || two.plus() != one.plus())) {
                said.add("The length may as well be: " + LearnText.framing(other.framing) + ".");
            } else if (other.framing.walk(sample, other.check).frames().size()
                    > walk.frames().size() * (1 + 2 * ALIKE)) {
                said.add("Frames may as well be shorter: " + LearnText.framing(other.framing) + ".");
            }
        }
        doubts.addAll(said);
    }

    private static void lengths(Way chosen, Walk walk, List<String> doubts) {
        long lengths = walk.frames().stream()
                .mapToInt(frame -> frame.length)
                .distinct()
                .count();
        if (chosen.framing instanceof Framing.ByLength && lengths < LENGTHS_FOR_SURE) {
            doubts.add("Frames of only " + lengths + (lengths == 1 ? " length" : " lengths")
                    + " were heard; what looks like their length may be something else.");
        } else if (chosen.framing instanceof Framing.ByEnd end && end.escape() < 0 && !walk.isText()) {
            doubts.add("No byte was seen escaped; listen longer, or look in the sketch what it does with "
                    + LearnText.hex(end.end()) + " inside a frame.");
        } else if (chosen.framing instanceof Framing.BySilence) {
            doubts.add("Pauses stand between the frames; whether a receiver needs them, the sketch tells.");
        } else if (chosen.framing instanceof Framing.ByMarker) {
            doubts.add("Nothing tells how long a frame is; each kind may have a length of its own.");
        }
    }
}
