package dropline.harness.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.pit.Pit;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.PitFile;
import dropline.harness.size.Judging;
import dropline.harness.size.Tape;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Holds the plans of small pits to what one gets by giving every board every label: 0 and 1 are the pit's segments, the
 * rest further ones. What fits a segment is asked of the same runs; how ways are listed, weighed and pruned is not.
 */
final class EveryWayTest {
    private static final int BOARDS = 5;
    private static final int SEGMENTS = 2;
    private static final List<String> PLACES = List.of("left, front", "left, rear", "right");
    private static final List<String> LIMITS = List.of("90 ms", "90 ms", "120 ms", "400 ms");

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void noWayThatDoesIsCheaperThanThePlan(int seed) throws IOException {
        Random random = new Random(seed);
        PitOfBoards pit = new PitOfBoards().segment("one").segment("two");
        for (int board = 0; board < BOARDS; board++) {
            String segment = board == 0 ? "one" : board == 1 ? "two" : random.nextBoolean() ? "one" : "two";
            pit.board(segment, PLACES.get(random.nextInt(3)), LIMITS.get(random.nextInt(4)), "");
        }
        PitFile.Understood understood = PitOfBoards.understood(pit.text());

        Pit planned = Objects.requireNonNull(PitOfBoards.planned(pit.text()).pit());

        List<Integer> plan = new ArrayList<>();
        List<String> names = new ArrayList<>(List.of("one", "two"));
        planned.segments().stream()
                .map(segment -> segment.name())
                .filter(name -> !names.contains(name))
                .forEach(names::add);
        for (String board : understood.nodes()) {
            planned.segments().stream()
                    .filter(segment -> segment.nodes().stream()
                            .anyMatch(node -> node.name().equals(board)))
                    .forEach(segment -> plan.add(names.indexOf(segment.name())));
        }
        assertEquals(cheapest(understood), dislikes(plan, understood.pit(), understood.nodes()), "seed " + seed);
    }

    /** Segments, split places, split areas, moves: the least that any labelling which does comes to. */
    private static List<Integer> cheapest(PitFile.Understood understood) throws IOException {
        Pit pit = understood.pit();
        try (Judging judging = new Judging(2)) {
            PlanAsked asked = PitOfBoards.asked(understood, false);
            Boards boards = new Boards(Family.of(pit, asked.order()));
            Trials.Stretch load = PitOfBoards.load(pit);
            Tape tape = Tape.of(load.of(0, 20_000_000_000L), pit, List.of(0, 1));
            Choices choices = new Choices(pit, boards, asked.bauds());
            Fits fits =
                    new Fits(asked, boards, new Draft(pit, boards), choices, new Fits.Stretches(tape, tape), judging);
            List<Integer> best = List.of(BOARDS + 1, 0, 0, 0);
            int ways = (int) Math.pow(BOARDS, BOARDS);
            for (int way = 0; way < ways; way++) {
                List<Integer> labels = new ArrayList<>();
                for (int board = 0, rest = way; board < BOARDS; board++, rest /= BOARDS) {
                    labels.add(rest % BOARDS);
                }
                List<Integer> dislikes = dislikes(labels, pit, understood.nodes());
                if (isLess(dislikes, best) && does(labels, fits)) {
                    best = dislikes;
                }
            }
            return best;
        }
    }

    private static boolean isLess(List<Integer> one, List<Integer> other) {
        for (int i = 0; i < one.size(); i++) {
            if (!one.get(i).equals(other.get(i))) {
                return one.get(i) < other.get(i);
            }
        }
        return false;
    }

    private static List<Integer> dislikes(List<Integer> labels, Pit pit, List<String> names) {
        TreeMap<String, TreeSet<Integer>> places = new TreeMap<>();
        TreeMap<String, TreeSet<Integer>> areas = new TreeMap<>();
        int moved = 0;
        for (int board = 0; board < labels.size(); board++) {
            for (int segment = 0; segment < SEGMENTS; segment++) {
                for (var node : pit.segments().get(segment).nodes()) {
                    if (node.name().equals(names.get(board))) {
                        String place = node.panels().get(0).place();
                        places.computeIfAbsent(place, p -> new TreeSet<>()).add(labels.get(board));
                        areas.computeIfAbsent(place.substring(0, 4), p -> new TreeSet<>())
                                .add(labels.get(board));
                        moved += labels.get(board) == segment ? 0 : 1;
                    }
                }
            }
        }
        return List.of(new TreeSet<>(labels).size(), split(places), split(areas), moved);
    }

    private static int split(TreeMap<String, TreeSet<Integer>> on) {
        return on.values().stream().mapToInt(labels -> labels.size() - 1).sum();
    }

    private static boolean does(List<Integer> labels, Fits fits) throws IOException {
        for (int label : new TreeSet<>(labels)) {
            List<Integer> here = new ArrayList<>();
            for (int board = 0; board < labels.size(); board++) {
                if (labels.get(board) == label) {
                    here.add(board);
                }
            }
            boolean further = label >= SEGMENTS;
            if (fits.of(new Group(further ? 0 : label, further, here)).isEmpty()) {
                return false;
            }
        }
        return true;
    }
}
