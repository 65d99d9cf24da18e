package dropline.bus.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BaudStandingTest {
    /**
     * The better of the two columns (U2X 0 and 1) at 16 MHz of the baud rate table, rounded as it is printed:
     * ATmega640/1280/2560 data sheet 2549, "Examples of UBRR Settings". Limits: MODBUS over serial line V1.02, 3.2.
     */
    @ParameterizedTest
    @CsvSource({
        "9600, 0.2, GOOD",
        "19200, 0.2, GOOD",
        "38400, 0.2, GOOD",
        "57600, -0.8, GOOD",
        "76800, 0.2, GOOD",
        "115200, 2.1, OFF",
        "230400, -3.5, OFF",
        "250000, 0.0, GOOD",
        "500000, 0.0, GOOD",
        "1000000, 0.0, GOOD"
    })
    void ratesOf16MegahertzStandAsTheTableSays(int baud, double percent, BaudStanding standing) {
        AvrBaud best = AvrBaud.best(16_000_000L, baud);

        assertEquals(percent, Math.round(best.error(baud) * 1000) / 10.0);
        assertEquals(standing, BaudStanding.of(best.error(baud)));
    }

    @Test
    void normalSpeedIsTakenWhereBothComeAsNear() {
        assertFalse(AvrBaud.best(16_000_000L, 250_000).doubleSpeed());
        assertTrue(AvrBaud.best(16_000_000L, 57_600).doubleSpeed());
    }

    @Test
    void onePercentIsTooMuchToSendWithAndTwoAreStillTaken() {
        assertEquals(BaudStanding.GOOD, BaudStanding.of(-0.0099));
        assertEquals(BaudStanding.LOOSE, BaudStanding.of(0.01));
        assertEquals(BaudStanding.LOOSE, BaudStanding.of(-0.02));
        assertEquals(BaudStanding.OFF, BaudStanding.of(0.0201));
    }
}
