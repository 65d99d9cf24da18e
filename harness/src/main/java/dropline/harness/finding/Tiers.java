package dropline.harness.finding;

/** How much of a trace is looked at. */
public enum Tiers {
    /** Everything a simulated run tells. */
    ALL,
    /** Only what the controller of a real pit sees of its own frames and of the replies it took. */
    CONTROLLER,
    /** The same by the clock of a host far from the wire: when something came says nothing. */
    HOST
}
