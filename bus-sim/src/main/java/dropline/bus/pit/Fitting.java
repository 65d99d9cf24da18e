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
 */
public record Fitting(
        String board,
        String supply,
        String connector,
        String firmware,
        String passport,
        Draw draws,
        PairLoad pairLoad,
        Inlet inlet) {
    /** Nothing said, on a usual module. */
    public static final Fitting PLAIN = new Fitting("", "", "", "", "", Draw.UNKNOWN, PairLoad.PLAIN, Inlet.PLAIN);

    /**
     * A transceiver module as the pair meets it.
     *
     * @param name for people; empty where nobody said
     * @param unitLoad what it loads the pair with: 1 is 12 kilohm (TIA/EIA-485-A), an eighth 96 kilohm
     * @param terminatorOhms its own terminator; 0 for none
     * @param biasOhms each of its own bias resistors; 0 for none
     */
    public record PairLoad(String name, double unitLoad, int terminatorOhms, int biasOhms) {
        /** One unit load, and nothing else on the pair. */
        public static final PairLoad PLAIN = new PairLoad("", 1, 0, 0);

        public PairLoad {
            if (!(unitLoad > 0) || terminatorOhms < 0 || biasOhms < 0) {
                throw new IllegalArgumentException("a load must be above 0, resistors not below: unitLoad=" + unitLoad
                        + " terminator=" + terminatorOhms + " bias=" + biasOhms);
            }
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
