package dropline.harness.verdict;

import java.util.ArrayList;
import java.util.List;

/** The verdict in plain sentences, the headline first. */
final class Sentences {
    private static final int MOST_NAMES = 4;

    private final List<PanelResult> panels;
    private final List<ControlResult> controls;
    private final List<SegmentResult> segments;
    private final List<SingleFailure> failures;

    /** Panels and controls worst first. */
    Sentences(
            List<PanelResult> panels,
            List<ControlResult> controls,
            List<SegmentResult> segments,
            List<SingleFailure> failures) {
        this.panels = panels;
        this.controls = controls;
        this.segments = segments;
        this.failures = failures;
    }

    List<String> all(Latency latency) {
        List<String> sentences = new ArrayList<>();
        sentences.add(headline(latency));
        List<PanelResult> failing = panelsThat(Outcome.FAIL);
        for (PanelResult panel : failing.subList(0, Math.min(failing.size(), MOST_NAMES))) {
            sentences.add(missed(panel));
        }
        List<PanelResult> idle = panelsThat(Outcome.UNDECIDED);
        if (!idle.isEmpty()) {
            sentences.add("Nothing can be said about " + named(idle) + ": nothing changed there in this recording.");
        }
        controls(sentences);
        spurious(sentences);
        restarts(sentences);
        for (SegmentResult segment : segments) {
            sentences.add(segment(segment));
        }
        singleFailures(sentences);
        return sentences;
    }

    private String headline(Latency latency) {
        int failing = panelsThat(Outcome.FAIL).size();
        int judged = panels.size() - panelsThat(Outcome.UNDECIDED).size();
        if (panels.isEmpty()) {
            return "No panel is judged: of what panels show nothing is known here.";
        }
        if (judged == 0) {
            return "No panel can be judged: nothing that a panel shows changed in this recording.";
        }
        String overall = latency.count() == 0 ? "no change was ever shown" : Words.latency(latency);
        if (failing == 0) {
            return capital(overall) + "; " + limits() + ". " + allKeep(judged);
        }
        return failing + " of " + Words.count(judged, "panel") + (failing == 1 ? " misses its" : " miss their")
                + " limit. " + "Over all panels " + overall + "; " + limits() + ".";
    }

    private static String allKeep(int panels) {
        if (panels == 1) {
            return "The one panel that was used keeps within it.";
        }
        return (panels == 2 ? "Both panels" : "All " + panels + " panels")
                + " that were used keep within their limits.";
    }

    private String limits() {
        long least = Long.MAX_VALUE;
        long most = 0;
        for (PanelResult panel : panels) {
            if (panel.verdict().outcome() != Outcome.UNDECIDED) {
                least = Math.min(least, panel.budgetNanos());
                most = Math.max(most, panel.budgetNanos());
            }
        }
        return least == most
                ? "your limit is " + Words.time(least)
                : "your limits are " + Words.time(least) + " to " + Words.time(most);
    }

    private static String missed(PanelResult panel) {
        String limit = "; its limit is " + Words.time(panel.budgetNanos()) + ".";
        if (panel.updateLatency().count() == 0) {
            return panel.panel() + " never showed a change: the oldest had waited for "
                    + Words.time(panel.verdict().valueNanos()) + " at the end" + limit;
        }
        String waiting = panel.verdict().valueNanos() > panel.updateLatency().maxNanos()
                ? ", and one not shown by the end had waited for "
                        + Words.time(panel.verdict().valueNanos())
                : "";
        return panel.panel() + ": " + Words.latency(panel.updateLatency()) + waiting + limit;
    }

    private void controls(List<String> sentences) {
        List<ControlResult> judged = new ArrayList<>(controls);
        judged.removeIf(control -> control.verdict().outcome() == Outcome.UNDECIDED);
        if (judged.isEmpty()) {
            return;
        }
        List<ControlResult> failing = new ArrayList<>(judged);
        failing.removeIf(control -> control.verdict().outcome() != Outcome.FAIL);
        ControlResult worst = judged.get(0);
        if (failing.isEmpty()) {
            long slowest = judged.stream()
                    .mapToLong(control -> control.controlLatency().maxNanos())
                    .max()
                    .orElse(0);
            sentences.add("The host hears of every moved control within " + Words.time(slowest)
                    + "; the closest to its limit is " + worst.control() + " with "
                    + Words.time(worst.verdict().valueNanos())
                    + " of " + Words.time(worst.budgetNanos()) + ".");
        } else {
            List<String> names = failing.stream().map(ControlResult::control).toList();
            sentences.add(failing.size() + " of " + Words.count(judged.size(), "moved control")
                    + (failing.size() == 1 ? " misses its" : " miss their") + " limit: "
                    + Words.names(names, MOST_NAMES)
                    + ".");
        }
        List<ControlResult> losing = new ArrayList<>(judged);
        losing.removeIf(control -> control.lostSteps() == 0);
        for (ControlResult control : losing.subList(0, Math.min(losing.size(), MOST_NAMES))) {
            sentences.add(Words.count(control.lostSteps(), "step") + " of " + control.moves() + " of "
                    + control.control() + " never reached the host.");
        }
    }

    private void spurious(List<String> sentences) {
        List<ControlResult> restless = new ArrayList<>(controls);
        restless.removeIf(control -> control.spurious() == 0);
        for (ControlResult control : restless.subList(0, Math.min(restless.size(), MOST_NAMES))) {
            sentences.add("Node " + control.node() + " noticed " + Words.count(control.spurious(), "change") + " of "
                    + control.control() + " that nobody made.");
        }
    }

    /** What restarts did to panels: the slowest to show everything again, and those that never did. */
    private void restarts(List<String> sentences) {
        PanelResult slowest = null;
        List<String> stale = new ArrayList<>();
        for (PanelResult panel : panels) {
            if (slowest == null || panel.recoveryNanos() > slowest.recoveryNanos()) {
                slowest = panel;
            }
            if (panel.staleNanos() > 0) {
                stale.add(panel.panel());
            }
        }
        if (!stale.isEmpty()) {
            sentences.add("After a restart of their node not shown again by the end: " + Words.names(stale, MOST_NAMES)
                    + ".");
        }
        if (slowest != null && slowest.recoveryNanos() > 0) {
            sentences.add("After a restart of its node " + slowest.panel() + " took "
                    + Words.time(slowest.recoveryNanos()) + " to show everything again.");
        }
    }

    private static String segment(SegmentResult segment) {
        String use = "Segment " + segment.segment() + ": a frame is on the wire " + Words.share(segment.utilisation())
                + " of the time";
        if (segment.pollCycle().count() == 0) {
            return use + ".";
        }
        return use + "; a round of polls takes "
                + Words.time(segment.pollCycle().meanNanos()) + " on average and "
                + Words.time(segment.pollCycle().maxNanos()) + " at most.";
    }

    private void singleFailures(List<String> sentences) {
        if (failures.isEmpty()) {
            return;
        }
        List<String> harmful = new ArrayList<>();
        for (SingleFailure failure : failures) {
            for (SingleFailure.PanelThen panel : failure.panels()) {
                if (panel.verdict().outcome() == Outcome.FAIL
                        && panel.healthyVerdict().outcome() != Outcome.FAIL) {
                    harmful.add(failure.node());
                    break;
                }
            }
        }
        if (harmful.isEmpty()) {
            sentences.add("With any one node dead, every panel on the other nodes keeps the verdict it has now.");
        } else {
            sentences.add("Panels on other nodes miss their limit when one of these dies: "
                    + Words.names(harmful, MOST_NAMES) + ".");
        }
    }

    private List<PanelResult> panelsThat(Outcome outcome) {
        return panels.stream()
                .filter(panel -> panel.verdict().outcome() == outcome)
                .toList();
    }

    private static String named(List<PanelResult> panels) {
        return Words.names(panels.stream().map(PanelResult::panel).toList(), MOST_NAMES);
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
