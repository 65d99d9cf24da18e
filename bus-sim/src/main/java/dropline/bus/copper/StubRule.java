package dropline.bus.copper;

/**
 * How long a piece of cable may be that hangs off the line without a terminator. Three published rules for the same
 * physics; ours is the first, the strictest of them at the edges of common transceivers.
 */
public enum StubRule {
    /**
     * A tenth of the edge, one way, at 0.78 of the speed of light (TI SN65HVD10/11/12 data sheet, table 10-1). TI's
     * prose speaks of the way there and back; its tables are made with the way there.
     */
    TENTH_OF_EDGE {
        @Override
        public double metres(double edgeSeconds) {
            return 0.1 * edgeSeconds * VELOCITY * METRES_A_SECOND;
        }
    },
    /**
     * A third of the critical length, at which the way there and back, 10 ns a metre, takes as long as the edge (CiA
     * 301 V4.2.0, as given by the ECSS glossary).
     */
    CAN_OPEN {
        @Override
        public double metres(double edgeSeconds) {
            return edgeSeconds / 10e-9 / 3;
        }
    },
    /** 20 m, whatever the edge (MODBUS over serial line V1.02, 3.4.3). */
    MODBUS {
        @Override
        public double metres(double edgeSeconds) {
            return 20;
        }
    };

    static final double VELOCITY = 0.78;
    static final double METRES_A_SECOND = 299_792_458;

    /**
     * The longest piece, m.
     *
     * @param edgeSeconds shortest rise or fall time of any driver on the pair, s
     */
    public abstract double metres(double edgeSeconds);

    /** What each of the branches of a passive tap of so many ways may be by Modbus: 40 m shared (the same, 3.4.3). */
    public static double modbusTapMetres(int ways) {
        return 40.0 / ways;
    }
}
