package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ColumnUnitTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @ParameterizedTest
    @CsvSource({
        "alt [ft],alt,ft",
        "speed (KTS),speed,kt",
        "altitude_m,altitude,m",
        "ENG1_OIL_PSI,ENG1_OIL,psi",
        "vertical speed fpm,vertical speed,fpm",
        "oil temp [°C],oil temp,degC",
        "battery [V],battery,V",
    })
    void aColumnsNameMayEndInItsUnit(String column, String rest, String unit) {
        ColumnUnit.InName found = ColumnUnit.of(column).orElseThrow();

        assertEquals(rest, found.rest());
        assertEquals(unit, found.unit().word());
    }

    @ParameterizedTest
    @CsvSource({"heading", "gear_a", "m", "lamp 1", "cabin alarm", "[ft]", "position [north]"})
    void anyOtherEndIsPartOfTheName(String column) {
        assertEquals(Optional.empty(), ColumnUnit.of(column));
    }

    /**
     * NIST SP 811 (2008), appendix B.8: foot, knot, psi, inch of mercury (conventional), degree Fahrenheit; B.9 pound.
     */
    @ParameterizedTest
    @CsvSource({
        "ft,m,0.3048,0",
        "kt,m/s,0.5144444,0",
        "psi,Pa,6894.757,0",
        "inHg,Pa,3386.389,0",
        "lb,kg,0.4535924,0",
        "mph,m/s,0.44704,0",
        "degF,degC,0.5555556,-17.77778",
        "K,degC,1,-273.15"
    })
    void unitsConvertAsPublished(String from, String to, double scale, double offset) {
        ColumnUnit recorded = ColumnUnit.named(from).orElseThrow();
        ColumnUnit expected = ColumnUnit.named(to).orElseThrow();

        assertEquals(scale, recorded.scaleTo(expected), scale * 1e-7);
        assertEquals(offset, recorded.offsetTo(expected), 1e-5);
    }

    @Test
    void unitsOfDifferentQuantitiesAreNotCompared() {
        assertFalse(ColumnUnit.named("m")
                .orElseThrow()
                .disagreesWith(ColumnUnit.named("kt").orElseThrow()));
        assertFalse(ColumnUnit.named("kts")
                .orElseThrow()
                .disagreesWith(ColumnUnit.named("knots").orElseThrow()));
    }

    @Test
    void aColumnInAnotherUnitThanItsSignalIsRefusedWithWhatToWrite() throws IOException {
        Path file = RecordingExamples.csv(folder, "\ntime,altitude_m\n0,1\n");

        RecordingException wrong = assertThrows(
                RecordingException.class, () -> PitFeed.open(file, pit("altitude_m", 1), ReadOptions.strict()));

        Problem problem = wrong.problems().get(0);
        assertEquals("UNITS_DISAGREE 2:0 m, by the column's name", RecordingExamples.brief(problem));
        assertEquals(
                "write scale: 3.28084 at the signal in the pit file, or state the signal in m;"
                        + " if the name is wrong, rename the column",
                problem.fix());
    }

    @Test
    void aSignalThatIsScaledMayHaveAnotherUnitThanItsColumn() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,altitude_m\n0,1\n");

        PitFeed.open(file, pit("altitude_m", 3.28084), ReadOptions.strict()).close();
    }

    @Test
    void aMissingColumnIsToldWithTheLineOfTheNamesAndOneColumnIsOne() throws IOException {
        Path file = RecordingExamples.csv(folder, "\ntime,altitude_m\n0,1\n");

        RecordingException wrong =
                assertThrows(RecordingException.class, () -> PitFeed.open(file, pit("speed", 1), ReadOptions.strict()));

        assertEquals(
                "UNKNOWN_COLUMN 2:0 1 column, not of this name",
                RecordingExamples.brief(wrong.problems().get(0)));
    }

    /** Its one signal is in feet. */
    private static Pit pit(String column, double scale) {
        return PitExamples.pit(List.of(new Signal("altitude", "ft", 0, 50_000, 10, false, column, scale, 0, 0)));
    }
}
