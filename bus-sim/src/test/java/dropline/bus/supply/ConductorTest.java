package dropline.bus.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.bus.pit.Gauge;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ConductorTest {
    private static final double FEET_A_KILOMETRE = 3280.84;

    /** Cirris, wire resistance table: solid copper at 20 degC, ohm per 1000 ft; within 0.2 %. */
    @ParameterizedTest
    @CsvSource({
        "12, 1.588",
        "14, 2.525",
        "16, 4.016",
        "18, 6.385",
        "20, 10.15",
        "22, 16.14",
        "24, 25.67",
        "26, 40.81",
        "28, 64.90",
        "30, 103.2"
    })
    void solidWireHasTheResistanceOfTheTable(int awg, double ohmsPerThousandFeet) {
        double ohms = Conductor.ohmsPerKilometre(Gauge.awg(awg, false), 20) * 1000 / FEET_A_KILOMETRE;

        assertEquals(ohmsPerThousandFeet, ohms, 0.002 * ohmsPerThousandFeet);
    }

    /** NEC Chapter 9 Table 8, uncoated copper at 75 degC, ohm per 1000 ft, solid and stranded; within 0.5 %. */
    @ParameterizedTest
    @CsvSource({"18, 7.77, 7.95", "16, 4.89, 4.99", "14, 3.07, 3.14", "12, 1.93, 1.98", "10, 1.21, 1.24"})
    void warmWireHasMoreAndStrandedWireMoreStill(int awg, double solid, double stranded) {
        double feet = 1000 / FEET_A_KILOMETRE;

        assertEquals(solid, Conductor.ohmsPerKilometre(Gauge.awg(awg, false), 75) * feet, 0.005 * solid);
        assertEquals(stranded, Conductor.ohmsPerKilometre(Gauge.awg(awg, true), 75) * feet, 0.005 * stranded);
    }

    /** Derived from the same table: mm2 and ohm per km. */
    @ParameterizedTest
    @CsvSource({"18, 0.823, 20.95", "22, 0.326, 52.96", "24, 0.205, 84.2"})
    void aGaugeIsSoManySquareMillimetres(int awg, double squareMillimetres, double ohmsPerKilometre) {
        Gauge gauge = Gauge.awg(awg, false);

        assertEquals(squareMillimetres, gauge.squareMillimetres(), 0.0006);
        assertEquals(ohmsPerKilometre, Conductor.ohmsPerKilometre(gauge, 20), 0.002 * ohmsPerKilometre);
    }

    @Test
    void noGaugeLiesOutsideOfTheSeries() {
        assertThrows(IllegalArgumentException.class, () -> Gauge.awg(41, true));
        assertThrows(IllegalArgumentException.class, () -> Gauge.awg(-1, true));
    }

    @Test
    void aMetricWireIsNamedAsPeopleSayIt() {
        assertEquals("0.75 mm2", Gauge.metric(0.75, true).name());
        assertEquals("10 mm2", Gauge.metric(10, true).name());
    }
}
