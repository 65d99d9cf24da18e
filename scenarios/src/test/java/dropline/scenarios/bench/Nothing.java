package dropline.scenarios.bench;

/** A program that does nothing, so that what Java itself takes to start is known. */
final class Nothing {
    private Nothing() {}

    /** Does nothing. */
    public static void main(String[] arguments) {}
}
