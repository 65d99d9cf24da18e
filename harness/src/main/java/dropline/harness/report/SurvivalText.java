package dropline.harness.report;

import dropline.harness.survive.FaultOutcome;
import dropline.harness.survive.PanelOutcome;
import dropline.harness.survive.PanelOutcome.State;
import dropline.harness.survive.Survival;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a pit survives, as plain text: sentences, what never recovers first, then a table by kinds of fault. */
public final class SurvivalText {
    private static final int MOST_NAMED = 20;
    private static final int MOST_PANELS = 3;

    private final Survival survival;
    private final StringBuilder text = new StringBuilder();
    private final Paragraphs paragraphs = new Paragraphs(text);

    private SurvivalText(Survival survival) {
        this.survival = survival;
    }

    /** The whole text, ending with an end of line. */
    public static String of(Survival survival) {
        return new SurvivalText(survival).whole();
    }

    private String whole() {
        List<FaultOutcome> never = those(State.NEVER);
        headline(never);
        never(never);
        slowest();
        untouched();
        table();
        foot();
        return text.toString();
    }

    private List<FaultOutcome> those(State state) {
        return survival.faults().stream()
                .filter(fault -> fault.state() == state)
                .toList();
    }

    private void headline(List<FaultOutcome> never) {
        String all = Figures.plural(survival.faults().size(), "single fault");
        if (survival.faults().isEmpty()) {
            paragraphs.add("", "PASS. There is nothing in this pit that these kinds of fault could strike.");
        } else if (never.isEmpty()) {
            paragraphs.add("", "PASS. The pit recovers from every one of " + all + ".");
        } else {
            paragraphs.add(
                    "",
                    "FAIL. After " + Figures.count(never.size()) + " of " + all
                            + " something never recovers within the " + Figures.duration(leftNanos())
                            + " that are left of the recording.");
        }
        paragraphs.add(
                "",
                "Each fault was injected alone, at " + Figures.instant(survival.atNanos()) + ", for "
                        + Figures.duration(survival.forNanos())
                        + " or once, with its usual amount and rate. A panel counts as late beyond its limit, or beyond"
                        + " five quarters of what it takes without a fault where that is longer.");
    }

    private long leftNanos() {
        return survival.recording().durationNanos() - survival.atNanos() - survival.forNanos();
    }

    private void never(List<FaultOutcome> never) {
        if (never.isEmpty()) {
            return;
        }
        text.append("\nNever recovers\n");
        List<String> lines = new ArrayList<>();
        byKind(never).forEach((kind, faults) -> {
            List<FaultOutcome> struck = byKind(survival.faults()).getOrDefault(kind, List.of());
            List<String> lacks =
                    faults.stream().map(SurvivalText::lackAlone).distinct().toList();
            if (faults.size() > 1 && faults.size() == struck.size() && lacks.size() == 1) {
                lines.add(kind + ", on every one of the " + Figures.count(faults.size()) + " it can strike: "
                        + lacks.get(0) + ".");
            } else {
                faults.forEach(fault -> lines.add(name(fault) + ": " + lacks(fault) + "."));
            }
        });
        lines.subList(0, Math.min(lines.size(), MOST_NAMED)).forEach(line -> paragraphs.add("  - ", line));
        if (lines.size() > MOST_NAMED) {
            paragraphs.add(
                    "  - ",
                    "and " + Figures.count(lines.size() - MOST_NAMED) + " more; --json holds them all, --kinds chooses"
                            + " some.");
        }
    }

    /** What is wrong, without the panels. */
    private static String lackAlone(FaultOutcome fault) {
        return fault.touched().stream()
                .filter(panel -> panel.state() == State.NEVER)
                .map(PanelOutcome::lack)
                .distinct()
                .collect(Collectors.joining("; "));
    }

    /** What is wrong with which panels: those with the same lack together. */
    private static String lacks(FaultOutcome fault) {
        Map<String, List<String>> byLack = new LinkedHashMap<>();
        for (PanelOutcome panel : fault.touched()) {
            if (panel.state() == State.NEVER) {
                byLack.computeIfAbsent(panel.lack(), lack -> new ArrayList<>()).add(panel.panel());
            }
        }
        List<String> parts = new ArrayList<>();
        byLack.forEach((lack, panels) -> parts.add(lack + " on " + names(panels)));
        return String.join("; ", parts);
    }

    private static String names(List<String> names) {
        return names.size() <= MOST_PANELS
                ? String.join(", ", names)
                : String.join(", ", names.subList(0, MOST_PANELS)) + " and " + (names.size() - MOST_PANELS) + " more";
    }

    private static String name(FaultOutcome fault) {
        String other = fault.fault().other();
        return fault.fault().kind()
                + (fault.target().isEmpty() ? "" : " " + fault.target())
                + (other.isEmpty() ? "" : " as " + other);
    }

    private void slowest() {
        Optional<FaultOutcome> slowest = those(State.RECOVERED).stream()
                .max(Comparator.comparingLong(fault -> fault.touched().get(0).recoveryNanos()));
        slowest.ifPresent(fault -> {
            PanelOutcome panel = fault.touched().get(0);
            paragraphs.add(
                    "",
                    "Of what recovers, " + name(fault) + " takes longest: the last late change on " + panel.panel()
                            + " is shown " + Figures.time(panel.recoveryNanos()) + " after the fault is over.");
        });
    }

    private void untouched() {
        int untouched = those(State.UNTOUCHED).size();
        if (untouched > 0) {
            paragraphs.add(
                    "",
                    Figures.plural(untouched, "fault") + (untouched == 1 ? " makes" : " make")
                            + " no panel late at all in this recording.");
        }
    }

    private void table() {
        TextTable table = new TextTable(
                "kind of fault",
                ">struck",
                ">never",
                ">late",
                "worst struck",
                ">panels",
                "worst panel",
                ">worst latency",
                ">recovery");
        byKind(survival.faults()).forEach((kind, faults) -> row(table, kind, faults));
        if (!table.isEmpty()) {
            text.append("\nBy kind of fault: the struck one that fares worst, and its worst panel\n");
            text.append(table.text());
        }
    }

    private static Map<String, List<FaultOutcome>> byKind(List<FaultOutcome> faults) {
        Map<String, List<FaultOutcome>> byKind = new LinkedHashMap<>();
        for (FaultOutcome fault : faults) {
            byKind.computeIfAbsent(fault.fault().kind(), kind -> new ArrayList<>())
                    .add(fault);
        }
        return byKind;
    }

    private static void row(TextTable table, String kind, List<FaultOutcome> faults) {
        FaultOutcome worst = worst(faults);
        List<PanelOutcome> touched = worst.touched();
        boolean any = !touched.isEmpty();
        table.row(
                kind,
                Figures.count(faults.size()),
                Figures.count(count(faults, State.NEVER)),
                Figures.count(count(faults, State.RECOVERED)),
                any ? (worst.target().isEmpty() ? "the host" : worst.target()) : "-",
                Figures.count(touched.size()),
                any ? touched.get(0).panel() : "-",
                any ? Figures.time(touched.get(0).worstNanos()) : "-",
                any ? recovery(touched.get(0)) : "-");
    }

    private static long count(List<FaultOutcome> faults, State state) {
        return faults.stream().filter(fault -> fault.state() == state).count();
    }

    /** The first of those that nobody fares worse than. */
    private static FaultOutcome worst(List<FaultOutcome> faults) {
        FaultOutcome worst = faults.get(0);
        for (FaultOutcome fault : faults) {
            if (worse(fault, worst)) {
                worst = fault;
            }
        }
        return worst;
    }

    private static boolean worse(FaultOutcome one, FaultOutcome than) {
        List<PanelOutcome> ones = one.touched();
        List<PanelOutcome> others = than.touched();
        if (ones.isEmpty() || others.isEmpty()) {
            return others.isEmpty() && !ones.isEmpty();
        }
        int most = Comparator.comparing(PanelOutcome::state)
                .thenComparingLong(PanelOutcome::recoveryNanos)
                .thenComparingLong(PanelOutcome::worstNanos)
                .compare(ones.get(0), others.get(0));
        return most > 0 || (most == 0 && ones.size() > others.size());
    }

    private static String recovery(PanelOutcome panel) {
        if (panel.state() == State.NEVER) {
            return "NEVER";
        }
        return panel.recoveryNanos() == 0 ? "at once" : Figures.time(panel.recoveryNanos());
    }

    private void foot() {
        text.append('\n');
        paragraphs.add(
                "",
                "All of this is simulated. Before you try any of it on a real pit: fuse each supply branch close to its"
                        + " source; never tie a board to USB and to the external supply at once "
                        + "without isolation; power"
                        + " the external supplies before the computer; disconnect before changing wiring; keep hands"
                        + " clear of driven mechanisms; leave mains work to licensed people and to your local codes.");
        text.append('\n');
        paragraphs.add(
                "",
                "Pit " + survival.pit() + ", " + survival.recording().name() + ", "
                        + Figures.duration(survival.recording().durationNanos()) + ", seed " + survival.seed() + ".");
    }
}
