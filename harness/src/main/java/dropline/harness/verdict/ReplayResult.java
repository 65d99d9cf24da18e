package dropline.harness.verdict;

import dropline.harness.finding.Finding;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything a replay came to.
 *
 * @param version of this document, {@link #VERSION}
 * @param droplineVersion the program's
 * @param pit the pit's name
 * @param recording what was replayed
 * @param seed the run's seed
 * @param digest of the trace, 16 hexadecimal digits
 * @param faults what the run was given to go wrong, in the order given; empty for a healthy run
 * @param outcome all panels and controls together: {@link Outcome#and}, save that those never used do not count
 * @param sentences the verdict, in plain sentences; the first is the headline
 * @param findings what the trace says is wrong, what explains most first; empty where nothing is
 * @param advice what to do about it, what matters most first; empty when nothing needs doing
 * @param caveats what the figures rest on
 * @param budgetSources where the limits come from, each once
 * @param updateLatency over all panels
 * @param panels by margin, worst first; those never used last
 * @param controls likewise
 * @param segments in the order of the pit file
 * @param singleFailures the same with each node dead in turn; empty when not asked for
 * @param restsOn where the pit's figures come from; null where nobody knows
 */
public record ReplayResult(
        int version,
        String droplineVersion,
        String pit,
        Recording recording,
        long seed,
        String digest,
        List<InjectedFault> faults,
        Outcome outcome,
        List<String> sentences,
        List<Finding> findings,
        List<Advice> advice,
        List<String> caveats,
        List<String> budgetSources,
        Latency updateLatency,
        List<PanelResult> panels,
        List<ControlResult> controls,
        List<SegmentResult> segments,
        List<SingleFailure> singleFailures,
        @Nullable RestsOn restsOn) {

    /** The version of this document. A new figure leaves it; one that goes or changes its meaning raises it. */
    public static final int VERSION = 1;

    public ReplayResult {
        faults = List.copyOf(faults);
        sentences = List.copyOf(sentences);
        findings = List.copyOf(findings);
        advice = List.copyOf(advice);
        caveats = List.copyOf(caveats);
        budgetSources = List.copyOf(budgetSources);
        panels = List.copyOf(panels);
        controls = List.copyOf(controls);
        segments = List.copyOf(segments);
        singleFailures = List.copyOf(singleFailures);
        if (sentences.isEmpty()) {
            throw new IllegalArgumentException("a result must say something: sentences=0");
        }
    }

    /** The same with where the pit's figures come from. */
    public ReplayResult restingOn(RestsOn figures) {
        return new ReplayResult(
                version,
                droplineVersion,
                pit,
                recording,
                seed,
                digest,
                faults,
                outcome,
                sentences,
                findings,
                advice,
                caveats,
                budgetSources,
                updateLatency,
                panels,
                controls,
                segments,
                singleFailures,
                figures);
    }

    /** The first sentence. */
    public String headline() {
        return sentences.get(0);
    }
}
