package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;

/** The SPI as master (DS40002061, "SPI"). */
public final class Spi implements Registers, Served {
    private static final int SPCR = 0x4C;
    private static final int SPSR = 0x4D;
    private static final int SPDR = 0x4E;
    private static final int SPIE = 0x80;
    private static final int SPE = 0x40;
    private static final int MSTR = 0x10;
    private static final int SPIF = 0x80;
    private static final int WCOL = 0x40;

    /** What hangs on it. */
    @FunctionalInterface
    public interface Peer {
        /** A byte is over; the answer is what came back meanwhile, 0xFF where nobody drives the line. */
        int exchanged(int value, long cycle);
    }

    private final Cpu cpu;
    private final int vector;
    private final int alarm;
    private Peer peer = (value, cycle) -> 0xFF;
    private int control;
    private int status;
    private int sent;
    private int received;
    private boolean isSending;
    private boolean isStatusRead;

    public Spi(Cpu cpu, int vector) {
        this.cpu = cpu;
        this.vector = vector;
        alarm = cpu.add(this::over);
        cpu.claim(this, SPCR, SPSR, SPDR);
        cpu.own(vector, this);
    }

    /** What hangs on it. */
    public void connect(Peer other) {
        peer = other;
    }

    public void reset() {
        control = 0;
        status = 0;
        isSending = false;
        cpu.due(alarm, Long.MAX_VALUE);
    }

    private void over(long cycle) {
        isSending = false;
        received = peer.exchanged(sent, cycle);
        status |= SPIF;
        ask();
    }

    private void ask() {
        cpu.request(vector, (control & SPIE) != 0 && (status & SPIF) != 0);
    }

    @Override
    public void served(int ofVector) {
        status &= ~SPIF;
        ask();
    }

    private void touchData() {
        if (isStatusRead) {
            status &= ~(SPIF | WCOL);
            isStatusRead = false;
            ask();
        }
    }

    @Override
    public int read(int address, long cycle) {
        if (address == SPCR) {
            return control;
        }
        if (address == SPSR) {
            if ((status & (SPIF | WCOL)) != 0 && !isStatusRead) {
                isStatusRead = true;
                cpu.acted();
            }
            return status;
        }
        cpu.acted();
        touchData();
        return received;
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        if (address == SPCR) {
            if ((value & (SPE | MSTR)) == SPE) {
                throw cpu.stop("an SPI that is not the master (MSTR in SPCR) is not modelled");
            }
            control = value;
            ask();
        } else if (address == SPSR) {
            status = status & ~1 | value & 1;
        } else {
            touchData();
            send(value, cycle);
        }
    }

    private void send(int value, long cycle) {
        if ((control & SPE) == 0) {
            return;
        }
        if (isSending) {
            status |= WCOL;
            return;
        }
        int divisor = (control & 3) == 3 ? 128 : 4 << 2 * (control & 3);
        isSending = true;
        sent = value;
        cpu.due(alarm, cycle + 8L * ((status & 1) != 0 ? divisor / 2 : divisor));
    }
}
