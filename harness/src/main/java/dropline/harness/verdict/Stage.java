package dropline.harness.verdict;

/** A part of the way from a change to the panel, in order. */
public enum Stage {
    HOST("host"),
    ADAPTER("adapter"),
    QUEUE("queue"),
    WIRE("wire"),
    NODE_WAIT("node wait"),
    DEVICE("device");

    private final String words;

    Stage(String words) {
        this.words = words;
    }

    /** Its name, for people. */
    public String words() {
        return words;
    }
}
