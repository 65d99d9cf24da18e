package dropline.bus.supply;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Run;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The board of a segment that has the least volts while every lamp is lit, and what a meter reads there.
 *
 * @param node in the order of {@link Layout#nodes()}
 * @param run the run that feeds it; empty where it hangs straight on its supply
 * @param supplyVolts at the terminals of the supply itself, V
 * @param volts at the board's supply terminals in a lamp test, V
 * @param idleVolts the same with every lamp dark, V
 * @param badJoints what it reads in a lamp test with a bad joint in that run, the least bad first; none without a run
 */
public record FarBoard(
        int node, String run, double supplyVolts, double volts, double idleVolts, List<BadJoint> badJoints) {
    private static final double[] JOINT_OHMS = {0.5, 2};

    /**
     * A plug or screw that hardly conducts.
     *
     * @param ohms what it adds, ohm
     * @param volts at the board then, V; 0 where the supply's volts and its loads no longer agree
     */
    public record BadJoint(double ohms, double volts) {}

    public FarBoard {
        badJoints = List.copyOf(badJoints);
    }

    /** Empty where no board of the segment hangs on a described supply. */
    public static Optional<FarBoard> of(Pit pit, int segment) {
        Layout layout = Layout.of(pit);
        Feeds feeds = new Feeds(pit, Feeds.WIRE_CELSIUS);
        Flow lit = feeds.solve(Loads.of(layout, State.LAMP_TEST));
        int far = -1;
        for (int node = 0; node < layout.nodes().size(); node++) {
            if (layout.nodes().get(node).segment() == segment
                    && feeds.point(node) != SupplyTree.NOWHERE
                    && (far < 0 || lit.nodeVolts(node) < lit.nodeVolts(far))) {
                far = node;
            }
        }
        if (far < 0) {
            return Optional.empty();
        }
        SupplyTree tree = pit.supplies();
        int run = feeds.point(far) - tree.supplies().size();
        List<BadJoint> joints = new ArrayList<>();
        for (double ohms : JOINT_OHMS) {
            if (run >= 0) {
                Feeds worse = new Feeds(pit.with(withJoint(tree, run, ohms)), Feeds.WIRE_CELSIUS);
                joints.add(new BadJoint(
                        ohms, worse.solve(Loads.of(layout, State.LAMP_TEST)).nodeVolts(far)));
            }
        }
        return Optional.of(new FarBoard(
                far,
                run < 0 ? "" : tree.runs().get(run).name(),
                tree.supplies().get(feeds.supply(far)).volts(),
                lit.nodeVolts(far),
                feeds.solve(Loads.of(layout, State.IDLE)).nodeVolts(far),
                joints));
    }

    private static SupplyTree withJoint(SupplyTree tree, int at, double ohms) {
        List<Run> runs = new ArrayList<>(tree.runs());
        Run run = runs.get(at);
        runs.set(at, new Run(run.name(), run.from(), run.gauge(), run.metres(), run.jointOhms() + ohms));
        return new SupplyTree(tree.supplies(), runs, tree.hostOnNanos());
    }
}
