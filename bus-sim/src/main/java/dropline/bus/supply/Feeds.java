package dropline.bus.supply;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Inlet.Converter;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Run;

/**
 * A pit's supplies, runs and boards, ready to be solved for any currents.
 *
 * <p>A linear regulator, and what is fed as it is, takes the same current at every voltage; a switching converter takes
 * the same power. Supplies keep their volts. The volts are found by stepping down from those without any current: each
 * step can only lower them, so that they come to rest at the highest volts at which supply, wire and load agree, or
 * never, and then there are none.
 */
public final class Feeds {
    /** Of wires behind panels: a warm place. An assumption. */
    public static final double WIRE_CELSIUS = 40;

    private static final double AMPS = 1e-6;
    private static final double ENOUGH = 1e-12;
    private static final int MOST_STEPS = 20_000;

    private final SupplyTree tree;
    private final int[] supplyOfPoint;
    /** Of the run that ends at a point, there or back, ohm. */
    private final double[] oneWayOhms;

    private final int[] point;
    private final Inlet[] inlets;
    private final long[] ownMicroamps;

    /** @param wireCelsius temperature of the wires' copper, degC */
    public Feeds(Pit pit, double wireCelsius) {
        tree = pit.supplies();
        supplyOfPoint = new int[tree.points()];
        oneWayOhms = new double[tree.points()];
        for (int p = 0; p < tree.points(); p++) {
            supplyOfPoint[p] = tree.supplyOf(p);
            if (p >= tree.supplies().size()) {
                Run run = tree.runs().get(p - tree.supplies().size());
                double perKilometre = Conductor.ohmsPerKilometre(run.gauge(), wireCelsius);
                oneWayOhms[p] = run.metres() / 1000 * perKilometre + run.jointOhms() / 2;
            }
        }
        Layout layout = Layout.of(pit);
        point = new int[layout.nodes().size()];
        inlets = new Inlet[point.length];
        ownMicroamps = new long[point.length];
        for (int n = 0; n < point.length; n++) {
            Node node = layout.nodes().get(n).node();
            Draw own = node.fitting().draws();
            point[n] = tree.point(node.fitting().supply());
            inlets[n] = node.fitting().inlet();
            ownMicroamps[n] = own.isKnown() ? own.microamps() : 0;
        }
    }

    /** The point that feeds a node, or {@link SupplyTree#NOWHERE}. */
    public int point(int node) {
        return point[node];
    }

    /** The supply a node hangs on, or {@link SupplyTree#NOWHERE}. */
    public int supply(int node) {
        return point[node] == SupplyTree.NOWHERE ? SupplyTree.NOWHERE : supplyOfPoint[point[node]];
    }

    /** Of the run that ends at a point, there and back with its joints, ohm; 0 for a supply. */
    public double ohms(int at) {
        return 2 * oneWayOhms[at];
    }

    /** The volts and amperes under these loads. */
    public Flow solve(Loads loads) {
        Flow flow = new Flow(this, tree.supplies().size(), tree.points(), point.length);
        solve(loads, flow);
        return flow;
    }

    /** The same into a flow that is there already. */
    public void solve(Loads loads, Flow flow) {
        for (int p = 0; p < flow.volts.length; p++) {
            flow.volts[p] = tree.supplies().get(supplyOfPoint[p]).volts();
        }
        for (int n = 0; n < point.length; n++) {
            if (point[n] != SupplyTree.NOWHERE) {
                take(n, loads, flow);
            }
        }
        for (int s = 0; s < flow.stands.length; s++) {
            flow.stands[s] = true;
        }
        boolean settled = false;
        for (int step = 0; step < MOST_STEPS && !settled; step++) {
            settled = step(flow);
        }
        if (!settled) {
            // so close to where no volts agree that nothing real would stand there
            for (int s = 0; s < flow.stands.length; s++) {
                flow.stands[s] &= !flow.moved[s];
            }
        }
        after(flow);
    }

    private void take(int node, Loads loads, Flow flow) {
        Inlet inlet = inlets[node];
        double straight = loads.straight(node) * AMPS;
        double passedOn = loads.throughBoard(node) * AMPS;
        double own = ownMicroamps[node] * AMPS;
        if (inlet.converter() == Converter.SWITCHING) {
            double nominal = tree.supplies().get(supplyOfPoint[point[node]]).volts();
            flow.constantAmps[node] = straight;
            flow.constantWatts[node] = own * nominal + passedOn * inlet.outputVolts() / inlet.efficiency();
            flow.regulatedAmps[node] = 0;
        } else {
            flow.constantAmps[node] = straight + own + passedOn;
            flow.constantWatts[node] = 0;
            flow.regulatedAmps[node] = inlet.converter() == Converter.LINEAR ? own + passedOn : 0;
        }
    }

    /** One step down; whether no volts changed any more. */
    private boolean step(Flow flow) {
        amps(flow);
        for (int s = 0; s < flow.moved.length; s++) {
            flow.moved[s] = false;
        }
        boolean settled = true;
        for (int p = tree.supplies().size(); p < flow.volts.length; p++) {
            int s = supplyOfPoint[p];
            if (!flow.stands[s]) {
                continue;
            }
            int from = tree.runs().get(p - tree.supplies().size()).from();
            double volts = flow.volts[from] - 2 * oneWayOhms[p] * flow.amps[p];
            if (volts <= 0) {
                flow.stands[s] = false;
            } else if (Math.abs(flow.volts[p] - volts) > ENOUGH * flow.volts[s]) {
                flow.moved[s] = true;
                settled = false;
            }
            flow.volts[p] = volts;
        }
        return settled;
    }

    private void amps(Flow flow) {
        for (int p = 0; p < flow.amps.length; p++) {
            flow.amps[p] = 0;
        }
        for (int n = 0; n < point.length; n++) {
            int p = point[n];
            if (p != SupplyTree.NOWHERE && flow.stands[supplyOfPoint[p]]) {
                flow.nodeAmps[n] = flow.constantAmps[n] + flow.constantWatts[n] / flow.volts[p];
                flow.amps[p] += flow.nodeAmps[n];
            }
        }
        for (int p = flow.amps.length - 1; p >= tree.supplies().size(); p--) {
            flow.amps[tree.runs().get(p - tree.supplies().size()).from()] += flow.amps[p];
        }
    }

    private void after(Flow flow) {
        amps(flow);
        for (int p = 0; p < flow.volts.length; p++) {
            if (!flow.stands[supplyOfPoint[p]]) {
                flow.volts[p] = p < tree.supplies().size() ? flow.volts[p] : 0;
                flow.amps[p] = Double.NaN;
                flow.lift[p] = Double.NaN;
            } else if (p < tree.supplies().size()) {
                flow.lift[p] = 0;
            } else {
                int from = tree.runs().get(p - tree.supplies().size()).from();
                flow.lift[p] = flow.lift[from] + oneWayOhms[p] * flow.amps[p];
            }
        }
        for (int n = 0; n < point.length; n++) {
            double over = point[n] == SupplyTree.NOWHERE ? 0 : flow.volts[point[n]] - inlets[n].outputVolts();
            flow.regulatorWatts[n] = Math.max(0, over) * flow.regulatedAmps[n];
        }
    }
}
