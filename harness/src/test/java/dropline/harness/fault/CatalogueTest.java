package dropline.harness.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Holds catalogue, kinds and manual together. {@code -Ddropline.write-manual=true} writes the manual's made parts anew;
 * look at the difference before you keep it.
 */
final class CatalogueTest {
    private static final boolean WRITE = Boolean.getBoolean("dropline.write-manual");
    private static final Set<FaultKind> ABOUT_POWER_OR_WIRING = Set.of(
            FaultKind.DEAD_NODE,
            FaultKind.RESET,
            FaultKind.STUCK_DRIVER,
            FaultKind.MISSING_BIAS,
            FaultKind.FLOATING_RECEIVER,
            FaultKind.SWAPPED_PAIR,
            FaultKind.SLOW_ADAPTER,
            FaultKind.BROWN_OUT,
            FaultKind.BACK_FEED,
            FaultKind.COMMON_WIRE_LIFTED,
            FaultKind.LOST_STEPS,
            FaultKind.LOST_ZERO,
            FaultKind.NEEDLE_SLIPPED,
            FaultKind.STICKING_NEEDLE);

    private final Catalogue catalogue = Catalogue.read();

    @Test
    void everyKindHasItsEntryInOrderAndNoEntryIsLeftOver() {
        assertEquals(
                List.of(FaultKind.values()),
                catalogue.entries().stream().map(Entry::kind).toList());
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void theExampleOfAKindIsAFaultOfThatKind(FaultKind kind) {
        FaultOptions.Read read = FaultOptions.read(
                List.of(catalogue.of(kind).inject()), DemoPit.read(), OptionalLong.of(600_000_000_000L));

        assertEquals(List.of(), read.problems());
        assertEquals(kind, read.faults().get(0).kind());
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void aKindHasUsualWordsExactlyWhereItHasAnAmount(FaultKind kind) {
        assertEquals(
                kind.unit() != FaultKind.Unit.NONE,
                !catalogue.of(kind).usualAmount().isEmpty());
    }

    @Test
    void whatSpeaksOfSuppliesWiringOrDrivenPartsCautions() {
        Set<FaultKind> without = ABOUT_POWER_OR_WIRING.stream()
                .filter(kind -> catalogue.of(kind).cautions().isEmpty())
                .collect(Collectors.toSet());

        assertEquals(Set.of(), without);
    }

    @Test
    void theListShowsEveryKindAndFitsATerminal() {
        String text = CatalogueText.of(catalogue.entries());

        assertTrue(text.lines().allMatch(line -> line.length() <= 100), text);
        for (FaultKind kind : FaultKind.values()) {
            assertTrue(("\n" + text).contains("\n" + kind.word() + "\n"), kind.word());
            assertTrue(text.contains("--fault \"" + kind.word()), kind.word());
        }
    }

    @Test
    void thePageShowsTheCatalogue() throws IOException {
        assertMadePart("kinds", CataloguePage.kinds(catalogue));
    }

    @Test
    void thePageShowsWhatCanBeWrong() throws IOException {
        assertMadePart("problems", CataloguePage.problems(DemoPit.read()));
    }

    @ParameterizedTest
    @EnumSource(FaultCode.class)
    void theExampleOfAProblemHasThatProblemAndNoOther(FaultCode code) {
        Pit pit = DemoPit.read();

        FaultOptions.Read read = CataloguePage.problemsOf(code, pit);

        assertEquals(
                List.of(code.name()),
                read.problems().stream().map(Problem::code).toList());
        assertEquals(List.of(), read.faults());
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void theDemoPitHasSomethingToStrike(FaultKind kind) {
        Pit pit = DemoPit.read();

        assertFalse(
                new Strikable(pit, dropline.bus.pit.Layout.of(pit)).all(kind).isEmpty());
    }

    private static void assertMadePart(String name, String made) throws IOException {
        Path page = DemoPit.docs().resolve("faults.md");
        String text = Files.readString(page);
        String begin = "<!-- " + name + " -->\n";
        int from = text.indexOf(begin) + begin.length();
        int to = text.indexOf("<!-- end of " + name + " -->");
        assertTrue(from >= begin.length() && to >= from, () -> "a page must mark its made part: page=" + page);
        if (WRITE) {
            Files.writeString(page, text.substring(0, from) + made + text.substring(to));
            return;
        }
        assertEquals(made, text.substring(from, to));
    }

    @Test
    void everyWitnessIsNamedSomewhere() {
        Set<String> named = catalogue.entries().stream()
                .flatMap(entry -> entry.sightings().stream())
                .map(Entry.Sighting::witness)
                .collect(Collectors.toSet());

        assertEquals(Stream.of("wire", "controller", "meter", "eye").collect(Collectors.toSet()), named);
    }
}
