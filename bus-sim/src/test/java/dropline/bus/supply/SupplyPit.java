package dropline.bus.supply;

import dropline.bus.Pits;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Dimming;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Fitting;
import dropline.bus.pit.Fitting.PairLoad;
import dropline.bus.pit.Gauge;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Indicator.Glow;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Inlet.Converter;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Location;
import dropline.bus.pit.SupplyTree.Run;
import dropline.bus.pit.SupplyTree.Supply;
import java.util.ArrayList;
import java.util.List;

/** A pit of boards that take a current, on one supply of 12 V and 10 A that stands outside. */
final class SupplyPit {
    static final Inlet LINEAR = new Inlet(Converter.LINEAR, 5, 1, 7, false, false);
    static final Inlet SWITCHING = new Inlet(Converter.SWITCHING, 5, 0.8, 7, false, false);

    private final List<Node> nodes = new ArrayList<>();
    private final List<Run> runs = new ArrayList<>();
    private Supply supply = new Supply("main", 12, 10, Location.EXTERNAL);

    static Draw milliamps(long milliamps) {
        return new Draw(milliamps * 1000, false);
    }

    static Draws active(long active, long rest) {
        return new Draws(milliamps(active), milliamps(rest), Draw.UNKNOWN, 0, true);
    }

    static Indicator indicator(Kind kind, Draws draws) {
        boolean refreshes = kind.refreshes();
        return new Indicator(
                kind.name(),
                kind,
                List.of(0),
                0,
                refreshes || kind == Kind.SERVO ? 20 * Pits.MILLI : 0,
                refreshes ? Pits.MILLI : 0,
                Blocks.NOTHING,
                kind.moves() ? new Motion(100, 0, 0, Motion.Zeroing.STOP, 100) : Motion.NONE,
                kind == Kind.FILAMENT_LAMP ? new Glow(1, 1) : Glow.NONE,
                draws,
                Dimming.PLAIN);
    }

    SupplyPit supply(double volts, double rating) {
        supply = new Supply("main", volts, rating, Location.EXTERNAL);
        return this;
    }

    SupplyPit run(String name, int from, Gauge gauge, double metres) {
        runs.add(new Run(name, from, gauge, metres, 0));
        return this;
    }

    SupplyPit board(String name, String fedBy, long milliamps, Inlet inlet, Indicator... indicators) {
        return board(name, fedBy, milliamps(milliamps), inlet, indicators);
    }

    SupplyPit board(String name, String fedBy, Draw draw, Inlet inlet, Indicator... indicators) {
        Profile profile = Pits.profile(100 * Pits.MICRO);
        Budget budget = new Budget(1, 1, "none");
        Panel panel = new Panel(name + " panel", "", Panel.Status.BUILT, List.of(indicators), List.of(), budget);
        Fitting fitting = new Fitting("", fedBy, "", "", "", draw, PairLoad.PLAIN, inlet);
        nodes.add(new Node(name, nodes.size() + 1, 1, profile, List.of(panel), List.of(), fitting));
        return this;
    }

    Pit pit() {
        Pit bare = Pits.pit(
                List.of(Pits.signal(1, false)),
                Pits.controller(Controller.StateDelivery.BROADCAST, 20 * Pits.MILLI, 1),
                nodes);
        Segment segment = bare.segments().get(0);
        return new Pit(
                "supplied",
                0,
                null,
                bare.signals(),
                List.of(segment),
                List.of(),
                new SupplyTree(List.of(supply), runs, -1));
    }
}
