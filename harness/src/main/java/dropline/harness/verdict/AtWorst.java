package dropline.harness.verdict;

import java.util.List;

/**
 * What a latency never exceeds while nothing is broken: a closed form over the pit's stated maxima, no figure of a run.
 *
 * @param nanos the bound, ns; -1 where there is none
 * @param parts what it is made of, in order of time; empty where there is none
 * @param why why there is none; empty where there is one
 */
public record AtWorst(long nanos, List<Part> parts, String why) {

    /** The longest that one stage can take, ns. */
    public record Part(String stage, long nanos) {}

    public AtWorst {
        parts = List.copyOf(parts);
    }

    /** Whether there is a bound. */
    public boolean isFinite() {
        return nanos >= 0;
    }
}
