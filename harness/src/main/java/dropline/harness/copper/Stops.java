package dropline.harness.copper;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Pit;

/** What stands where on a segment's cable, for people. */
public final class Stops {
    private Stops() {}

    /** Who polls a segment: its hub, or the PC through an adapter. */
    public static String controller(Pit pit, int segment) {
        Hub hub = pit.hubOf(segment);
        return hub == null
                ? "PC, " + pit.segments().get(segment).controller().adapter().name()
                : hub.name();
    }

    /** What stands at a stop. */
    public static String name(Pit pit, int segment, int stop) {
        return stop == Cable.CONTROLLER
                ? controller(pit, segment)
                : pit.segments().get(segment).nodes().get(stop).name();
    }
}
