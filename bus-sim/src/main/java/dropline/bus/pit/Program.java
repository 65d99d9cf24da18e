package dropline.bus.pit;

import dropline.bus.avr.board.Pin;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.chip.Microcontroller;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The program of a node that is run instruction by instruction in place of what its profile says.
 *
 * @param hz cycles a second of its chip
 * @param usart the number of the one that leads to the pair
 * @param driverEnable the pin that turns the driver on, high; null where the transceiver does it by itself
 * @param leads what hangs on its pins
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

    public Program {
        leads = List.copyOf(leads);
    }

    /** A chip with this program, its power just come. */
    public Microcontroller powered() {
        return image.on(chip, hz, image.beginsAt());
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
