package dropline.harness.size;

import dropline.bus.bound.Bound;
import dropline.bus.bound.Obstacle;
import dropline.bus.bound.WorstCase;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.harness.verdict.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * What a builder could change about a segment short of moving panels: each change that applies to it, with the pit as
 * it would then be.
 */
final class Changes {
    private static final long MILLI = 1_000_000L;
    private static final int CHUNKS = 4;

    private final Pit pit;
    private final int segment;

    /** One change. */
    record Change(String words, Pit pit) {}

    Changes(Pit pit, int segment) {
        this.pit = pit;
        this.segment = segment;
    }

    List<Change> all() {
        List<Change> changes = new ArrayList<>();
        shorterTimeOut().ifPresent(changes::add);
        quickTimer().ifPresent(changes::add);
        fromInterrupt().ifPresent(changes::add);
        inChunks().ifPresent(changes::add);
        return changes;
    }

    /** The shortest time-out at which no stated maximum lets a reply come too late, if that saves a tenth. */
    private Optional<Change> shorterTimeOut() {
        long now = controller().timeOutNanos();
        if (isEverLate(now)) {
            return Optional.empty();
        }
        long late = 0;
        long safe = now;
        while (safe - late > 10_000) {
            long middle = (safe + late) / 2;
            if (isEverLate(middle)) {
                late = middle;
            } else {
                safe = middle;
            }
        }
        long step = safe < MILLI ? 50_000 : MILLI / 2;
        long round = (safe + step - 1) / step * step;
        return round > now - now / 10
                ? Optional.empty()
                : Optional.of(new Change(
                        "time-out " + Words.time(round) + " in place of " + Words.time(now)
                                + ", the least that is safe",
                        with(controller().withTimeOut(round))));
    }

    private boolean isEverLate(long timeOutNanos) {
        Pit changed = with(controller().withTimeOut(Math.max(1, timeOutNanos)));
        WorstCase worst = WorstCase.of(changed, segment, WorstCase.NONE);
        List<Node> nodes = here().nodes();
        if (isLate(worst.cycle())) {
            return true;
        }
        for (int n = 0; n < nodes.size(); n++) {
            for (Panel panel : nodes.get(n).panels()) {
                int position = n;
                if (panel.controls().stream().anyMatch(control -> isLate(worst.control(position, control)))) {
                    return true;
                }
                Bound update = worst.update(position, panel);
                if (update != null && isLate(update)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isLate(Bound bound) {
        Obstacle obstacle = bound.obstacle();
        return obstacle != null
                && switch (obstacle.kind()) {
                    case LATE_REPLY, LATE_ADAPTER, NO_MAXIMUM, ALWAYS_BLOCKED -> true;
                    default -> false;
                };
    }

    private Optional<Change> quickTimer() {
        Adapter adapter = controller().adapter();
        if (adapter.latencyTimerNanos() <= MILLI) {
            return Optional.empty();
        }
        Adapter quick =
                new Adapter(adapter.name(), MILLI, adapter.packetChars(), adapter.frameNanos(), adapter.wakeUp());
        Pit changed = pit;
        for (int together : pit.runsWith(segment)) {
            Segment before = changed.segments().get(together);
            changed = changed.with(together, before.with(before.controller().with(quick)));
        }
        return Optional.of(new Change(
                "latency timer of the adapter 1 ms in place of " + Words.time(adapter.latencyTimerNanos()), changed));
    }

    private Optional<Change> fromInterrupt() {
        return nodes(
                "replies made in the interrupt by all boards",
                node -> node.profile().replyFrom() == Profile.ReplyFrom.INTERRUPT
                        ? node
                        : node.with(
                                node.profile()
                                        .with(
                                                Profile.ReplyFrom.INTERRUPT,
                                                node.profile().tasks()),
                                node.panels()));
    }

    /** A refresh that blocks the loop, in parts: as long in all, the loop free between them. */
    private Optional<Change> inChunks() {
        return nodes("displays refreshed in " + CHUNKS + " parts, with the loop free between them", node -> {
            List<Profile.Task> tasks = new ArrayList<>(node.profile().tasks());
            List<Panel> panels = new ArrayList<>();
            for (Panel panel : node.panels()) {
                panels.add(inChunks(panel, tasks));
            }
            return panels.equals(node.panels())
                    ? node
                    : node.with(node.profile().with(node.profile().replyFrom(), tasks), panels);
        });
    }

    private static Panel inChunks(Panel panel, List<Profile.Task> tasks) {
        List<Indicator> indicators = new ArrayList<>();
        for (Indicator indicator : panel.indicators()) {
            if (!indicator.kind().refreshes() || indicator.blocks() != Indicator.Blocks.LOOP) {
                indicators.add(indicator);
                continue;
            }
            tasks.add(new Profile.Task(
                    "part of " + indicator.name(),
                    indicator.refreshEveryNanos() / CHUNKS,
                    Math.max(1, indicator.refreshTakesNanos() / CHUNKS),
                    Indicator.Blocks.LOOP));
            indicators.add(new Indicator(
                    indicator.name(),
                    indicator.kind(),
                    indicator.signals(),
                    indicator.delayNanos(),
                    indicator.refreshEveryNanos(),
                    indicator.refreshTakesNanos(),
                    Indicator.Blocks.NOTHING,
                    indicator.motion(),
                    indicator.glow()));
        }
        return new Panel(
                panel.name(),
                panel.place(),
                panel.status(),
                indicators,
                panel.controls(),
                panel.budget(),
                panel.draws());
    }

    private Optional<Change> nodes(String words, UnaryOperator<Node> changing) {
        List<Node> nodes = here().nodes().stream().map(changing).toList();
        return nodes.equals(here().nodes())
                ? Optional.empty()
                : Optional.of(new Change(words, pit.with(segment, here().with(nodes, here().cable()))));
    }

    private Segment here() {
        return pit.segments().get(segment);
    }

    private Controller controller() {
        return here().controller();
    }

    private Pit with(Controller other) {
        return pit.with(segment, here().with(other));
    }
}
