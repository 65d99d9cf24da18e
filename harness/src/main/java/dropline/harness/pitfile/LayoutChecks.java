package dropline.harness.pitfile;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.plan.SegmentWire;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.NumberForm;
import java.util.List;
import java.util.Optional;

/** Checks whether a segment's state can be sent in the frames of a layout. */
final class LayoutChecks {
    private final Parts parts;
    private final Pit pit;
    private final Report report;

    LayoutChecks(Parts parts, Pit pit, Report report) {
        this.parts = parts;
        this.pit = pit;
        this.report = report;
    }

    void check(Segment segment, Custom layout) {
        List<Integer> shown = SegmentWire.signals(pit, segment);
        if (shown.isEmpty()) {
            return;
        }
        Block block = parts.segment(segment.name()).orElseThrow();
        boolean broadcast = segment.controller().state() == StateDelivery.BROADCAST;
        if (broadcast ? !layout.canBroadcast() : !layout.canAddress()) {
            cannotSend(block, broadcast);
            return;
        }
        if (broadcast) {
            List<String> problems = layout.checkBroadcast(SegmentWire.all(pit, segment));
            if (!problems.isEmpty()) {
                String fix = "change the layout, give the signals other numbers, or send state addressed";
                report.at(block.nameAt(), block.name(), PitCode.DOES_NOT_FIT, String.join("; ", problems), null, fix);
            }
        }
        Optional<NumberForm> form = layout.valueForm(broadcast);
        shown.forEach(signal -> form.ifPresent(f -> value(block, pit.signals().get(signal), f)));
    }

    private void cannotSend(Block block, boolean broadcast) {
        Tree at = block.block(BusKeys.CONTROLLER).map(c -> c.at(BusKeys.STATE)).orElse(block.nameAt());
        String found = broadcast ? "state: broadcast" : "a layout in which no frame carries signals";
        String expected = broadcast
                ? "state: addressed, since the layout has no state frame"
                : "a request or request-with-state with signals in the layout, since panels show signals";
        report.at(at, "state", PitCode.CONFLICT, found, expected, "describe how state is sent in the layout file");
    }

    /** A value that does not fit would be cut to its last digits or bits. */
    private void value(Block segment, Signal signal, NumberForm form) {
        long low = signal.lowest();
        long high = signal.highest();
        if (!form.holds(low) || !form.holds(high)) {
            String found = signal.name() + " runs from " + low + " to " + high + " in steps of its resolution, and "
                    + form + " holds " + form.least() + ".." + form.most();
            Tree at = parts.signal(signal.name()).map(b -> (Tree) b.nameAt()).orElse(segment.nameAt());
            String fix = "choose a wider value: in the layout, or a coarser resolution: or smaller range: here";
            report.at(at, signal.name(), PitCode.DOES_NOT_FIT, found, null, fix);
        }
    }
}
