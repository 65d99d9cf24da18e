package dropline.harness.finding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
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

    private static String template() throws IOException {
        try (InputStream page = Objects.requireNonNull(ConfusionTest.class.getResourceAsStream("confusion.md"))) {
            return new String(page.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String page() throws IOException {
        return template()
                .formatted(
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
