package dropline.scenarios.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against US Standard Atmosphere 1976, its printed figures from memory. */
final class IsaTest {

    @ParameterizedTest
    @CsvSource({
        "0, 101325, 288.15, 1.2250",
        "1000, 89874.6, 281.65, 1.1116",
        "1524, 84307, 278.24, 1.0556",
        "5000, 54020, 255.65, 0.7361",
    })
    void pressureTemperatureAndDensityAreThePublishedOnes(double metres, double pascal, double kelvin, double density) {
        assertEquals(pascal, Isa.pascal(metres), pascal * 2e-4);
        assertEquals(kelvin, Isa.kelvin(metres), 0.01);
        assertEquals(density, Isa.density(Isa.pascal(metres), Isa.kelvin(metres)), density * 3e-4);
    }

    @Test
    void metresUndoesPascal() {
        for (double metres = -300; metres < 11_000; metres += 37) {
            assertEquals(metres, Isa.metres(Isa.pascal(metres)), 1e-6);
        }
    }

    /** True and calibrated airspeed are the same at sea level on a standard day, by definition. */
    @Test
    void calibratedIsTrueAirspeedAtSeaLevel() {
        for (double speed = 1; speed < 150; speed += 7) {
            double mach = Isa.mach(speed, Isa.SEA_LEVEL_KELVIN);
            assertEquals(speed, Isa.calibrated(mach, Isa.SEA_LEVEL_PASCAL), 1e-6);
        }
    }

    /** At 75 m/s the flow is nearly incompressible: calibrated is true airspeed times the root of the density ratio. */
    @Test
    void calibratedIsLowerAloftByTheRootOfTheDensityRatio() {
        double pascal = Isa.pascal(1524);
        double kelvin = Isa.kelvin(1524);

        double calibrated = Isa.calibrated(Isa.mach(75, kelvin), pascal);

        double expected = 75 * StrictMath.sqrt(Isa.density(pascal, kelvin) / Isa.SEA_LEVEL_DENSITY);
        assertEquals(expected, calibrated, 0.15);
    }
}
