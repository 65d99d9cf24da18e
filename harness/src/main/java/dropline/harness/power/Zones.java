package dropline.harness.power;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.plan.LevelTraffic;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The backlight zones of a pit, each with what its dimmer makes of its level. */
final class Zones {
    /** While somebody turns a dimmer: an assumption. */
    private static final int LEVELS_A_SECOND = 20;

    private Zones() {}

    static List<Zone> of(Pit pit) {
        List<Zone> zones = new ArrayList<>();
        for (Layout.Slot slot : Layout.of(pit).slots()) {
            Indicator indicator = slot.indicator();
            if (indicator.kind() == Kind.BACKLIGHT_ZONE) {
                Node node = Layout.of(pit).nodes().get(slot.node()).node();
                Draw active = indicator.draws().active();
                zones.add(new Zone(
                        slot.panel().name() + ", " + indicator.name(),
                        pit.segments().get(slot.segment()).name(),
                        pit.signals().get(slot.signal()).name(),
                        indicator.draws().throughBoard()
                                ? node.fitting().inlet().outputVolts()
                                : supplyVolts(pit, node),
                        active.isKnown() ? active.microamps() * 1e-6 : Double.NaN,
                        indicator.dimming().curve().name().toLowerCase(Locale.ROOT),
                        indicator.dimming().bits(),
                        indicator
                                .dimming()
                                .coarsestStep(pit.signals().get(slot.signal()).steps())));
            }
        }
        return zones;
    }

    private static double supplyVolts(Pit pit, Node node) {
        int point = pit.supplies().point(node.fitting().supply());
        return point == SupplyTree.NOWHERE
                ? Double.NaN
                : pit.supplies().supplies().get(pit.supplies().supplyOf(point)).volts();
    }

    /** What it costs to turn all of a segment's dimmers at once. */
    static List<PowerResult.Traffic> traffic(Pit pit) {
        List<PowerResult.Traffic> traffic = new ArrayList<>();
        for (int s = 0; s < pit.segments().size(); s++) {
            int segment = s;
            List<Integer> signals = Layout.of(pit).slots().stream()
                    .filter(slot ->
                            slot.segment() == segment && slot.indicator().kind() == Kind.BACKLIGHT_ZONE)
                    .map(Layout.Slot::signal)
                    .toList();
            if (!signals.isEmpty()) {
                LevelTraffic level = LevelTraffic.of(pit, pit.segments().get(s), signals);
                traffic.add(new PowerResult.Traffic(
                        pit.segments().get(s).name(),
                        signals.size(),
                        (long) level.broadcast() * LEVELS_A_SECOND,
                        (long) level.oneByOne() * LEVELS_A_SECOND,
                        LEVELS_A_SECOND));
            }
        }
        return traffic;
    }
}
