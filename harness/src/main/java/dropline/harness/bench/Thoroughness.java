package dropline.harness.bench;

/** How often things are tried. */
public enum Thoroughness {
    /** A first look. */
    QUICK(100, 3, 200),
    /** Before wiring. */
    FULL(1_000, 20, 10_000);

    final int gaps;
    final int probes;
    final int soak;

    Thoroughness(int gaps, int probes, int soak) {
        this.gaps = gaps;
        this.probes = probes;
        this.soak = soak;
    }
}
