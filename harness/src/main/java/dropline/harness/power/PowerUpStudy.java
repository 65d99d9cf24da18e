package dropline.harness.power;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.supply.Feeds;
import dropline.bus.supply.Flow;
import dropline.bus.supply.Loads;
import dropline.bus.supply.PowerOn;
import dropline.bus.supply.PowerOn.Phase;
import dropline.bus.supply.PowerOn.Why;
import dropline.bus.supply.State;
import dropline.harness.report.Figures;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Follows a power-up: by a model until the computer starts, by a run of the simulator from then on. */
public final class PowerUpStudy {
    /** Delays for each address that are tried; the shortest that is nearly as good as the best is told. */
    private static final List<Long> DELAYS =
            List.of(50_000_000L, 100_000_000L, 200_000_000L, 500_000_000L, 1_000_000_000L);

    private static final double NEARLY = 1.05;

    private final Pit pit;
    private final Layout layout;
    private final Feeds feeds;

    private PowerUpStudy(Pit pit) {
        this.pit = pit;
        layout = Layout.of(pit);
        feeds = new Feeds(pit, Feeds.WIRE_CELSIUS);
    }

    /**
     * A result with its power-up.
     *
     * @param threads at least 1; what comes out is the same whatever their number
     */
    public static PowerResult with(PowerResult result, Pit pit, long seed, int threads) throws IOException {
        return new PowerUpStudy(pit).study(result, seed, threads);
    }

    private PowerResult study(PowerResult result, long seed, int threads) throws IOException {
        PowerOn start = PowerOn.of(pit, 0);
        long hostOn = hostOn(start);
        StartRun.Started run = StartRun.of(pit, hostOn, seed, threads);
        List<PowerUp.Peak> peaks = peaks(start, hostOn, run);
        long ready = Math.max(hostOn + Math.max(run.heardNanos(), run.shownNanos()), start.zeroedNanos());
        PowerUp powerUp = new PowerUp(
                steps(start, hostOn, run), ready, peaks, staggered(peaks, hostOn, ready), run.zoneLagNanos());
        return result.from(powerUp);
    }

    private long hostOn(PowerOn start) {
        long stated = pit.supplies().hostOnNanos();
        return stated == SupplyTree.NONE.hostOnNanos() ? start.zeroedNanos() : stated;
    }

    private List<PowerUp.Step> steps(PowerOn start, long hostOn, StartRun.Started run) {
        List<PowerUp.Step> steps = new ArrayList<>();
        steps.add(new PowerUp.Step(0, "all supplies are on"));
        steps.add(new PowerUp.Step(start.upNanos(), "the last board has booted"));
        if (start.zeroedNanos() > start.upNanos()) {
            steps.add(new PowerUp.Step(start.zeroedNanos(), "the last motor has found its zero"));
        }
        steps.add(new PowerUp.Step(hostOn, "the computer sends its first state"));
        steps.add(new PowerUp.Step(hostOn + run.heardNanos(), "every switch's position is known" + but(run.silent())));
        steps.add(new PowerUp.Step(hostOn + run.shownNanos(), "everything is shown right" + but(run.unshown())));
        steps.sort((a, b) -> Long.compare(a.atNanos(), b.atNanos()));
        return steps;
    }

    private static String but(int missing) {
        return missing == 0 ? "" : ", but for " + missing + " that never came";
    }

    private List<PowerUp.Peak> peaks(PowerOn start, long hostOn, StartRun.Started run) {
        List<PowerUp.Peak> peaks = new ArrayList<>();
        for (int s = 0; s < pit.supplies().supplies().size(); s++) {
            Most most = most(start, s);
            Flight.Drawn later = run.currents().points().get(s);
            peaks.add(new PowerUp.Peak(
                    pit.supplies().supplies().get(s).name(),
                    most.amps,
                    most.atNanos,
                    why(start, s, most.atNanos),
                    later.max(),
                    hostOn + later.maxNanos()));
        }
        return peaks;
    }

    /** The most that a supply gives until the computer starts. */
    private static final class Most {
        private double amps;
        private long atNanos;
    }

    private Most most(PowerOn start, int supply) {
        TreeSet<Long> instants = new TreeSet<>(List.of(0L));
        start.phases().forEach(phase -> instants.add(phase.fromNanos()));
        Most most = new Most();
        for (long at : instants) {
            Loads loads = Loads.of(layout, State.IDLE);
            for (Phase phase : start.phases()) {
                if (phase.fromNanos() <= at && at < phase.untilNanos()) {
                    loads.change(phase.node(), phase.throughBoard(), phase.microamps());
                }
            }
            Flow flow = feeds.solve(loads);
            if (flow.amps(supply) > most.amps) {
                most.amps = flow.amps(supply);
                most.atNanos = at;
            }
        }
        return most;
    }

    /** What takes the most beside what is always taken. */
    private String why(PowerOn start, int supply, long atNanos) {
        Map<Why, Long> amounts = new EnumMap<>(Why.class);
        Map<Why, Set<Integer>> parts = new EnumMap<>(Why.class);
        for (Phase phase : start.phases()) {
            if (phase.fromNanos() <= atNanos && atNanos < phase.untilNanos() && feeds.supply(phase.node()) == supply) {
                amounts.merge(phase.why(), phase.microamps(), Long::sum);
                parts.computeIfAbsent(phase.why(), why -> new TreeSet<>()).add(phase.part());
            }
        }
        return amounts.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(most -> words(
                        most.getKey(),
                        parts.getOrDefault(most.getKey(), Set.of()).size()))
                .orElse("");
    }

    private static String words(Why why, int count) {
        return switch (why) {
            case DISPLAYS_COME_ON -> Figures.plural(count, "display") + " come on together";
            case MOTORS_LOOK_FOR_THEIR_ZERO -> Figures.plural(count, "motor") + " look for their zero together";
            case SERVOS_JUMP -> Figures.plural(count, "servo") + " jump together";
        };
    }

    private PowerUp.@Nullable Staggered staggered(List<PowerUp.Peak> peaks, long hostOn, long ready) {
        List<PowerUp.Staggered> tried = new ArrayList<>();
        for (long delay : DELAYS) {
            PowerOn start = PowerOn.of(pit, delay);
            List<Double> amps = new ArrayList<>();
            for (int s = 0; s < peaks.size(); s++) {
                amps.add(most(start, s).amps);
            }
            tried.add(new PowerUp.Staggered(delay, ready + Math.max(0, hostOn(start) - hostOn), amps));
        }
        double best = tried.stream().mapToDouble(PowerUpStudy::sum).min().orElseThrow();
        PowerUp.Staggered chosen = tried.stream()
                .filter(one -> sum(one) <= NEARLY * best)
                .findFirst()
                .orElseThrow();
        double together = peaks.stream().mapToDouble(PowerUp.Peak::amps).sum();
        return sum(chosen) < together ? chosen : null;
    }

    private static double sum(PowerUp.Staggered start) {
        return start.amps().stream().mapToDouble(Double::doubleValue).sum();
    }
}
