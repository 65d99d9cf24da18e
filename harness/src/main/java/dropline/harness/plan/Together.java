package dropline.harness.plan;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.replay.Source;
import dropline.harness.size.Candidate;
import dropline.harness.size.DeadClasses;
import dropline.harness.size.Fare;
import dropline.harness.size.Mirror;
import dropline.harness.size.Tape;
import dropline.harness.size.Tight;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Whether what does alone does in the whole pit too: all that is played, alive and with the board dead that matters
 * most; and where segments share a hub board, the busiest minute with one board of each kind dead.
 */
final class Together {
    private final PlanAsked asked;
    private final Fits fits;
    private final Tape minute;
    private final Source.Opening all;

    Together(PlanAsked asked, Fits fits, Tape minute, Source.Opening all) {
        this.asked = asked;
        this.fits = fits;
        this.minute = minute;
        this.all = all;
    }

    /** The first that does not. */
    Optional<Fit> missing(Blueprint blueprint) throws IOException {
        Pit pit = blueprint.pit();
        Mirror mirror = fits.mirror(pit);
        List<Candidate> candidates = new ArrayList<>();
        List<Fit> of = new ArrayList<>();
        for (Map.Entry<Integer, Fit> entry : blueprint.fits().entrySet()) {
            int segment = entry.getKey();
            for (int dead : dead(pit.segments().get(segment), entry.getValue().dead())) {
                candidates.add(new Candidate(pit, segment, () -> mirror.over(all.open()), asked.seed(), dead));
                of.add(entry.getValue());
            }
            if (pit.runsWith(segment).size() > 1) {
                for (int dead : DeadClasses.of(pit.segments().get(segment))) {
                    candidates.add(new Candidate(pit, segment, () -> mirror.over(minute.open()), asked.seed(), dead));
                    of.add(entry.getValue());
                }
            }
        }
        List<Fare> fares = fits.fares(candidates);
        for (int i = 0; i < fares.size(); i++) {
            if (!fits.keeps(fares.get(i))) {
                return Optional.of(of.get(i));
            }
        }
        return Optional.empty();
    }

    /** None, then the one that mattered most. */
    private static List<Integer> dead(Segment segment, @Nullable Tight tight) {
        List<Integer> dead = new ArrayList<>(List.of(Candidate.HEALTHY));
        for (int node = 0; tight != null && node < segment.nodes().size(); node++) {
            if (segment.nodes().get(node).name().equals(tight.deadNode())) {
                dead.add(node);
            }
        }
        return dead;
    }

    /** Something else is to be tried in place of one. */
    void refuse(Fit fit) {
        fits.refuse(fit);
    }
}
