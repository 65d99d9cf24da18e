package dropline.harness.plan;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.Figures;
import dropline.harness.recording.PitFeed;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Replayed;
import dropline.harness.replay.Source;
import dropline.harness.size.Busiest;
import dropline.harness.size.Judging;
import dropline.harness.size.Mirror;
import dropline.harness.size.Tape;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Plans where each board of a pit should go. */
public final class Planning {
    private static final int BRIEF_SECONDS = 10;
    private static final int BUSIEST_SECONDS = 60;

    /** So often something else is tried because what does alone does not do beside the others. */
    private static final int MOST_ROUNDS = 12;

    private final PlanAsked asked;
    private final Trials.Stretch played;
    private final Figures figures;
    private final Judging judging;
    private final int threads;

    /**
     * @param played opens parts of what is played
     * @param figures what the pit rests on
     * @param threads for the run of the whole plan, at least 1
     */
    public Planning(PlanAsked asked, Trials.Stretch played, Figures figures, Judging judging, int threads) {
        this.asked = asked;
        this.played = played;
        this.figures = figures;
        this.judging = judging;
        this.threads = threads;
    }

    /**
     * Does all of it.
     *
     * @throws IOException if what is played cannot be read
     */
    public Planned run() throws IOException {
        Pit pit = asked.pit();
        List<Family> families = Family.of(pit, asked.order());
        Boards boards = new Boards(families);
        Source.Opening all = played.of(0, PitFeed.TO_THE_END);
        List<Integer> segments =
                IntStream.range(0, pit.segments().size()).boxed().toList();
        Busiest busiest = Busiest.of(all, pit, segments, BUSIEST_SECONDS);
        Tape brief = tape(Busiest.of(all, pit, segments, BRIEF_SECONDS), segments);
        Tape minute = tape(busiest, segments);
        Draft draft = new Draft(pit, boards);
        Choices choices = new Choices(pit, boards, asked.bauds());
        Fits fits = new Fits(asked, boards, draft, choices, new Fits.Stretches(brief, minute), judging);
        Excused excused = Excused.of(families, fits, judging, asked.margin());
        fits.excuse(excused.aside(), excused.laws());
        List<Sharing> sharings = new ArrayList<>();
        families.forEach(family -> sharings.add(new Sharing(family, boards, fits, pit, asked.sameSegments())));
        Blueprint blueprint = blueprint(sharings, draft, new Together(asked, fits, minute, all));
        String digest = blueprint == null ? "" : digest(pit, blueprint.pit(), played, asked.seed(), threads);
        PlanResult result =
                new Outcome(asked, boards, fits, busiest, blueprint).result(excused, sharings, digest, figures);
        return blueprint == null
                ? new Planned(result, null, List.of())
                : new Planned(result, blueprint.pit(), blueprint.changes());
    }

    private Tape tape(Busiest stretch, List<Integer> segments) throws IOException {
        return Tape.of(played.of(stretch.fromNanos(), stretch.untilNanos()), asked.pit(), segments);
    }

    /** The cheapest sharing that does when all segments run as they will; null where none was found. */
    private @Nullable Blueprint blueprint(List<Sharing> sharings, Draft draft, Together together) throws IOException {
        for (int round = 0; round < MOST_ROUNDS; round++) {
            List<Fit> fits = new ArrayList<>();
            for (Sharing sharing : sharings) {
                List<Fit> best = sharing.best();
                if (best.isEmpty()) {
                    return null;
                }
                fits.addAll(best);
            }
            Blueprint drawn = new Blueprint(asked.pit(), draft, fits);
            Optional<Fit> missing = together.missing(drawn);
            if (missing.isEmpty()) {
                return drawn;
            }
            together.refuse(missing.get());
        }
        return null;
    }

    /** The digest of the run that a replay of a planned pit makes over all that is played. */
    public static String digest(Pit before, Pit planned, Trials.Stretch played, long seed, int threads)
            throws IOException {
        Mirror mirror = Mirror.between(
                Layout.of(before), Layout.of(planned), planned.signals().size());
        Source.Opening all = played.of(0, PitFeed.TO_THE_END);
        Replayed replayed = new Replay(planned.modelled(), () -> mirror.over(all.open()), seed, threads)
                .run(false, null, Progress.NONE);
        return String.format(Locale.ROOT, "%016x", replayed.digest());
    }
}
