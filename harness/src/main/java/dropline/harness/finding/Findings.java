package dropline.harness.finding;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.finding.Finding.Subject;
import java.util.ArrayList;
import java.util.List;

/** Names what is wrong, from the pit and the evidence alone. */
public final class Findings {
    private Findings() {}

    /**
     * What is wrong, segment by segment, what explains most first; empty where nothing is.
     *
     * @param layout the pit's
     * @param evidence of ended runs of the pit's segments
     */
    public static List<Finding> of(Pit pit, Layout layout, List<SegmentEvidence> evidence) {
        List<Finding> findings = new ArrayList<>();
        for (SegmentEvidence each : evidence) {
            Scene scene = new Scene(pit, layout, each);
            if (each.tiers() == Tiers.ALL) {
                new BusRules(scene).judge();
                new PartRules(scene).judge();
            } else {
                new ControllerRules(scene).judge();
            }
            for (Finding finding : scene.findings()) {
                if (finding.subject() != Subject.HOST
                        || findings.stream().noneMatch(known -> known.subject() == Subject.HOST)) {
                    findings.add(finding);
                }
            }
        }
        return findings;
    }
}
