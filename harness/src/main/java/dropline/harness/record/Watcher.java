package dropline.harness.record;

/** Hears of a recording while it runs, always from the recorder's own thread. */
public interface Watcher {
    /** One of the first messages, as a person may be shown it. */
    void arrived(String message);

    /** Something a person should know. */
    void said(String sentence);

    /** Called once a second. */
    void second(Tally tally);
}
