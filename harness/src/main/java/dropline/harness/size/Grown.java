package dropline.harness.size;

import dropline.bus.pit.Pit;
import dropline.harness.replay.Source;

/**
 * A pit with further panels on one segment.
 *
 * @param pit the pit with them
 * @param segment index of the segment that grew
 * @param added how many panels were added
 * @param mirror moves what was added as what it is a copy of
 */
record Grown(Pit pit, int segment, int added, Mirror mirror) {

    /** As a candidate; {@code original} opens what is played as the pit sees it from which this one grew. */
    Candidate candidate(Source.Opening original, long seed, int dead) {
        return new Candidate(pit, segment, () -> mirror.over(original.open()), seed, dead);
    }
}
