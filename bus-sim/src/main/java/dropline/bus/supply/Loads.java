package dropline.bus.supply;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import java.util.function.Function;

/** The currents that a pit's nodes hand on, by node in the order of {@link Layout#nodes()}, uA. */
public final class Loads {
    private final long[] straight;
    private final long[] throughBoard;
    private final int[] unknown;
    private final int[] figures;

    /** None yet, for so many nodes. */
    public Loads(int nodes) {
        straight = new long[nodes];
        throughBoard = new long[nodes];
        unknown = new int[nodes];
        figures = new int[nodes];
    }

    /** Those of a pit in a state. What nobody stated counts as nothing, and as {@linkplain #unknown unknown}. */
    public static Loads of(Layout layout, State state) {
        return of(layout, state::of);
    }

    /** Those of a pit whose indicators take what {@code draw} says of them. */
    static Loads of(Layout layout, Function<Indicator, Draw> draw) {
        Loads loads = new Loads(layout.nodes().size());
        for (int n = 0; n < layout.nodes().size(); n++) {
            Node node = layout.nodes().get(n).node();
            loads.count(n, node.fitting().draws());
            for (Panel panel : node.panels()) {
                Draws stated = panel.draws();
                if (stated.active().isKnown()) {
                    loads.add(n, stated, stated.active());
                } else {
                    for (Indicator indicator : panel.indicators()) {
                        loads.add(n, indicator.draws(), draw.apply(indicator));
                    }
                }
            }
        }
        return loads;
    }

    private void add(int node, Draws draws, Draw draw) {
        count(node, draw);
        if (draw.isKnown()) {
            change(node, draws.throughBoard(), draw.microamps());
        }
    }

    private void count(int node, Draw draw) {
        figures[node]++;
        if (!draw.isKnown()) {
            unknown[node]++;
        }
    }

    /** A part of a node takes so much more, or less where negative, uA. */
    public void change(int node, boolean boardPassesOn, long microamps) {
        long[] which = boardPassesOn ? throughBoard : straight;
        which[node] += microamps;
    }

    /** What a node's parts take straight from its supply, uA. */
    public long straight(int node) {
        return straight[node];
    }

    /** What they take from the node's board, uA at its own volts. */
    public long throughBoard(int node) {
        return throughBoard[node];
    }

    /** How many of a node's figures nobody stated. */
    public int unknown(int node) {
        return unknown[node];
    }

    /** How many figures a node has: its board, and its panels or their indicators. */
    public int figures(int node) {
        return figures[node];
    }
}
