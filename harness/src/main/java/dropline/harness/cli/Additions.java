package dropline.harness.cli;

import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.pitfile.PitFile;
import dropline.harness.pitfile.PresetList;
import dropline.harness.problem.Nearest;
import dropline.harness.problem.Problem;
import dropline.harness.size.Growth;
import dropline.harness.yaml.YamlText;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds what a person names to be added to a segment: a panel of the pit, or a kind of indicator, which then stands
 * alone on a panel and shows a signal that the segment shows already, on a board like the segment's first.
 */
final class Additions {
    private static final String KINDS = "kinds.indicators";

    private final PitFile.Understood understood;
    private final int segment;

    Additions(PitFile.Understood understood, int segment) {
        this.understood = understood;
        this.segment = segment;
    }

    List<Node> boards(List<String> names) {
        List<Node> boards = new ArrayList<>();
        for (String name : names) {
            boards.add(panel(name).or(() -> kind(name)).orElseThrow(() -> nobody(name)));
        }
        return boards;
    }

    private Optional<Node> panel(String name) {
        Pit pit = understood.pit();
        for (int s = 0; s < pit.segments().size(); s++) {
            for (Node node : pit.segments().get(s).nodes()) {
                for (Panel panel : node.panels()) {
                    if (panel.name().equals(name)) {
                        return Optional.of(Growth.board(pit, segment, node, panel));
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Of the segment's signals, the first that such an indicator can show. */
    private Optional<Node> kind(String name) {
        if (!kinds().contains(name)) {
            return Optional.empty();
        }
        String missing = "";
        Segment here = understood.pit().segments().get(segment);
        String panel = name + " added";
        for (int signal : shown(here)) {
            String part = "panels:\n  " + YamlText.scalar(panel) + ":\n    node: "
                    + YamlText.scalar(here.nodes().get(0).name()) + "\n    indicators:\n      shown: {like: "
                    + YamlText.scalar(name) + ", shows: "
                    + YamlText.scalar(understood.pit().signals().get(signal).name()) + "}\n";
            PitFile.Result result = understood.tree().withPart(part);
            if (result instanceof PitFile.Understood with) {
                return new Additions(with, segment).panel(panel);
            }
            if (result instanceof PitFile.Wrong wrong) {
                Problem first = wrong.problems().get(0);
                missing = "; as for " + first.key() + ", " + first.code() + ": expected " + first.expected();
            }
        }
        throw new WrongInput("dropline: an indicator like '" + name + "' cannot stand alone on a panel that shows a"
                + " signal of this segment" + missing
                + "\nWrite a panel with one into the pit file (status: planned) and add that.");
    }

    private static Set<Integer> shown(Segment here) {
        Set<Integer> shown = new LinkedHashSet<>();
        for (Node node : here.nodes()) {
            for (Panel panel : node.panels()) {
                for (Indicator indicator : panel.indicators()) {
                    shown.addAll(indicator.signals());
                }
            }
        }
        return shown;
    }

    private List<String> kinds() {
        List<String> kinds = new ArrayList<>();
        for (PresetList.Preset preset : PresetList.all()) {
            if (preset.group().equals(KINDS)) {
                kinds.add(preset.name());
            }
        }
        for (String path : understood.tree().paths()) {
            if (path.startsWith(KINDS + ".")) {
                kinds.add(path.substring(KINDS.length() + 1).replaceAll("^\"([^\"]*)\".*|\\..*", "$1"));
            }
        }
        return kinds;
    }

    private WrongInput nobody(String name) {
        List<String> candidates = new ArrayList<>();
        understood
                .pit()
                .segments()
                .forEach(s -> s.nodes().forEach(node -> node.panels().forEach(panel -> candidates.add(panel.name()))));
        candidates.addAll(kinds());
        String near = Nearest.to(name, candidates)
                .map(other -> "; did you mean " + other + "?")
                .orElse("; 'dropline presets' lists the kinds of indicator");
        return new WrongInput("dropline: there is no panel and no kind of indicator '" + name + "'" + near);
    }
}
