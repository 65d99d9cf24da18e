package dropline.bus.avr.core;

/** What a program does to its own memory. */
public interface Programming {
    /** Nothing: SPM stops the run. */
    Programming NONE = new Programming() {
        @Override
        public void store(int address, int value, long cycle) {
            throw new StoppedException("SPM is not modelled here", address, cycle);
        }

        @Override
        public int read(int byteAddress, long cycle) {
            throw new StoppedException("nobody asks this one", byteAddress, cycle);
        }
    };

    /** SPM. */
    void store(int address, int value, long cycle);

    /** LPM and ELPM. */
    int read(int byteAddress, long cycle);
}
