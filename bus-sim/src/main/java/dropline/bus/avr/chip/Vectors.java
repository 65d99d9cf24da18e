package dropline.bus.avr.chip;

/**
 * The numbers of a chip's interrupt vectors (each sheet's table "Reset and Interrupt Vectors"; here the reset is 0). Of
 * what has several in a row, the first.
 *
 * @param usart0 "receive complete"; 0 where there is none
 */
record Vectors(
        int pinChange,
        int watchdog,
        int spi,
        int adc,
        int eeprom,
        int twi,
        int usart0,
        int usart1,
        int usart2,
        int usart3) {

    private static final Vectors SMALL = new Vectors(3, 6, 17, 21, 22, 24, 18, 0, 0, 0);
    private static final Vectors LARGE = new Vectors(9, 12, 24, 29, 30, 39, 25, 36, 51, 54);
    private static final Vectors USB = new Vectors(9, 12, 24, 29, 30, 36, 0, 25, 0, 0);

    static Vectors of(Chip chip) {
        return switch (chip.kind) {
            case SMALL -> SMALL;
            case LARGE -> LARGE;
            case USB -> USB;
        };
    }

    int usart(int number) {
        return switch (number) {
            case 0 -> usart0;
            case 1 -> usart1;
            case 2 -> usart2;
            default -> usart3;
        };
    }
}
