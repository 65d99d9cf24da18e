package dropline.bus.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class AvrBaudTest {
    private static final long MHZ_16 = 16_000_000;

    /** ATmega640/1280/2560 data sheet 2549A, page 230, table 109, U2X = 0, fosc = 16 MHz. */
    @ParameterizedTest
    @CsvSource({
        "2400, 416, -0.1", "4800, 207, 0.2", "9600, 103, 0.2", "14400, 68, 0.6", "19200, 51, 0.2", "28800, 34, -0.8",
        "38400, 25, 0.2", "57600, 16, 2.1", "76800, 12, 0.2", "115200, 8, -3.5", "230400, 3, 8.5", "250000, 3, 0.0",
        "500000, 1, 0.0", "1000000, 0, 0.0"
    })
    void atNormalSpeed(int baud, int ubrr, double percent) {
        AvrBaud made = AvrBaud.nearest(MHZ_16, baud, false);

        assertEquals(ubrr, made.ubrr());
        assertEquals(percent, made.error(baud) * 100, 0.0501);
    }

    /** The same table, U2X = 1. */
    @ParameterizedTest
    @CsvSource({
        "2400, 832, 0.0", "4800, 416, -0.1", "9600, 207, 0.2", "14400, 138, -0.1", "19200, 103, 0.2", "28800, 68, 0.6",
        "38400, 51, 0.2", "57600, 34, -0.8", "76800, 25, 0.2", "115200, 16, 2.1", "230400, 8, -3.5", "250000, 7, 0.0",
        "500000, 3, 0.0", "1000000, 1, 0.0"
    })
    void atDoubleSpeed(int baud, int ubrr, double percent) {
        AvrBaud made = AvrBaud.nearest(MHZ_16, baud, true);

        assertEquals(ubrr, made.ubrr());
        assertEquals(percent, made.error(baud) * 100, 0.0501);
    }

    /** Arduino AVR core, HardwareSerial.cpp, begin: values by its own arithmetic. */
    @ParameterizedTest
    @CsvSource({"57600, 16, 2.12", "115200, 16, 2.12", "230400, 8, -3.55"})
    void arduinoCoreSelects(int baud, int ubrr, double percent) {
        AvrBaud made = AvrBaud.arduinoCore(MHZ_16, baud);

        assertEquals(ubrr, made.ubrr());
        assertEquals(percent, made.error(baud) * 100, 0.005);
    }

    @Test
    void arduinoCoreLeavesDoubleSpeedAt57600() {
        assertFalse(AvrBaud.arduinoCore(MHZ_16, 57600).doubleSpeed());
    }
}
