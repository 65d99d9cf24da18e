package dropline.bus.run;

/** A segment does more in a simulated second than any pair could carry: the run would never come to its end. */
public final class RunawayException extends RuntimeException {
    private static final long serialVersionUID = 1;

    RunawayException(String segment, long atNanos, long mostSteps) {
        super("segment " + segment + " takes more than " + mostSteps + " steps in a simulated second, after "
                + atNanos / 1_000_000 + " ms");
    }
}
