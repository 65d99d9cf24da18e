package dropline.harness.bench;

/** How often things are tried. */
public enum Thoroughness {
    /** A first look. */
    QUICK(100, 3, 200, 20),
    /** Before wiring. */
    FULL(1_000, 20, 10_000, 200);

    final int gaps;
    final int probes;
    final int soak;
    final int moves;

    Thoroughness(int gaps, int probes, int soak, int moves) {
        this.gaps = gaps;
        this.probes = probes;
        this.soak = soak;
        this.moves = moves;
    }
}
