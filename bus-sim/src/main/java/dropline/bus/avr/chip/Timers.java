package dropline.bus.avr.chip;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.part.Port;
import dropline.bus.avr.part.Prescaler;
import dropline.bus.avr.part.Timer;
import dropline.bus.avr.part.Timer.Divisors;
import dropline.bus.avr.part.Timer.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** A chip's timers, and the pins they reach (each sheet's "Pin Configurations"). */
final class Timers {
    /** Address of TIFR0 and of TIMSK0; the others follow. */
    private static final int FLAGS = 0x35;

    private static final int MASKS = 0x6E;

    private final Cpu cpu;
    private final Map<Character, Port> ports;
    private final Prescaler prescaler;
    private final List<Timer> all = new ArrayList<>();

    Timers(Cpu cpu, Chip chip, Map<Character, Port> ports) {
        this.cpu = cpu;
        this.ports = ports;
        prescaler = new Prescaler(cpu);
        int[] vectors = vectors(chip);
        for (int number = 0; number < vectors.length; number++) {
            switch (vectors[number] == 0 ? -1 : number) {
                case -1 -> {}
                case 0 -> narrow(0x44, number, vectors[number], Divisors.USUAL, outputs(chip, number));
                case 2 -> narrow(0xB0, number, vectors[number], Divisors.FINE, outputs(chip, number));
                default -> wide(number, vectors[number], outputs(chip, number), capture(chip, number));
            }
        }
    }

    /** By its number, the first vector of each timer: "capture" where it has that, else "compare A"; 0 for no timer. */
    static int[] vectors(Chip chip) {
        return switch (chip.kind) {
            case SMALL -> new int[] {14, 10, 7};
            case LARGE -> new int[] {21, 16, 13, 31, 41, 46};
            case USB -> new int[] {21, 16, 0, 31};
        };
    }

    /** The pins of its outputs A, B and C; a dash where a timer compares and has no pin. */
    private static String outputs(Chip chip, int number) {
        boolean isSmall = chip.kind == Chip.Kind.SMALL;
        boolean isLarge = chip.kind == Chip.Kind.LARGE;
        return switch (number) {
            case 0 -> isSmall ? "D6 D5" : isLarge ? "B7 G5" : "B7 D0";
            case 1 -> isSmall ? "B1 B2" : "B5 B6 B7";
            case 2 -> isSmall ? "B3 D3" : "B4 H6";
            case 3 -> isLarge ? "E3 E4 E5" : "C6 - -";
            case 4 -> "H3 H4 H5";
            default -> "L3 L4 L5";
        };
    }

    private static String capture(Chip chip, int number) {
        return switch (number) {
            case 1 -> chip.kind == Chip.Kind.SMALL ? "B0" : "D4";
            case 3 -> chip.kind == Chip.Kind.LARGE ? "E7" : "C7";
            case 4 -> "L0";
            default -> "L1";
        };
    }

    private void narrow(int base, int number, int vector, Divisors divisors, String pins) {
        Place place = new Place(
                false,
                base,
                base + 2,
                base + 3,
                2,
                FLAGS + number,
                MASKS + number,
                vector,
                divisors,
                divisors == Divisors.USUAL);
        connect(new Timer(cpu, prescaler, place), pins);
    }

    private void wide(int number, int vector, String pins, String capture) {
        int base =
                switch (number) {
                    case 1 -> 0x80;
                    case 3 -> 0x90;
                    case 4 -> 0xA0;
                    default -> 0x120;
                };
        Place place = new Place(
                true,
                base,
                base + 4,
                base + 8,
                pins.split(" ").length,
                FLAGS + number,
                MASKS + number,
                vector,
                Divisors.USUAL,
                true);
        Timer timer = new Timer(cpu, prescaler, place);
        connect(timer, pins);
        timer.capture(port(capture), bit(capture));
    }

    private void connect(Timer timer, String pins) {
        all.add(timer);
        String[] names = pins.split(" ");
        for (int channel = 0; channel < names.length; channel++) {
            if (!names[channel].equals("-")) {
                timer.connect(channel, port(names[channel]), bit(names[channel]));
            }
        }
    }

    private Port port(String pin) {
        return Objects.requireNonNull(ports.get(pin.charAt(0)));
    }

    private static int bit(String pin) {
        return pin.charAt(1) - '0';
    }

    void reset() {
        all.forEach(Timer::reset);
    }
}
