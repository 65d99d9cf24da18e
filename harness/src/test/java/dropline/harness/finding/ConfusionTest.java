package dropline.harness.finding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Injects every fault of the catalogue into many pits and counts what is named. {@code -Ddropline.write-manual=true}
 * writes docs/confusion.md anew; look at the difference before you keep it.
 */
final class ConfusionTest {
    private static final boolean WRITE = Boolean.getBoolean("dropline.write-manual");
    private static final int PITS = 60;
    private static final int EACH = 30;
    private static final int HEALTHY = 200;
    private static final long HEALTHY_SEEDS = 50_000;

    private static final Confusion ALL = new Confusion(Tiers.ALL);
    private static final Confusion CONTROLLER = new Confusion(Tiers.CONTROLLER);

    private record Struck(Injection injection, Trial trial, Trial twin) {}

    @BeforeAll
    static void runThemAll() {
        Map<Long, Trial> twins = LongStream.range(0, PITS)
                .boxed()
                .parallel()
                .collect(Collectors.toConcurrentMap(Function.identity(), pit -> Trial.run(pit, pit, List.of())));
        List<Struck> struck = Arrays.stream(FaultKind.values())
                .flatMap(kind -> IntStream.range(0, EACH).mapToObj(run -> new int[] {kind.ordinal(), run}))
                .toList()
                .parallelStream()
                .map(run -> strike(FaultKind.values()[run[0]], run[1], twins))
                .toList();
        for (Struck each : struck) {
            ALL.add(
                    each.injection(),
                    each.trial().trace() != each.twin().trace(),
                    each.trial().all());
            boolean seen = each.trial().controllerTrace() != each.twin().controllerTrace();
            CONTROLLER.add(each.injection(), seen, each.trial().controller());
        }
        List<Trial> healthy = LongStream.range(0, HEALTHY)
                .parallel()
                .mapToObj(run -> Trial.run(1_000 + run, HEALTHY_SEEDS + run, List.of()))
                .toList();
        for (int i = 0; i < HEALTHY; i++) {
            ALL.healthy(HEALTHY_SEEDS + i, healthy.get(i).all());
            CONTROLLER.healthy(HEALTHY_SEEDS + i, healthy.get(i).controller());
        }
    }

    private static Struck strike(FaultKind kind, int run, Map<Long, Trial> twins) {
        long pitSeed = (run * 7L + kind.ordinal()) % PITS;
        Pit pit = RandomPit.of(pitSeed);
        long seed = kind.ordinal() * 1_000L + run;
        Injection injection = Injection.of(kind, pit, Layout.of(pit), RandomPit.speech(pitSeed), seed);
        Trial twin = Objects.requireNonNull(twins.get(pitSeed));
        return new Struck(injection, Trial.run(pitSeed, pitSeed, List.of(injection.fault())), twin);
    }

    @Test
    void atLeastAThousandRunsAreCounted() {
        assertTrue(ALL.runs() >= 1_000, () -> "runs=" + ALL.runs());
    }

    @Test
    void everyKindOfFaultIsSeenInMostOfItsRunsWhereAllIsLookedAt() {
        assertTrue(ALL.seen() > 0.9 * ALL.runs(), () -> ALL.seen() + " of " + ALL.runs());
    }

    @Test
    void ninetyFiveOfAHundredFaultsAreNamedRightFromTheWholeTrace() {
        assertTrue(ALL.share() >= 0.95, () -> ALL.right() + " of " + ALL.seen() + "\n" + ALL.table());
    }

    @Test
    void atMostOneHealthyRunInTwoHundredRaisesAFalseAlarm() {
        assertTrue(ALL.falseAlarms().size() <= 1, () -> ALL.falseAlarms().toString());
        assertTrue(
                CONTROLLER.falseAlarms().size() <= 1,
                () -> CONTROLLER.falseAlarms().toString());
    }

    @Test
    void thePageInTheManualIsWhatWasCounted() throws IOException {
        Path page = docs().resolve("confusion.md");
        String text = page();
        if (WRITE) {
            Files.writeString(page, text);
        }
        assertEquals(Files.readString(page).replace("\r\n", "\n"), text);
    }

    private static String page() {
        return """
                # What findings can tell, and what not

                This page is written by a test, `ConfusionTest`, which fails when the page and what it counts differ. The test
                runs %d simulated runs of a few seconds each: every fault of the catalogue, each in %d runs over %d pits of one
                segment, and %d healthy runs in %d pits of their own. The pits are drawn at random: 4 to 9 nodes, Dropline frames
                at 500 and 115.2 kbaud, Modbus RTU at 19.2 kbaud 8E1, frames of known sizes at 250 and 115.2 kbaud, hub boards
                and hosts, every kind of indicator and control, boards that reply from the loop and from the interrupt, boards
                that lose frames as described. What a run was given is known to the test alone: the rules see the pit and the
                trace.

                Some faults are drawn only where they can be told or simulated: blackouts, small rings and stalled loops on boards
                that lose no frames as described, where the pit has one (elsewhere lost frames are normal); a
                needle that slips not at the very start, where it is a zero in the wrong place; a brown-out with restarts of 200 to 800 ms,
                longer than the controller takes to give a node up.

                How to read the tables:

                - *Nothing to see* counts runs whose trace does not differ from that of the same run, same seed, without the fault:
                  the fault never got to do anything, or nothing that this way of looking shows. They are left out of *named
                  right*. In the second table only what the controller sees is compared.
                - *Named right* means that the first finding's group holds the fault. From the whole trace it must also name the
                  very node, indicator, control or segment that was struck; a group marked * has the class right and the place
                  wrong.
                - A *group* is what one finding names: several classes where the trace cannot tell them apart. The groups are
                  listed below each table.

                ## From the whole trace

                Wire, controller and the inside of nodes: what a simulated run tells. **%d of %d faults named right (%s %%)**, %d
                false alarms in %d healthy runs.

                %s
                What cannot be told apart even here: a board that is dead and one that hangs because it is fed back are both
                silent; a board with a swapped pair is too, in this simulation. A wrong baud rate
                and a clock that is far off both make a board deaf.

                ## From the controller alone

                What a real PC sees: its own frames, the replies it took and when, time-outs, what replies say of their nodes, what
                the host was told. **%d of %d faults that leave any mark here are in the group named (%s %%)**, %d false alarms in
                %d healthy runs. Needles, displays and what a node's inputs do inside the node leave no mark at all: look at them.

                %s""".formatted(
                        ALL.runs() + HEALTHY,
                        EACH,
                        PITS,
                        HEALTHY,
                        HEALTHY,
                        ALL.right(),
                        ALL.seen(),
                        percent(ALL.share()),
                        ALL.falseAlarms().size(),
                        HEALTHY,
                        ALL.table(),
                        CONTROLLER.right(),
                        CONTROLLER.seen(),
                        percent(CONTROLLER.share()),
                        CONTROLLER.falseAlarms().size(),
                        HEALTHY,
                        CONTROLLER.table());
    }

    private static String percent(double share) {
        return String.format(java.util.Locale.ROOT, "%.1f", 100 * share);
    }

    private static Path docs() {
        return Stream.of(Path.of("docs"), Path.of("..", "docs"))
                .filter(Files::isDirectory)
                .findFirst()
                .orElseThrow();
    }
}
