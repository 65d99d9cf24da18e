package dropline.bus.pit;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A microcontroller board with an address on one segment.
 *
 * @param name unique in the pit; its draws hang on it
 * @param address unique on its segment, 1..247
 * @param weight polls a cycle, 1..16
 * @param profile its firmware timing
 * @param panels what it carries
 * @param registers where its signals lie (Modbus); empty where a signal's own number is its number on the wire
 * @param fitting what one needs to know to wire it
 * @param program what is run in place of the profile; null for one that is modelled
 */
public record Node(
        String name,
        int address,
        int weight,
        Profile profile,
        List<Panel> panels,
        List<Register> registers,
        Fitting fitting,
        @Nullable Program program) {

    /** A signal's register on this node: its index in {@link Pit#signals()} and the register's address, 0..65535. */
    public record Register(int signal, int address) {}

    public Node {
        panels = List.copyOf(panels);
        registers = List.copyOf(registers);
        if (address < 1 || address > 247) {
            throw new IllegalArgumentException("node address must be 1..247: address=" + address);
        }
        if (weight < 1 || weight > 16) {
            throw new IllegalArgumentException("poll weight must be 1..16: weight=" + weight);
        }
    }

    /** One of whose wiring nothing is said. */
    public Node(String name, int address, int weight, Profile profile, List<Panel> panels, List<Register> registers) {
        this(name, address, weight, profile, panels, registers, Fitting.PLAIN, null);
    }

    /** One that is modelled. */
    public Node(
            String name,
            int address,
            int weight,
            Profile profile,
            List<Panel> panels,
            List<Register> registers,
            Fitting fitting) {
        this(name, address, weight, profile, panels, registers, fitting, null);
    }

    /** The same as its profile has it, whatever its program is. */
    public Node modelled() {
        return new Node(name, address, weight, profile, panels, registers, fitting);
    }

    /** The same on another segment, or there otherwise; modelled, since its program is of here. */
    public Node at(int otherAddress, int otherWeight, Profile otherProfile) {
        return new Node(name, otherAddress, otherWeight, otherProfile, panels, registers, fitting);
    }

    /** The same with other firmware and panels; modelled. */
    public Node with(Profile otherProfile, List<Panel> otherPanels) {
        return new Node(name, address, weight, otherProfile, otherPanels, registers, fitting);
    }
}
