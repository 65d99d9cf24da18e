package dropline.bus.avr.core;

/**
 * A program did what cannot go on: it used what is not modelled, or what no program should. Nothing is guessed in its
 * place.
 */
public final class StoppedException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int byteAddress;
    private final long cycle;

    /**
     * @param what happened, in words
     * @param byteAddress of the instruction
     */
    public StoppedException(String what, int byteAddress, long cycle) {
        super(what);
        this.byteAddress = byteAddress;
        this.cycle = cycle;
    }

    /** Where in the program, in bytes as listings count. */
    public int byteAddress() {
        return byteAddress;
    }

    /** When, in cycles since power came. */
    public long cycle() {
        return cycle;
    }
}
