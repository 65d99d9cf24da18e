package dropline.bus.copper;

/**
 * What resistors that hold the pair at rest take of what a driver can drive. The two published answers cannot both be
 * right, and are never mixed.
 */
public enum BiasCount {
    /** Up to 20 of the 32 unit loads (TI SLLA272D, bus loading): 96 devices of an eighth are left. */
    TWENTY_UNIT_LOADS {
        @Override
        public int devices(double unitLoad) {
            return (int) Math.floor((Loads.MOST_UNIT_LOADS - UNIT_LOADS) / unitLoad + Loads.ROUNDING);
        }
    },
    /** Four devices, whatever their load (MODBUS over serial line V1.02, 3.4.6). */
    FOUR_DEVICES {
        @Override
        public int devices(double unitLoad) {
            return (int) Math.floor(Loads.MOST_UNIT_LOADS / unitLoad + Loads.ROUNDING) - DEVICES;
        }
    };

    static final int UNIT_LOADS = 20;
    static final int DEVICES = 4;

    /** How many devices of this load, the controller's among them, a biased pair carries. */
    public abstract int devices(double unitLoad);
}
