package dropline.bus.avr.core;

/** What WDR comes to. */
public interface Watchdog {
    /** Nothing. */
    Watchdog NONE = new Watchdog() {
        @Override
        public void restart(long cycle) {
            // nobody watches
        }

        @Override
        public void passedOver(long sinceCycle, long cycles) {
            // nobody watches
        }
    };

    /** WDR. */
    void restart(long cycle);

    /**
     * What was done since a cycle was done again and again for so many cycles more.
     *
     * @param sinceCycle begin of the round that was repeated
     * @param cycles how long it was repeated
     */
    void passedOver(long sinceCycle, long cycles);
}
