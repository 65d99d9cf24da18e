package dropline.harness.size;

import dropline.bus.pit.Pit;
import dropline.bus.rule.Ruling;
import java.util.List;

/** Rules, beside time, that a segment with more panels must keep: of the copper, of the supplies. */
public interface Limit {
    /** What it looks at, in a word. */
    String name();

    /**
     * What those that a builder must keep come to for a pit whose segment has grown.
     *
     * @param pit the grown pit
     * @param segment index of the segment that grew
     */
    List<Ruling> of(Pit pit, int segment);
}
