package dropline.harness.stream;

/** Takes states as they are read. */
@FunctionalInterface
public interface StateSink {
    /** The state is the reader's and changes afterwards. */
    void take(State state);
}
