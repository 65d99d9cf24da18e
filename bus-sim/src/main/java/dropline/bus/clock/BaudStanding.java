package dropline.bus.clock;

/**
 * How well a UART meets a baud rate. A party must send better than 1 % and take 2 % in reception (MODBUS over serial
 * line V1.02, 3.2); other protocols are judged by the same measure, for want of another.
 */
public enum BaudStanding {
    /** Off by less than 1 %. */
    GOOD,
    /** Off by more than one may send with, but within what others must take. */
    LOOSE,
    /** Off by more than others must take. */
    OFF;

    private static final double SENDS_WITHIN = 0.01;
    private static final double TAKES_UP_TO = 0.02;

    /** @param error actual bits a second over the wanted ones, less 1 */
    public static BaudStanding of(double error) {
        double off = Math.abs(error);
        return off < SENDS_WITHIN ? GOOD : off <= TAKES_UP_TO ? LOOSE : OFF;
    }
}
