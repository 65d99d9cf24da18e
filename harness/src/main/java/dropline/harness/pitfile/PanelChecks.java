package dropline.harness.pitfile;

import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Checks of panels, what they show with, what can be moved on them, and budgets. */
final class PanelChecks {
    private final Parts parts;
    private final Report report;
    private final KindChecks kinds;
    private final Map<String, Block> controlNames = new LinkedHashMap<>();
    private final Map<String, Map<Integer, Block>> controlNumbers = new LinkedHashMap<>();

    PanelChecks(Parts parts, Report report) {
        this.parts = parts;
        this.report = report;
        this.kinds = new KindChecks(parts, report);
    }

    void check() {
        Block budgets = parts.root().blockOrEmpty(PanelKeys.BUDGETS);
        for (Block kind : budgets.blocks(PanelKeys.KIND_LIMITS)) {
            PanelKeys.KIND.type().read(kind.nameAt(), "kinds", report);
        }
        parts.root().blocks(PanelKeys.PANELS).forEach(this::panel);
    }

    private void panel(Block panel) {
        Optional<Tree.Scalar> node = panel.written(PanelKeys.NODE);
        if (node.isPresent() && parts.node(node.get().text()).isEmpty()) {
            report.unknownName(node.get(), "node", "a node", parts.nodeNames());
        }
        panel.blocks(PanelKeys.INDICATORS).forEach(this::indicator);
        for (Block control : panel.blocks(PanelKeys.CONTROLS)) {
            control(control, node.map(Tree.Scalar::text).orElse(""));
        }
    }

    private void indicator(Block indicator) {
        List<Tree.Scalar> shows = indicator.written(PanelKeys.SHOWS).orElse(List.of());
        for (Tree.Scalar signal : shows) {
            if (parts.signal(signal.text()).isEmpty()) {
                unknownSignal(signal);
            }
        }
        twice(shows);
        kinds.indicator(indicator, shows);
        Optional<Kind> kind = indicator.written(PanelKeys.KIND);
        if (kind.isPresent() && Indicator.showsOne(kind.get()) && shows.size() > 1) {
            String expected = "one signal, since it has one pointer, level or flag";
            report.at(indicator.at(PanelKeys.SHOWS), "shows", PitCode.CONFLICT, expected, "give each signal its own");
        }
        if (kind.isPresent() && kind.get().refreshes()) {
            refreshed(indicator);
        }
    }

    private void unknownSignal(Tree.Scalar signal) {
        if (signal.text().contains("#")) {
            String expected = "a signal; # is the address only on a panel whose node has addresses:";
            report.at(signal, "shows", PitCode.UNKNOWN_NAME, expected, "write the signal's whole name");
        } else if (parts.signalNames().stream()
                .anyMatch(name -> name.matches(Pattern.quote(signal.text()) + " \\d+"))) {
            String fix =
                    "write \"" + signal.text() + " #\" in quotes: without them YAML takes # for the start of a comment";
            String expected = "a signal: " + Report.oneOf(parts.signalNames());
            report.at(signal, "shows", PitCode.UNKNOWN_NAME, expected, fix);
        } else {
            report.unknownName(signal, "shows", "a signal", parts.signalNames());
        }
    }

    private void twice(List<Tree.Scalar> shows) {
        Map<String, Tree.Scalar> seen = new LinkedHashMap<>();
        for (Tree.Scalar signal : shows) {
            if (seen.putIfAbsent(signal.text(), signal) != null) {
                report.at(signal, "shows", PitCode.DUPLICATE_NAME, "each signal once", "delete one of the two");
            }
        }
    }

    private void refreshed(Block indicator) {
        Optional<Long> every = indicator.written(PanelKeys.REFRESH_EVERY);
        Optional<Long> takes = indicator.written(PanelKeys.REFRESH_TAKES);
        if (every.isPresent() && takes.isPresent() && every.get() < takes.get()) {
            String expected = "at most refresh-every, so that it is over before the next ("
                    + indicator.at(PanelKeys.REFRESH_EVERY).line(indicator.at(PanelKeys.REFRESH_TAKES)) + ")";
            report.at(indicator.at(PanelKeys.REFRESH_TAKES), "refresh-takes", PitCode.OUT_OF_RANGE, expected, null);
        }
    }

    private void control(Block control, String node) {
        Block namesake = controlNames.putIfAbsent(control.name(), control);
        if (namesake != null) {
            String fix = namesake.nameAt().equals(control.nameAt())
                    ? "write # into its name, which becomes the address: \"" + control.name() + " #\""
                    : "give one of them another name; the first is in "
                            + namesake.nameAt().line(control.nameAt());
            String expected = "a name that no other control of the pit has";
            report.at(control.nameAt(), control.name(), PitCode.DUPLICATE_NAME, expected, fix);
        }
        Optional<Integer> number = control.written(PanelKeys.CONTROL_NUMBER);
        Map<Integer, Block> taken = controlNumbers.computeIfAbsent(node, n -> new LinkedHashMap<>());
        Block earlier = number.isEmpty() ? null : taken.putIfAbsent(number.get(), control);
        if (earlier != null) {
            String expected = "a number that no other control on node " + node + " has";
            String fix = "give one of them another number; " + earlier.name() + " in "
                    + earlier.at(PanelKeys.CONTROL_NUMBER).line(control.at(PanelKeys.CONTROL_NUMBER)) + " has it too";
            report.at(control.at(PanelKeys.CONTROL_NUMBER), "number", PitCode.NUMBER_CLASH, expected, fix);
        }
        kinds.control(control);
    }
}
