package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;

final class DurationsTest {
    @ParameterizedTest
    @CsvSource({
        "90s, 90000000000",
        "2m30s, 150000000000",
        "2min 30 s, 150000000000",
        "600 s, 600000000000",
        "1h, 3600000000000",
        "1.5s, 1500000000",
        "250ms, 250000000",
        "40us, 40000"
    })
    void aTimeWithItsUnitIsUnderstood(String text, long nanos) {
        assertEquals(nanos, Durations.parseNanos(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "90", "s", "-5s", "5 s 2 m", "3s3s", "1h x", "1,5s", "1e3s"})
    void anythingElseIsRefused(String text) {
        assertThrows(TypeConversionException.class, () -> Durations.parseNanos(text));
    }

    @Test
    void aTimeBeyondALongIsRefused() {
        assertThrows(TypeConversionException.class, () -> Durations.parseNanos("99999999999999h"));
    }
}
