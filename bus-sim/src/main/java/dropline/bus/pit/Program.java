package dropline.bus.pit;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.device.Device;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The program of a node that is run instruction by instruction in place of what its profile says.
 *
 * @param hz cycles a second of its chip
 * @param usart the number of the one that leads to the pair
 * @param driverEnable the pin that turns the driver on, high; null where the transceiver does it by itself
 * @param leads what hangs on its pins
 * @param devices what else its program shows with
 * @param appliedRegister the number of the general-purpose register to which the program writes the sequence number of
 *     the broadcast whose values it has just put on its indicators; {@link #NONE} where it does not
 */
public record Program(
        Image image,
        Chip chip,
        long hz,
        int usart,
        @Nullable Pin driverEnable,
        List<Lead> leads,
        List<Attached> devices,
        int appliedRegister) {
    /** In place of a register's number. */
    public static final int NONE = -1;

    /**
     * What an indicator or a control of the node's panels hangs on.
     *
     * @param panel its panel's name
     * @param part its own name there
     * @param pins in the order that its kind asks for
     * @param isLow whether low means on, closed, pressed
     */
    public record Lead(String panel, String part, List<Pin> pins, boolean isLow) {
        public Lead {
            pins = List.copyOf(pins);
            if (pins.isEmpty()) {
                throw new IllegalArgumentException("a part must hang on at least one pin: part=" + part);
            }
        }
    }

    /** A part of one of the node's panels. */
    public record Place(String panel, String part) {}

    /**
     * A device between the chip and what a panel shows.
     *
     * @param address on the two-wire bus; 0 for what is not on it
     * @param pins as many as its kind has
     * @param shows the indicators that it is, or that hang on it: of a port expander one at each output, from the
     *     first; {@link #NOTHING} where there is none
     * @param isLow whether an output of it means lit when it is low
     */
    public record Attached(Device.Kind kind, int address, List<Pin> pins, List<Place> shows, boolean isLow) {
        /** In place of what hangs on an output. */
        public static final Place NOTHING = new Place("", "");

        public Attached {
            pins = List.copyOf(pins);
            shows = List.copyOf(shows);
            if (pins.size() != kind.pins()) {
                throw new IllegalArgumentException("a device must have its pins: kind=" + kind + " pins=" + pins);
            }
        }

        /** Ties it to a chip. */
        public void tie(Microcontroller chip, Device.Seen seen) {
            Device.tie(kind, address, pins, chip, seen);
        }
    }

    public Program {
        leads = List.copyOf(leads);
        devices = List.copyOf(devices);
    }

    /** A chip with this program, its power just come. */
    public Microcontroller powered() {
        return image.on(chip, hz, image.beginsAt());
    }

    /** Whether one of its devices shows a part. */
    public boolean isOnDevice(String panel, String part) {
        Place place = new Place(panel, part);
        return devices.stream().anyMatch(device -> device.shows().contains(place));
    }

    /** What a part hangs on; null for one that hangs on nothing. */
    public @Nullable Lead lead(String panel, String part) {
        for (Lead lead : leads) {
            if (lead.panel().equals(panel) && lead.part().equals(part)) {
                return lead;
            }
        }
        return null;
    }
}
