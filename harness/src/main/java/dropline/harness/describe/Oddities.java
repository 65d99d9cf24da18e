package dropline.harness.describe;

import dropline.bus.clock.AvrBaud;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.plan.SegmentWire;
import dropline.protocol.Destination;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.Flaw;
import dropline.protocol.custom.LayoutRules;
import dropline.protocol.modbus.ModbusRtu;
import java.util.ArrayList;
import java.util.List;

/** What is allowed on a segment but worth a second look. */
final class Oddities {
    private static final long AVR_HZ = 16_000_000;

    /** Recommended for a receiver at normal speed with eight data bits (XMEGA AU manual 8331B, page 303). */
    private static final double TOLERANCE = 0.02;

    private static final int MODBUS_CHARACTER_BITS = 11;

    private Oddities() {}

    /** One sentence or two for each. */
    static List<String> of(Pit pit, Segment segment) {
        List<String> found = new ArrayList<>();
        if (segment.protocol() instanceof ModbusRtu && segment.format().bits() != MODBUS_CHARACTER_BITS) {
            found.add("a Modbus RTU character has 11 bits (Serial Line V1.02, 2.5.1), " + segment.format() + " has "
                    + segment.format().bits() + ". Many boards do it this way; all parties must agree.");
        }
        if (segment.protocol() instanceof Custom custom) {
            LayoutRules.of(custom.layout()).stream()
                    .filter(Flaw::isCaution)
                    .map(flaw -> "the layout " + custom.layout().name() + " has " + flaw.found() + ".")
                    .distinct()
                    .forEach(found::add);
        }
        double avr = AvrBaud.arduinoCore(AVR_HZ, segment.baud()).error(segment.baud());
        if (Math.abs(avr) > TOLERANCE) {
            found.add("a 16 MHz AVR under the Arduino core makes " + segment.baud() + " baud "
                    + Figures.percent(Math.abs(avr)) + " too " + (avr > 0 ? "fast" : "slow")
                    + ", beyond the 2 % recommended; 76800, 250000 and 500000 baud suit it.");
        }
        clocks(segment, found);
        noMaximum(segment, found);
        rings(pit, segment, found);
        return List.copyOf(found);
    }

    private static void clocks(Segment segment, List<String> found) {
        for (Node node : segment.nodes()) {
            Profile profile = node.profile();
            if (profile.clockHz() == 0) {
                continue;
            }
            double error = new UartClock(profile.clockHz(), profile.ticksPerBit()).baud() / segment.baud() - 1;
            if (Math.abs(error) > TOLERANCE) {
                found.add("the clock of node " + node.name() + " makes the baud rate "
                        + Figures.percent(Math.abs(error)) + " too " + (error > 0 ? "fast" : "slow") + ".");
            }
        }
    }

    private static void noMaximum(Segment segment, List<String> found) {
        List<String> nodes = segment.nodes().stream()
                .filter(n -> n.profile().replyGap().maxNanos() == Long.MAX_VALUE)
                .map(Node::name)
                .toList();
        if (!nodes.isEmpty()) {
            found.add(some(nodes) + (nodes.size() == 1 ? " states" : " state")
                    + " no greatest reply gap, so no worst case can be given.");
        }
    }

    private static void rings(Pit pit, Segment segment, List<String> found) {
        List<String> nodes = new ArrayList<>();
        for (Node node : segment.nodes()) {
            Destination wire = segment.protocol().node(SegmentWire.of(pit, node));
            if (wire.longestRequestChars() > node.profile().ringChars()) {
                nodes.add(node.name());
            }
        }
        if (!nodes.isEmpty()) {
            found.add("the longest frame for " + some(nodes)
                    + " is longer than the receive ring: it overruns when the loop is " + "blocked as long.");
        }
    }

    private static String some(List<String> nodes) {
        return nodes.size() <= 3
                ? (nodes.size() == 1 ? "node " : "nodes ") + String.join(", ", nodes)
                : nodes.size() + " nodes (" + nodes.get(0) + ", " + nodes.get(1) + ", ...)";
    }
}
