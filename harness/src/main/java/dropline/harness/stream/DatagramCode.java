package dropline.harness.stream;

/** What can be wrong with a datagram file, beside its text and its keys as such. */
enum DatagramCode {
    UNKNOWN_PART("no such part"),
    MISPLACED_PART("a part that cannot stand here");

    private final String words;

    DatagramCode(String words) {
        this.words = words;
    }

    /** What it means, in a few words. */
    String words() {
        return words;
    }
}
