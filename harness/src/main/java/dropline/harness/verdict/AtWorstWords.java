package dropline.harness.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Says what the bounds beside the measured latencies are, and whose is missing for what reason. */
final class AtWorstWords {
    private static final int MOST_REASONS = 4;
    private static final int MOST_NAMES = 3;

    private AtWorstWords() {}

    static List<String> caveats(List<PanelResult> panels) {
        Map<String, List<String>> without = new LinkedHashMap<>();
        for (PanelResult panel : panels) {
            if (!panel.atWorst().isFinite()) {
                without.computeIfAbsent(panel.atWorst().why(), any -> new ArrayList<>())
                        .add(panel.panel());
            }
        }
        List<String> caveats = new ArrayList<>();
        caveats.add("\"At worst\" is no figure of this run: nothing takes longer while nothing is broken, going by the"
                + " maxima that the pit file states.");
        int said = 0;
        int unsaid = 0;
        for (Map.Entry<String, List<String>> reason : without.entrySet()) {
            if (said++ < MOST_REASONS) {
                caveats.add("No such bound for " + Words.names(reason.getValue(), MOST_NAMES) + ": " + reason.getKey()
                        + ".");
            } else {
                unsaid += reason.getValue().size();
            }
        }
        if (unsaid > 0) {
            caveats.add("Nor for " + Words.count(unsaid, "further panel") + "; the JSON document says why.");
        }
        return caveats;
    }
}
