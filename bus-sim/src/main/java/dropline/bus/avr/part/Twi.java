package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The two-wire interface as the only master (DS40002061, "2-wire Serial Interface"). */
public final class Twi implements Registers, Served {
    private static final int TWBR = 0xB8;
    private static final int TWSR = 0xB9;
    private static final int TWAR = 0xBA;
    private static final int TWDR = 0xBB;
    private static final int TWCR = 0xBC;
    private static final int TWAMR = 0xBD;
    private static final int TWINT = 0x80;
    private static final int TWEA = 0x40;
    private static final int TWSTA = 0x20;
    private static final int TWSTO = 0x10;
    private static final int TWEN = 0x04;
    private static final int TWIE = 0x01;

    private static final int STARTED = 0x08;
    private static final int STARTED_AGAIN = 0x10;
    private static final int WRITES = 0x18;
    private static final int SENT = 0x28;
    private static final int READS = 0x40;
    private static final int RECEIVED = 0x50;
    private static final int NOTHING = 0xF8;

    /** Bits of a byte with its acknowledgement. */
    private static final int BYTE_BITS = 9;

    /** What hangs on the two wires. */
    public interface Peer {
        /** Whether it is the one of this address. */
        boolean is(int address);

        /** Whether it answers at all; one that holds the wires lets no start come about. */
        default boolean holdsTheWires() {
            return false;
        }

        /** It is spoken to from here on. */
        default void begun() {}

        /** Whether it acknowledges a byte. */
        boolean written(int value, long cycle);

        /** A byte it gives. */
        int read();

        /** No more for now. */
        default void ended(long cycle) {}
    }

    private final Cpu cpu;
    private final int vector;
    private final int alarm;
    private final List<Peer> peers = new ArrayList<>();
    private @Nullable Peer peer;
    private int rate;
    private int scale;
    private int own = 0xFE;
    private int mask;
    private int data = 0xFF;
    private int control;
    private int state = NOTHING;
    private boolean isOnTheWires;
    private int next;

    public Twi(Cpu cpu, int vector) {
        this.cpu = cpu;
        this.vector = vector;
        alarm = cpu.add(this::over);
        cpu.claim(this, TWBR, TWSR, TWAR, TWDR, TWCR, TWAMR);
        cpu.own(vector, this);
    }

    /** Something hangs on the wires. */
    public void connect(Peer other) {
        peers.add(other);
    }

    public void reset() {
        rate = 0;
        scale = 0;
        control = 0;
        state = NOTHING;
        isOnTheWires = false;
        peer = null;
        cpu.due(alarm, Long.MAX_VALUE);
    }

    /** "Bit Rate Generator Unit": SCL = clock / (16 + 2 TWBR x prescaler). */
    private long bitCycles() {
        return 16 + 2L * rate * (1 << 2 * scale);
    }

    private void ask() {
        cpu.request(vector, (control & TWIE) != 0 && (control & TWINT) != 0);
    }

    @Override
    public void served(int ofVector) {
        // TWINT is cleared by the program
    }

    private void over(long cycle) {
        state = next;
        control |= TWINT;
        ask();
    }

    @Override
    public int read(int address, long cycle) {
        return switch (address) {
            case TWBR -> rate;
            case TWSR -> state | scale;
            case TWAR -> own;
            case TWDR -> data;
            case TWCR -> control;
            default -> mask;
        };
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        switch (address) {
            case TWBR -> rate = value;
            case TWSR -> scale = value & 3;
            case TWAR -> own = value;
            case TWDR -> data = value;
            case TWCR -> control(value, cycle);
            default -> mask = value;
        }
    }

    private void control(int value, long cycle) {
        boolean goesOn = (value & TWINT) != 0;
        control = value & ~TWINT | (goesOn ? 0 : control & TWINT);
        if ((value & TWEN) == 0) {
            cpu.due(alarm, Long.MAX_VALUE);
            isOnTheWires = false;
        } else if (goesOn) {
            act(value, cycle);
        }
        ask();
    }

    private void act(int value, long cycle) {
        if ((value & TWSTO) != 0) {
            control &= ~TWSTO;
            end(cycle);
            isOnTheWires = false;
            state = NOTHING;
        }
        if ((value & TWSTA) != 0) {
            if (peers.stream().anyMatch(Peer::holdsTheWires)) {
                return;
            }
            end(cycle);
            then(isOnTheWires ? STARTED_AGAIN : STARTED, cycle + bitCycles());
            isOnTheWires = true;
        } else if ((value & TWSTO) == 0 && isOnTheWires) {
            transfer(value, cycle + BYTE_BITS * bitCycles());
        }
    }

    private void end(long cycle) {
        if (peer != null) {
            peer.ended(cycle);
            peer = null;
        }
    }

    private void then(int newState, long cycle) {
        next = newState;
        cpu.due(alarm, cycle);
    }

    private void transfer(int value, long cycle) {
        if (state == STARTED || state == STARTED_AGAIN) {
            peer = peers.stream().filter(one -> one.is(data >> 1)).findFirst().orElse(null);
            if (peer != null) {
                peer.begun();
            }
            int reads = (data & 1) != 0 ? READS : WRITES;
            then(reads + (peer == null ? 8 : 0), cycle);
        } else if (state == READS || state == RECEIVED) {
            data = peer == null ? 0xFF : peer.read();
            then((value & TWEA) != 0 ? RECEIVED : RECEIVED + 8, cycle);
        } else {
            boolean isTaken = peer != null && peer.written(data, cycle);
            then(isTaken ? SENT : SENT + 8, cycle);
        }
    }
}
