package dropline.bus.pit;

import dropline.bus.pit.Fitting.PairLoad;
import java.util.List;

/**
 * What is on a segment's pair beside its nodes: its controller's transceiver, and the resistors fitted by hand. A stop
 * is a position in {@link Segment#nodes()}, or {@link Cable#CONTROLLER}.
 *
 * @param controller how the controller's transceiver loads the pair
 * @param terminators those that no module carries itself
 * @param bias those that no module carries itself
 */
public record Fitted(PairLoad controller, Terminators terminators, BiasResistors bias) {
    /** Nothing said. */
    public static final Fitted UNSTATED = new Fitted(PairLoad.PLAIN, Terminators.UNSTATED, BiasResistors.UNSTATED);

    /**
     * Resistors across the pair.
     *
     * @param stated whether somebody said where they are; if not, one belongs where the rules want it
     * @param at the stops, none where there are none
     * @param ohms of each
     */
    public record Terminators(boolean stated, List<Integer> at, int ohms) {
        /** Nothing said: 120 ohm, as common twisted pair wants. */
        public static final Terminators UNSTATED = new Terminators(false, List.of(), 120);

        public Terminators {
            at = List.copyOf(at);
            if (ohms <= 0) {
                throw new IllegalArgumentException("a terminator must be above 0 ohm: ohms=" + ohms);
            }
        }
    }

    /**
     * Pairs of resistors, one from D1 up to a supply, one from D0 down to common.
     *
     * @param stated whether somebody said where they are; if not, they belong where the rules want them
     * @param at the stops, none where there are none
     * @param ohms of each of the two
     * @param volts what the upper one is tied to, V
     */
    public record BiasResistors(boolean stated, List<Integer> at, int ohms, double volts) {
        /** Nothing said: 560 ohm to 5 V, within the 450 to 650 ohm of MODBUS over serial line V1.02, 3.4.6. */
        public static final BiasResistors UNSTATED = new BiasResistors(false, List.of(), 560, 5);

        public BiasResistors {
            at = List.copyOf(at);
            if (ohms <= 0 || !(volts > 0)) {
                throw new IllegalArgumentException(
                        "bias resistors and their volts must be above 0: ohms=" + ohms + " volts=" + volts);
            }
        }
    }
}
