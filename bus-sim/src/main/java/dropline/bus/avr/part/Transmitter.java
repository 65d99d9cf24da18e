package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import org.jspecify.annotations.Nullable;

/**
 * Sends: one character in the shift register, one in UDR. A character written while nothing is sent begins with the
 * next beat of the baud-rate generator; the data sheet does not say more of it than that.
 */
final class Transmitter {
    private final Usart usart;
    private final Cpu cpu;
    private final @Nullable Port port;
    private final int bit;
    private final int alarm;
    Usart.@Nullable Sent sent;
    boolean isComplete;
    /** When the baud-rate generator began to count. */
    long begun;

    private boolean isOn;
    private boolean isFull;
    private int waiting;
    private boolean isSending;

    Transmitter(Usart usart, Cpu cpu, @Nullable Port port, int bit) {
        this.usart = usart;
        this.cpu = cpu;
        this.port = port;
        this.bit = bit;
        alarm = cpu.add(this::happen);
    }

    void reset() {
        isOn = false;
        isFull = false;
        isSending = false;
        isComplete = false;
        cpu.due(alarm, Long.MAX_VALUE);
    }

    boolean isEmpty() {
        return !isFull;
    }

    void enable(boolean isWanted, long cycle) {
        if (isWanted == isOn) {
            return;
        }
        isOn = isWanted;
        if (port != null && isOn) {
            port.take(bit, 1, cycle);
        } else if (port != null && !isSending && !isFull) {
            port.giveBack(bit, cycle);
        }
    }

    /** UDR is written; what does not fit is ignored. */
    void put(int value, long cycle) {
        if (!isOn || isFull) {
            return;
        }
        waiting = value | usart.ninthOut() << 8;
        isFull = true;
        if (!isSending) {
            long beat = usart.sampleCycles();
            cpu.due(alarm, cycle + beat - Math.floorMod(cycle - begun, beat));
        }
    }

    private void happen(long cycle) {
        isSending = false;
        if (isFull) {
            begin(cycle);
        } else {
            isComplete = true;
            if (!isOn && port != null) {
                port.giveBack(bit, cycle);
            }
        }
        usart.ask();
    }

    private void begin(long cycle) {
        isFull = false;
        isSending = true;
        int data = usart.dataBits();
        int value = waiting & (1 << data) - 1;
        int bits = value << 1;
        int length = 1 + data;
        int parity = usart.parity();
        if (parity >= 2) {
            bits |= (Integer.bitCount(value) & 1 ^ parity & 1) << length++;
        }
        for (int i = 0; i < usart.stopBits(); i++) {
            bits |= 1 << length++;
        }
        int bitCycles = usart.bitCycles();
        cpu.due(alarm, cycle + (long) length * bitCycles);
        if (sent != null) {
            sent.begins(bits, length, cycle, bitCycles);
        }
    }
}
