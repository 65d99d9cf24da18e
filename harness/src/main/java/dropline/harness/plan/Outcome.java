package dropline.harness.plan;

import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.rule.Ruling;
import dropline.bus.supply.Supplies;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.Figures;
import dropline.harness.plan.PlanResult.Move;
import dropline.harness.plan.PlanResult.PlannedSegment;
import dropline.harness.plan.PlanResult.Split;
import dropline.harness.plan.PlanResult.Weight;
import dropline.harness.size.Busiest;
import dropline.harness.verdict.Recording;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Says what a plan came to. */
final class Outcome {
    private final PlanAsked asked;
    private final Boards boards;
    private final Fits fits;
    private final Busiest busiest;
    private final @Nullable Blueprint blueprint;

    Outcome(PlanAsked asked, Boards boards, Fits fits, Busiest busiest, @Nullable Blueprint blueprint) {
        this.asked = asked;
        this.boards = boards;
        this.fits = fits;
        this.busiest = busiest;
        this.blueprint = blueprint;
    }

    PlanResult result(Excused excused, List<Sharing> sharings, String digest, Figures figures) throws IOException {
        List<PlannedSegment> segments = new ArrayList<>();
        List<Move> moves = new ArrayList<>();
        List<String> dropped = new ArrayList<>();
        List<Split> splits = List.of();
        if (blueprint != null) {
            for (SegmentChange change : blueprint.changes()) {
                if (change.planned() == null) {
                    dropped.add(change.name());
                }
            }
            blueprint.fits().forEach((index, fit) -> {
                Segment planned = blueprint.pit().segments().get(index);
                segments.add(segment(planned, fit));
                moves(planned, fit, moves);
            });
            splits = splits(blueprint);
        }
        Pit judged = blueprint == null ? asked.pit() : blueprint.pit();
        List<Ruling> rulings = rulings(judged);
        return new PlanResult(
                PlanResult.VERSION,
                asked.droplineVersion(),
                asked.pit().name(),
                new Recording(asked.recording(), busiest.wholeNanos()),
                busiest.fromNanos(),
                busiest.untilNanos(),
                asked.seed(),
                asked.seeds(),
                asked.margin(),
                blueprint != null,
                sharings.stream().allMatch(Sharing::isExact),
                fits.runs(),
                digest,
                (int) asked.pit().segments().stream().filter(Segment::isShared).count(),
                segments,
                moves,
                dropped,
                splits,
                sharings.stream().map(Sharing::fewer).filter(Objects::nonNull).toList(),
                excused.aside().out(),
                rulings.stream().filter(Fits::isBrokenLaw).toList(),
                rulings.stream()
                        .filter(ruling -> ruling.standing() == Ruling.Standing.BROKEN)
                        .filter(ruling -> !Fits.isBrokenLaw(ruling))
                        .toList(),
                blueprint == null ? null : new Shopping(asked.pit(), blueprint.pit()).list(),
                List.of(),
                Trials.counted(figures));
    }

    private List<Ruling> rulings(Pit judged) {
        List<Ruling> all = new ArrayList<>();
        for (int s = 0; s < judged.segments().size(); s++) {
            all.addAll(fits.rulings(judged, s));
        }
        all.addAll(Supplies.rule(judged));
        return all;
    }

    private PlannedSegment segment(Segment planned, Fit fit) {
        Segment like = asked.pit().segments().get(fit.group().segment());
        List<Weight> polled = new ArrayList<>();
        for (int i = 0; i < planned.nodes().size(); i++) {
            Node node = planned.nodes().get(i);
            if (node.weight() != boards.get(fit.group().boards().get(i)).node().weight()) {
                polled.add(new Weight(node.name(), node.weight()));
            }
        }
        return new PlannedSegment(
                planned.name(),
                fit.group().further() ? like.name() : null,
                planned.baud(),
                like.baud(),
                planned.controller().state(),
                like.controller().state(),
                planned.controller().timeOutNanos(),
                like.controller().timeOutNanos(),
                planned.nodes().size(),
                planned.nodes().stream().mapToInt(node -> node.panels().size()).sum(),
                polled,
                fit.healthy(),
                fit.dead());
    }

    private void moves(Segment planned, Fit fit, List<Move> moves) {
        for (int i = 0; i < planned.nodes().size(); i++) {
            Board board = boards.get(fit.group().boards().get(i));
            if (boards.moves(board.number(), fit.group())) {
                moves.add(new Move(
                        board.node().name(),
                        board.node().panels().stream().map(Panel::name).toList(),
                        asked.pit().segments().get(board.segment()).name(),
                        planned.name(),
                        board.node().address(),
                        planned.nodes().get(i).address()));
            }
        }
    }

    private List<Split> splits(Blueprint drawn) throws IOException {
        List<Split> splits = new ArrayList<>();
        List<Integer> indices = List.copyOf(drawn.fits().keySet());
        List<Group> groups = drawn.fits().values().stream().map(Fit::group).toList();
        Map<String, Set<Integer>> on = Cost.on(groups, boards, Board::places);
        for (Map.Entry<String, Set<Integer>> place : on.entrySet()) {
            if (place.getValue().size() > 1) {
                List<Group> its = place.getValue().stream().map(groups::get).toList();
                List<String> names = place.getValue().stream()
                        .map(group ->
                                drawn.pit().segments().get(indices.get(group)).name())
                        .toList();
                splits.add(split(place.getKey(), names, its));
            }
        }
        return splits;
    }

    private Split split(String place, List<String> names, List<Group> groups) throws IOException {
        Set<Object> speech = new LinkedHashSet<>();
        List<Integer> there = new ArrayList<>();
        for (Group group : groups) {
            Segment segment = asked.pit().segments().get(group.segment());
            speech.add(Family.speech(segment));
            group.boards().stream()
                    .filter(board -> boards.get(board).places().contains(place))
                    .forEach(there::add);
        }
        boolean alike = speech.size() == 1;
        Group one = new Group(
                groups.get(0).segment(), false, there.stream().sorted().toList());
        return new Split(place, names, alike, alike && fits.of(one).isPresent());
    }
}
