package dropline.harness.size;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.Figure;
import dropline.harness.pitfile.Figures;
import dropline.harness.pitfile.Origin;
import dropline.harness.pitfile.Scale;
import dropline.harness.size.SizeResult.GuessedNumber;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the guesses that bear on a segment mean for its number of panels. All are tried at half and at double on the
 * short stretch at the number found; for those that move the tightest there most the number is searched anew.
 */
final class Guessing {
    private static final int SEARCHED = 4;
    private static final double LEAST_MOVED = 0.002;

    private final SizePlan plan;
    private final Figures figures;
    private final Search screen;
    private final Search own;
    private final List<Case> kinds;
    private final int inFirstSeed;
    private final Judging judging;

    Guessing(
            SizePlan plan,
            Figures figures,
            Search screen,
            Search own,
            List<Case> kinds,
            int inFirstSeed,
            Judging judging) {
        this.plan = plan;
        this.figures = figures;
        this.screen = screen;
        this.own = own;
        this.kinds = kinds;
        this.inFirstSeed = inFirstSeed;
        this.judging = judging;
    }

    /** A figure at a scale, and by how much that moves the tightest panel. */
    private record Tried(Figure figure, Scale scale, Pit pit, double moved) {}

    List<GuessedNumber> all() throws IOException {
        String segment = plan.pit().segments().get(plan.segment()).name();
        List<Tried> scaled = new ArrayList<>();
        for (Figure figure : figures.of(Origin.GUESSED)) {
            for (Scale scale : Scale.values()) {
                if (figure.segments().contains(segment)) {
                    figures.scaled(figure, scale).ifPresent(pit -> scaled.add(new Tried(figure, scale, pit, 0)));
                }
            }
        }
        Case at = kinds.get(kinds.size() - 1).at(Math.max(0, inFirstSeed));
        double before = screen.strain(at);
        List<Tried> tried = judging.each(
                scaled,
                one -> new Tried(
                        one.figure(),
                        one.scale(),
                        one.pit(),
                        Math.abs(searchOf(screen, one.pit()).strain(at) - before)));
        List<Figure> moving = tried.stream()
                .filter(one -> one.moved() > LEAST_MOVED)
                .sorted(Comparator.comparingDouble(Tried::moved).reversed())
                .map(Tried::figure)
                .distinct()
                .limit(SEARCHED)
                .toList();
        List<GuessedNumber> numbers = judging.each(
                moving,
                figure -> new GuessedNumber(
                        figure.path(),
                        figure.text(),
                        figure.where(),
                        number(tried, figure, Scale.HALF),
                        number(tried, figure, Scale.DOUBLE)));
        return numbers.stream()
                .filter(number -> spread(number) > 0)
                .sorted(Comparator.comparingInt((GuessedNumber number) -> spread(number))
                        .reversed())
                .toList();
    }

    private @Nullable Integer number(List<Tried> tried, Figure figure, Scale scale) throws IOException {
        Optional<Tried> one = tried.stream()
                .filter(other -> other.figure().equals(figure) && other.scale() == scale)
                .findFirst();
        return one.isEmpty() ? null : searchOf(own, one.get().pit()).largestOf(kinds, Math.max(0, inFirstSeed));
    }

    private static Search searchOf(Search search, Pit pit) {
        return search.of(search.growth().of(pit));
    }

    private int spread(GuessedNumber number) {
        return Math.max(spread(number.half()), spread(number.twice()));
    }

    private int spread(@Nullable Integer number) {
        return number == null ? 0 : Math.abs(number - inFirstSeed);
    }
}
