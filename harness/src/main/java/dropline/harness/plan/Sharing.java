package dropline.harness.plan;

import dropline.bus.pit.Pit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Shares a family's boards out over as few segments as will do. Of a small family every way is tried, the cheapest
 * first, so that none that would do is cheaper; of a larger one those that {@link Guesses} has.
 */
final class Sharing {
    /** A family of no more boards is small, if they are on no more segments than {@link #SMALL_SEGMENTS}. */
    static final int SMALL = 8;

    static final int SMALL_SEGMENTS = 3;

    private static final int MOST_SEGMENTS = 16;

    private final Family family;
    private final Boards boards;
    private final Fits fits;
    private final Guesses guesses;
    private final boolean sameSegments;
    private @Nullable Refusal refused;
    private @Nullable Refusal fewer;

    Sharing(Family family, Boards boards, Fits fits, Pit pit, boolean sameSegments) {
        this.family = family;
        this.boards = boards;
        this.fits = fits;
        this.sameSegments = sameSegments;
        guesses = new Guesses(family, boards, fits, new Loads(pit, family));
    }

    /** Whether every way is tried. */
    boolean isExact() {
        return family.boards().size() <= SMALL && family.segments().size() <= SMALL_SEGMENTS;
    }

    /** Why the likeliest way with one segment less would not do; null where none was tried. */
    @Nullable
    Refusal fewer() {
        return fewer;
    }

    /** Every group with its settings; empty where no way was found. */
    List<Fit> best() throws IOException {
        int own = family.segments().size();
        int least = sameSegments ? own : 1;
        int most = sameSegments ? own : Math.min(family.boards().size(), Math.max(own, MOST_SEGMENTS));
        for (int segments = least; segments <= most; segments++) {
            Optional<List<Group>> way = isExact() ? firstOf(segments) : guesses.of(segments);
            if (way.isEmpty()) {
                fewer = isExact() ? refused : guesses.refused();
            } else {
                List<Fit> found = new ArrayList<>();
                for (Group group : way.get()) {
                    found.add(fits.of(group).orElseThrow());
                }
                return found;
            }
        }
        return List.of();
    }

    private Optional<List<Group>> firstOf(int segments) throws IOException {
        List<List<Group>> all = Ways.all(family, Ways.singly(family.boards()), segments);
        refused = null;
        for (List<Group> way : Cost.cheapestFirst(all, boards)) {
            if (fits.all(way)) {
                return Optional.of(way);
            }
            refused = refused == null
                    ? way.stream()
                            .map(fits::refusal)
                            .filter(Objects::nonNull)
                            .findFirst()
                            .orElse(null)
                    : refused;
        }
        return Optional.empty();
    }
}
