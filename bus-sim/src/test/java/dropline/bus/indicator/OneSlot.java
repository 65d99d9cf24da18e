package dropline.bus.indicator;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import java.util.List;

/** One indicator that shows one signal, without a bus: values are applied by hand. */
record OneSlot(Shows shows, EventOrder order) {

    OneSlot(TraceSink sink, Indicator indicator, Signal signal, Fault... faults) {
        this(shows(indicator, signal, faults), sink);
    }

    private OneSlot(Shows shows, TraceSink sink) {
        this(shows, new EventOrder(sink, shows));
        shows.postTo(order);
    }

    private static Shows shows(Indicator indicator, Signal signal, Fault... faults) {
        Pit pit = Pits.pit(
                List.of(signal),
                Pits.controller(StateDelivery.BROADCAST, Pits.MILLI, 0),
                List.of(Pits.node("node", 1, Pits.profile(0), List.of(indicator), List.of())));
        return new Shows(pit, Layout.of(pit), 0, 1, List.of(faults));
    }

    /** The node has a value, as soon as it is heard. */
    void apply(int serial, long value, long atNanos) {
        until(atNanos);
        shows.apply(0, serial, value, atNanos, atNanos);
    }

    void until(long nanos) {
        while (shows.nextNanos() < nanos) {
            shows.step();
        }
        order.release(nanos);
    }
}
