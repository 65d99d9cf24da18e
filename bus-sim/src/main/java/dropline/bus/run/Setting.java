package dropline.bus.run;

import dropline.bus.chance.Draws;
import dropline.bus.control.Controls;
import dropline.bus.fault.Fault;
import dropline.bus.indicator.Shows;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Noise;
import dropline.bus.wire.Reception;
import dropline.bus.wire.Wire;
import dropline.protocol.Destination;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/** What every run of a segment stands on, whoever talks there: its pair, its panels, and the order of its events. */
final class Setting {
    final Pit pit;
    final int segmentIndex;
    final Segment segment;
    final Layout layout;
    final Wiring wiring;
    final EventOrder events;
    final Shows shows;
    final Controls controls;
    final Wire wire;
    final Noise noise;
    final Reception reception;
    final long seed;
    final List<Fault> faults;
    final Wire.Content content;

    /**
     * @param content gives the bytes of a frame that is on the pair
     * @param bitsEverywhere whether to decide every frame bit by bit
     */
    Setting(
            Pit pit,
            int segmentIndex,
            long seed,
            List<Fault> faults,
            TraceSink sink,
            Wire.Content content,
            boolean bitsEverywhere) {
        this.pit = pit;
        this.segmentIndex = segmentIndex;
        this.seed = seed;
        this.faults = faults;
        this.content = content;
        segment = pit.segments().get(segmentIndex);
        layout = Layout.of(pit);
        wiring = new Wiring(pit, layout, segmentIndex);
        shows = new Shows(pit, layout, segmentIndex, seed, faults);
        Revisions revisions = new Revisions(shows);
        events = new EventOrder(sink, revisions);
        shows.postTo(events);
        controls = new Controls(layout, segmentIndex, seed, events, faults);
        revisions.controls(controls);
        wire = new Wire(events, wiring.nodes().length + 1, segment.isShared());
        noise = new Noise(segment.biased(), Draws.stream(seed, Draws.nameHash(segment.name()), Draws.Purpose.NOISE));
        reception = new Reception(
                segment.format(),
                segment.protocol(),
                segment.silenceNanos(),
                1e9 / segment.baud(),
                noise,
                content,
                bitsEverywhere);
    }

    /** Where a node of the trace stands in the poll order. */
    int position(int node) {
        int[] nodes = wiring.nodes();
        int position = 0;
        while (nodes[position] != node) {
            position++;
        }
        return position;
    }

    /** Its nodes. */
    Stations stations(IntFunction<Destination> wires) {
        return stations(wires, null);
    }

    /** Its nodes, of which some are emulated. */
    Stations stations(IntFunction<Destination> wires, @Nullable Boards boards) {
        return new Stations(
                segment, layout, wiring, wires, seed, faults, events, shows, controls, wire, reception, boards);
    }

    /** What goes wrong at instants of its own. */
    Troubles troubles(Stations stations) {
        return new Troubles(faults, segment, segmentIndex, layout, seed, stations, wire, noise);
    }

    /** What reaches it from outside. */
    HostInput input(HostInput.Arrival arrival) {
        return new HostInput(
                pit, layout, segmentIndex, seed, controls, events, arrival, faults, PartSteps.of(shows, controls));
    }
}
