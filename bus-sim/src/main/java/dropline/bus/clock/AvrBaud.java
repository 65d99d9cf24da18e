package dropline.bus.clock;

/**
 * The baud rates an AVR's USART can make: clock / (16 x (UBRR + 1)), or / 8 at double speed (ATmega640/1280/2560 data
 * sheet 2549, "Internal Clock Generation").
 *
 * @param clockHz the chip's clock, Hz
 * @param ubrr the baud-rate register, 0..4095
 * @param doubleSpeed U2X
 */
public record AvrBaud(long clockHz, int ubrr, boolean doubleSpeed) {
    public AvrBaud {
        if (ubrr < 0 || ubrr > 4095) {
            throw new IllegalArgumentException("UBRR must be 0..4095: ubrr=" + ubrr);
        }
    }

    /** The register value nearest to a baud rate. */
    public static AvrBaud nearest(long clockHz, int baud, boolean doubleSpeed) {
        double divisor = (double) clockHz / ((doubleSpeed ? 8.0 : 16.0) * baud);
        int ubrr = (int) Math.max(0, Math.min(4095, Math.round(divisor) - 1));
        return new AvrBaud(clockHz, ubrr, doubleSpeed);
    }

    /**
     * The setting that comes nearest to a baud rate. Where both speeds come as near, normal speed, which samples a bit
     * twice as often and so tolerates more.
     */
    public static AvrBaud best(long clockHz, int baud) {
        AvrBaud normal = nearest(clockHz, baud, false);
        AvrBaud fast = nearest(clockHz, baud, true);
        return Math.abs(fast.error(baud)) < Math.abs(normal.error(baud)) ? fast : normal;
    }

    /**
     * What the Arduino AVR core selects (HardwareSerial.cpp, begin): double speed, except 57600 at 16 MHz and divisors
     * beyond 4095.
     */
    public static AvrBaud arduinoCore(long clockHz, int baud) {
        long fast = (clockHz / 4 / baud - 1) / 2;
        if ((clockHz == 16_000_000L && baud == 57600) || fast > 4095) {
            return new AvrBaud(clockHz, (int) ((clockHz / 8 / baud - 1) / 2), false);
        }
        return new AvrBaud(clockHz, (int) fast, true);
    }

    /** Actual bits a second over the wanted ones, less 1: +0.021 is 2.1 % fast. */
    public double error(int baud) {
        return clock().baud() / baud - 1;
    }

    /** The clock that times its bits. */
    public UartClock clock() {
        return new UartClock(clockHz, (doubleSpeed ? 8 : 16) * (ubrr + 1));
    }
}
