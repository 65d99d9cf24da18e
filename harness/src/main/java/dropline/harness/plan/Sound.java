package dropline.harness.plan;

import dropline.bus.bound.Obstacle;
import dropline.bus.bound.WorstCase;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Whether frames arrive as surely as they do now. A plan may not make a board lose what it surely gets today, even
 * where retries would hide it: a faster segment overruns a UART whose interrupts are off for long.
 */
final class Sound {
    private final Boards boards;
    private final Map<String, Obstacle> now = new LinkedHashMap<>();

    Sound(Pit pit, Boards boards) {
        this.boards = boards;
        for (int s = 0; s < pit.segments().size(); s++) {
            List<@Nullable Obstacle> obstacles =
                    WorstCase.of(pit, s, WorstCase.NONE).obstacles();
            List<Node> nodes = pit.segments().get(s).nodes();
            for (int n = 0; n < nodes.size(); n++) {
                Obstacle obstacle = obstacles.get(n);
                if (obstacle != null) {
                    now.put(nodes.get(n).name(), obstacle);
                }
            }
        }
    }

    /** Of a group on a segment of its own, which is the only one of the pit given. */
    boolean isAsSoundAsNow(Group group, Pit alone) {
        List<@Nullable Obstacle> obstacles =
                WorstCase.of(alone, 0, WorstCase.NONE).obstacles();
        for (int n = 0; n < obstacles.size(); n++) {
            Obstacle then = obstacles.get(n);
            Obstacle before = now.get(boards.of(group).get(n).node().name());
            if (then != null && (before == null || before.kind() != then.kind())) {
                return false;
            }
        }
        return true;
    }
}
