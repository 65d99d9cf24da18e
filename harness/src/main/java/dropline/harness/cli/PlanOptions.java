package dropline.harness.cli;

import dropline.harness.pitfile.PitFile;
import dropline.harness.plan.PlanAsked;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options by which {@code dropline size} says where each panel should go. */
final class PlanOptions {
    @Option(
            names = "--plan",
            description = "Say where each panel should go: the fewest segments on which every limit is kept.")
    private boolean plan;

    @Option(
            names = "--same-segments",
            description = "With --plan: keep the segments there are, neither fewer nor more.")
    private boolean sameSegments;

    @Option(
            names = "--write",
            paramLabel = "FILE",
            description = "With --plan: save the plan as a pit file, with your own words and comments.")
    private @Nullable Path write;

    boolean isAsked() {
        return plan;
    }

    boolean isOnlyHalfAsked() {
        return !plan && (sameSegments || write != null);
    }

    /** A pit file is somebody's work: none is written over. */
    void mustNotOverwrite() {
        if (write != null && Files.exists(write)) {
            throw new WrongInput("dropline: " + write + " is there already; give the plan's file another name");
        }
    }

    @Nullable
    Path write() {
        return write;
    }

    PlanAsked asked(Played played, PitFile.Understood understood, List<Integer> bauds, double margin, int seeds) {
        return new PlanAsked(
                Version.number(),
                played.name(),
                understood.pit(),
                understood.nodes(),
                bauds,
                sameSegments,
                margin,
                played.seed(),
                seeds);
    }
}
