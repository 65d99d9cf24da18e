package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;
import dropline.protocol.CharacterFormat;
import org.jspecify.annotations.Nullable;

/** A USART, asynchronous (DS40002061, "USART0"). What it cannot be here stops the program. */
public final class Usart implements Registers, Served {
    private static final int RXC = 0x80;
    private static final int TXC = 0x40;
    private static final int UDRE = 0x20;
    private static final int FE = 0x10;
    private static final int DOR = 0x08;
    private static final int UPE = 0x04;
    private static final int U2X = 0x02;
    private static final int MPCM = 0x01;
    private static final int RXEN = 0x10;
    private static final int TXEN = 0x08;
    private static final int UCSZ2 = 0x04;

    private final Cpu cpu;
    private final int base;
    private final int firstVector;
    private final Receiver receiver;
    private final Transmitter transmitter;
    private int control;
    private int format;
    private int divisor;
    private boolean isDouble;
    private boolean isMulti;
    private int ninthOut;
    private int divisorHigh;

    /** Who hears what it sends. */
    @FunctionalInterface
    public interface Sent {
        /**
         * A character begins.
         *
         * @param bits all of it as it stands on the line, start bit first, in the lowest place
         * @param length how many bits those are
         * @param startCycle of its start bit
         * @param bitCycles how long a bit is
         */
        void begins(int bits, int length, long startCycle, int bitCycles);
    }

    /**
     * @param base address of UCSRnA; UCSRnB, UCSRnC, UBRRnL, UBRRnH and UDRn lie as on all these chips
     * @param firstVector of "receive complete"; "data register empty" and "transmit complete" follow
     * @param transmits the pin TXDn, or null where nobody looks at it
     */
    public Usart(Cpu cpu, int base, int firstVector, @Nullable Port transmits, int transmitBit) {
        this.cpu = cpu;
        this.base = base;
        this.firstVector = firstVector;
        receiver = new Receiver(this, cpu);
        transmitter = new Transmitter(this, cpu, transmits, transmitBit);
        cpu.claim(this, base, base + 1, base + 2, base + 4, base + 5, base + 6);
        for (int i = 0; i < 3; i++) {
            cpu.own(firstVector + i, this);
        }
        reset();
    }

    /** What stands at its receiver's pin. */
    public Line line() {
        return receiver.line;
    }

    /** What stands at its receiver's pin has come to be another. */
    public void lineChanged() {
        receiver.lineChanged();
    }

    /** Who hears what it sends. */
    public void tell(Sent sent) {
        transmitter.sent = sent;
    }

    /** Whether its transmitter is on. */
    public boolean isTransmitting() {
        return (control & TXEN) != 0;
    }

    /** Whether its receiver is on. */
    public boolean isReceiving() {
        return (control & RXEN) != 0;
    }

    /** Whether a character waits behind those that it holds: the next start bit costs one. */
    public boolean isFull() {
        return receiver.isFull();
    }

    /** The longest that a character was there before it was fetched, in cycles. */
    public long longestWait() {
        return receiver.longestWait;
    }

    /** Characters that were lost because nobody took those before them, since power came. */
    public int overruns() {
        return receiver.overruns;
    }

    /** When the first of them was lost, in cycles; -1 for never. */
    public long firstOverrun() {
        return receiver.firstOverrun;
    }

    public void reset() {
        control = 0;
        format = 6;
        divisor = 0;
        isDouble = false;
        isMulti = false;
        receiver.reset();
        transmitter.reset();
    }

    /** How its characters stand on the line. */
    public CharacterFormat format() {
        CharacterFormat.Parity parity = parity() < 2
                ? CharacterFormat.Parity.NONE
                : parity() == 2 ? CharacterFormat.Parity.EVEN : CharacterFormat.Parity.ODD;
        return new CharacterFormat(dataBits(), parity, stopBits());
    }

    /** How long a bit is, cycles. */
    public int bitCycles() {
        return (isDouble ? 8 : 16) * (divisor + 1);
    }

    /** Cycles from one sample to the next. */
    int sampleCycles() {
        return divisor + 1;
    }

    int samples() {
        return isDouble ? 8 : 16;
    }

    int dataBits() {
        int size = format >> 1 & 3 | control & UCSZ2;
        return size == 7 ? 9 : 5 + size;
    }

    /** 0 for none, 2 for even, 3 for odd. */
    int parity() {
        return format >> 4 & 3;
    }

    int stopBits() {
        return (format & 8) == 0 ? 1 : 2;
    }

    boolean isMulti() {
        return isMulti;
    }

    int ninthOut() {
        return ninthOut;
    }

    /** Brings what it asks for in line with its flags. */
    void ask() {
        cpu.request(firstVector, (control & RXC) != 0 && receiver.holds() > 0);
        cpu.request(firstVector + 1, (control & UDRE) != 0 && transmitter.isEmpty());
        cpu.request(firstVector + 2, (control & TXC) != 0 && transmitter.isComplete);
    }

    @Override
    public void served(int vector) {
        if (vector == firstVector + 2) {
            transmitter.isComplete = false;
            ask();
        }
    }

    @Override
    public int read(int address, long cycle) {
        return switch (address - base) {
            case 0 ->
                (receiver.holds() > 0 ? RXC : 0)
                        | (transmitter.isComplete ? TXC : 0)
                        | (transmitter.isEmpty() ? UDRE : 0)
                        | (receiver.hasFrameError() ? FE : 0)
                        | (receiver.isOverrun ? DOR : 0)
                        | (receiver.hasParityError() ? UPE : 0)
                        | (isDouble ? U2X : 0)
                        | (isMulti ? MPCM : 0);
            case 1 -> control | receiver.ninth() << 1 | ninthOut;
            case 2 -> format;
            case 4 -> divisor & 0xFF;
            case 5 -> divisor >> 8;
            default -> {
                cpu.acted();
                yield receiver.take();
            }
        };
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        switch (address - base) {
            case 0 -> {
                isDouble = (value & U2X) != 0;
                isMulti = (value & MPCM) != 0;
                transmitter.isComplete &= (value & TXC) == 0;
            }
            case 1 -> {
                control = value & 0xFC;
                ninthOut = value & 1;
                receiver.enable((control & RXEN) != 0, cycle);
                transmitter.enable((control & TXEN) != 0, cycle);
            }
            case 2 -> {
                if ((value & 0xC0) != 0) {
                    throw cpu.stop("a USART that is not asynchronous (UMSEL) is not modelled");
                }
                format = value;
            }
            case 4 -> {
                divisor = divisorHigh << 8 | value;
                transmitter.begun = cycle;
            }
            case 5 -> {
                divisorHigh = value & 15;
                divisor = divisor & 0xFF | divisorHigh << 8;
            }
            default -> transmitter.put(value, cycle);
        }
        int size = format >> 1 & 3 | control & UCSZ2;
        if (size > 3 && size < 7 && (control & (RXEN | TXEN)) != 0) {
            throw cpu.stop("characters of a size that is reserved (UCSZ " + size + ") are not modelled");
        }
        ask();
    }
}
