package dropline.harness.meter;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.rule.Unit;
import dropline.bus.supply.FarBoard;
import dropline.harness.ruling.Amounts;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a meter should read at the supply terminals of the board of a segment that has the least volts, every lamp lit.
 *
 * @param segment its name
 * @param board its name
 * @param supplyVolts at the supply's own terminals, V
 * @param volts at the board, V
 * @param faults what else it may read, and what that means
 */
public record SupplyReading(String segment, String board, double supplyVolts, double volts, List<Wrong> faults) {

    /**
     * A reading that is not as it should be.
     *
     * @param volts at the board, V
     */
    public record Wrong(String fault, double volts) {}

    public SupplyReading {
        faults = List.copyOf(faults);
    }

    /** Empty where no board of the segment hangs on a described supply. */
    static Optional<SupplyReading> of(Pit pit, int segment) {
        return FarBoard.of(pit, segment).map(far -> of(pit, segment, far));
    }

    private static SupplyReading of(Pit pit, int segment, FarBoard far) {
        List<Wrong> faults = new ArrayList<>();
        faults.add(new Wrong("the lamps are not lit", far.idleVolts()));
        for (FarBoard.BadJoint joint : far.badJoints()) {
            String what = "a joint of about " + Amounts.of(joint.ohms(), Unit.OHMS) + " in run " + far.run()
                    + ", there or back";
            faults.add(new Wrong(joint.volts() > 0 ? what : what + ": the boards would not start", joint.volts()));
        }
        faults.add(new Wrong("the supply is off, a fuse has blown, or a wire is broken", 0));
        return new SupplyReading(
                pit.segments().get(segment).name(),
                Layout.of(pit).nodes().get(far.node()).node().name(),
                far.supplyVolts(),
                far.volts(),
                faults);
    }
}
