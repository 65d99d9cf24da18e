package dropline.bus.avr.core;

/** Addresses in the data space behind which there is more than memory: the registers of a peripheral. */
public interface Registers {
    /**
     * What a read finds.
     *
     * @param cycle in which it is read
     */
    int read(int address, long cycle);

    /**
     * A byte is written.
     *
     * @param cycle at whose begin it counts
     */
    void write(int address, int value, long cycle);

    /** Whether ones written to it act and zeros do not: flags that are cleared so, pins that are toggled. */
    default boolean isByOnes(int address) {
        return false;
    }

    /**
     * SBI or CBI, which touch one bit alone.
     *
     * @param mask the bit
     */
    default void writeBit(int address, int mask, boolean isSet, long cycle) {
        if (isByOnes(address)) {
            write(address, isSet ? mask : 0, cycle);
        } else {
            int was = read(address, cycle - 1);
            write(address, isSet ? was | mask : was & ~mask, cycle);
        }
    }
}
