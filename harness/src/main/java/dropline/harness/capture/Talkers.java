package dropline.harness.capture;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.TraceSink;
import dropline.protocol.CharacterFormat;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Who may talk on a segment: the controller, then its nodes in the order of the pit; their names and clocks. */
public final class Talkers {
    private final Segment segment;
    private final int[] positions;
    private final List<Integer> indices = new ArrayList<>();
    private final List<String> names = new ArrayList<>();
    private final List<UartClock> clocks = new ArrayList<>();
    private final List<Boolean> zerosOnly = new ArrayList<>();

    /** @param segmentIndex index into {@link Pit#segments()} */
    public Talkers(Pit pit, int segmentIndex) {
        segment = pit.segments().get(segmentIndex);
        Layout layout = Layout.of(pit);
        positions = new int[layout.nodes().size() + 1];
        add(TraceSink.CONTROLLER, "controller", UartClock.exact(segment.baud()), false);
        for (int node = 0; node < layout.nodes().size(); node++) {
            Layout.NodePlace place = layout.nodes().get(node);
            if (place.segment() == segmentIndex) {
                Profile profile = place.node().profile();
                boolean zeros = profile.transceiver().driver() == Transceiver.Driver.ZEROS_ONLY;
                add(node, place.node().name(), profile.clock(segment.baud()), zeros);
            }
        }
    }

    /** Its talkers as the trace numbers them, the controller first. */
    public List<Integer> indices() {
        return Collections.unmodifiableList(indices);
    }

    /** Where a talker of this segment stands in {@link #indices()}. */
    public int position(int talker) {
        return positions[talker + 1];
    }

    /** How people call a talker. */
    public String name(int talker) {
        return names.get(position(talker));
    }

    /** The segment. */
    public Segment segment() {
        return segment;
    }

    /** How its characters stand on the wire. */
    public CharacterFormat format() {
        return segment.format();
    }

    /** What times a talker's bits, unless a fault says otherwise. */
    public UartClock clock(int talker) {
        return clocks.get(position(talker));
    }

    private void add(int talker, String name, UartClock clock, boolean drivesZerosOnly) {
        positions[talker + 1] = indices.size();
        indices.add(talker);
        names.add(name);
        clocks.add(clock);
        zerosOnly.add(drivesZerosOnly);
    }

    /** Whether a talker drives zeros only and leaves ones to the bias. */
    boolean zerosOnly(int talker) {
        return zerosOnly.get(position(talker));
    }
}
