package dropline.bus.supply;

import dropline.bus.pit.SupplyTree;

/** The volts and amperes of a pit's supplies, runs and nodes at one moment. */
public final class Flow {
    private final Feeds feeds;
    final boolean[] stands;
    /** Supplies whose volts still changed in the latest step. */
    final boolean[] moved;

    final double[] volts;
    final double[] amps;
    final double[] lift;
    final double[] nodeAmps;
    final double[] constantAmps;
    final double[] constantWatts;
    final double[] regulatedAmps;
    final double[] regulatorWatts;

    Flow(Feeds feeds, int supplies, int points, int nodes) {
        this.feeds = feeds;
        stands = new boolean[supplies];
        moved = new boolean[supplies];
        volts = new double[points];
        amps = new double[points];
        lift = new double[points];
        nodeAmps = new double[nodes];
        constantAmps = new double[nodes];
        constantWatts = new double[nodes];
        regulatedAmps = new double[nodes];
        regulatorWatts = new double[nodes];
    }

    /** Whether there are volts at which a supply, its wires and its loads agree; if not, it collapses. */
    public boolean stands(int supply) {
        return stands[supply];
    }

    /** Volts between the two wires at a point; 0 where its supply collapses. */
    public double volts(int point) {
        return volts[point];
    }

    /** What flows into a point: out of a supply, or through a run; NaN where its supply collapses. */
    public double amps(int point) {
        return amps[point];
    }

    /** By how much the return wire lifts the ground at a point above its supply's, V; NaN where that collapses. */
    public double groundVolts(int point) {
        return lift[point];
    }

    /** Volts at a node's supply terminals; NaN for one on no supply, 0 where its supply collapses. */
    public double nodeVolts(int node) {
        int point = feeds.point(node);
        return point == SupplyTree.NOWHERE ? Double.NaN : volts[point];
    }

    /** What a node with its panels takes from its supply, A; NaN for one on no supply, or whose supply collapses. */
    public double nodeAmps(int node) {
        int supply = feeds.supply(node);
        return supply == SupplyTree.NOWHERE || !stands[supply] ? Double.NaN : nodeAmps[node];
    }

    /** Heat in a node's linear regulator, W; 0 for one without, or on no supply. */
    public double regulatorWatts(int node) {
        return regulatorWatts[node];
    }
}
