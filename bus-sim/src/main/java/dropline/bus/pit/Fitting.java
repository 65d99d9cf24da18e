package dropline.bus.pit;

/**
 * What one needs to know of a node's hardware to wire it. Nothing of it changes a run.
 *
 * @param board what board it is; empty where nobody said
 * @param supply the supply, or the run of wire, that feeds it: a point of {@link Pit#supplies()} where those are
 *     described, else what people call it; empty where nobody said
 * @param connector how it is plugged in; empty where nobody said
 * @param firmware what runs on it; empty where nobody said
 * @param passport the file of its measured timing; empty where there is none
 * @param draws what board and transceiver draw from the supply
 * @param pairLoad how its transceiver loads the pair
 * @param inlet how the board makes its voltage of its supply's
 * @param reach how far it is from its neighbour and from the cable
 */
public record Fitting(
        String board,
        String supply,
        String connector,
        String firmware,
        String passport,
        Draw draws,
        PairLoad pairLoad,
        Inlet inlet,
        Reach reach) {
    /** Nothing said, on a usual module. */
    public static final Fitting PLAIN = new Fitting("", "", "", "", "", Draw.UNKNOWN, PairLoad.PLAIN, Inlet.PLAIN);

    /** One that reaches as far as its segment says. */
    public Fitting(
            String board,
            String supply,
            String connector,
            String firmware,
            String passport,
            Draw draws,
            PairLoad pairLoad,
            Inlet inlet) {
        this(board, supply, connector, firmware, passport, draws, pairLoad, inlet, Reach.AS_THE_SEGMENT);
    }

    /**
     * Lengths of cable, in metres; NaN where the segment's own count.
     *
     * @param afterMetres along the cable from the stop before it
     * @param stubMetres from the cable to the board
     */
    public record Reach(double afterMetres, double stubMetres) {
        /** As its segment's {@link Wire} says. */
        public static final Reach AS_THE_SEGMENT = new Reach(Double.NaN, Double.NaN);

        public Reach {
            if (afterMetres < 0 || stubMetres < 0) {
                throw new IllegalArgumentException(
                        "lengths must not be negative: after=" + afterMetres + " stub=" + stubMetres);
            }
        }
    }

    /**
     * A transceiver module as the pair meets it.
     *
     * @param name for people; empty where nobody said
     * @param unitLoad what it loads the pair with: 1 is 12 kilohm (TIA/EIA-485-A), an eighth 96 kilohm
     * @param terminatorOhms its own terminator; 0 for none
     * @param biasOhms each of its own bias resistors; 0 for none
     * @param edgeNanos shortest rise or fall time of its driver, ns; 0 where nobody said
     */
    public record PairLoad(String name, double unitLoad, int terminatorOhms, int biasOhms, long edgeNanos) {
        /** One unit load, and nothing else on the pair. */
        public static final PairLoad PLAIN = new PairLoad("", 1, 0, 0);

        public PairLoad {
            if (!(unitLoad > 0) || terminatorOhms < 0 || biasOhms < 0 || edgeNanos < 0) {
                throw new IllegalArgumentException("a load must be above 0, all else not below: unitLoad=" + unitLoad
                        + " terminator=" + terminatorOhms + " bias=" + biasOhms + " edgeNanos=" + edgeNanos);
            }
        }

        /** One of whose edge nothing is said. */
        public PairLoad(String name, double unitLoad, int terminatorOhms, int biasOhms) {
            this(name, unitLoad, terminatorOhms, biasOhms, 0);
        }
    }

    /** One of whose converter nothing is said. */
    public Fitting(
            String board,
            String supply,
            String connector,
            String firmware,
            String passport,
            Draw draws,
            PairLoad pairLoad) {
        this(board, supply, connector, firmware, passport, draws, pairLoad, Inlet.PLAIN);
    }
}
