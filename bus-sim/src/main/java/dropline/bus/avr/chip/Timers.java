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
    private final Cpu cpu;
    private final Map<Character, Port> ports;
    private final Prescaler prescaler;
    private final List<Timer> all = new ArrayList<>();

    Timers(Cpu cpu, Chip chip, Map<Character, Port> ports) {
        this.cpu = cpu;
        this.ports = ports;
        prescaler = new Prescaler(cpu);
        switch (chip.kind) {
            case SMALL -> {
                narrow(0x44, 0x35, 0x6E, 14, Divisors.USUAL, "D6 D5");
                wide(0x80, 0x36, 0x6F, 10, "B1 B2", "B0");
                narrow(0xB0, 0x37, 0x70, 7, Divisors.FINE, "B3 D3");
            }
            case LARGE -> {
                narrow(0x44, 0x35, 0x6E, 21, Divisors.USUAL, "B7 G5");
                wide(0x80, 0x36, 0x6F, 16, "B5 B6 B7", "D4");
                narrow(0xB0, 0x37, 0x70, 13, Divisors.FINE, "B4 H6");
                wide(0x90, 0x38, 0x71, 31, "E3 E4 E5", "E7");
                wide(0xA0, 0x39, 0x72, 41, "H3 H4 H5", "L0");
                wide(0x120, 0x3A, 0x73, 46, "L3 L4 L5", "L1");
            }
            case USB -> {
                narrow(0x44, 0x35, 0x6E, 21, Divisors.USUAL, "B7 D0");
                wide(0x80, 0x36, 0x6F, 16, "B5 B6 B7", "D4");
                wide(0x90, 0x38, 0x71, 31, "C6 - -", "C7");
            }
        }
    }

    private void narrow(int base, int flags, int mask, int vector, Divisors divisors, String pins) {
        Place place = new Place(
                false, base, base + 2, base + 3, 2, flags, mask, vector, divisors, divisors == Divisors.USUAL);
        connect(new Timer(cpu, prescaler, place), pins);
    }

    private void wide(int base, int flags, int mask, int vector, String pins, String capture) {
        int channels = pins.split(" ").length;
        Place place = new Place(true, base, base + 4, base + 8, channels, flags, mask, vector, Divisors.USUAL, true);
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
