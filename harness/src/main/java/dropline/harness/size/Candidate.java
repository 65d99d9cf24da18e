package dropline.harness.size;

import dropline.bus.pit.Pit;
import dropline.harness.replay.Source;

/**
 * A segment of a pit to be judged in one run, every node as its profile has it: a program is of one board at one
 * address, and would be asked of boards that nobody has built.
 *
 * @param pit the whole pit
 * @param segment index of the segment judged
 * @param opening opens what is played, as this very pit sees it
 * @param seed the run's
 * @param dead index into the segment's nodes of the one that is dead; {@link #HEALTHY} for none
 */
public record Candidate(Pit pit, int segment, Source.Opening opening, long seed, int dead) {
    /** In place of a dead node. */
    public static final int HEALTHY = -1;

    public Candidate {
        pit = pit.modelled();
    }
}
