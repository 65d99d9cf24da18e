package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.PendingSlots;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** One node, or all of them, spoken to in Modbus RTU; {@link ModbusRtu} says with which functions. */
final class ModbusDestination implements Destination {
    private static final int READ_REQUEST = 8;
    private static final int WRITE_REPLY = 8;
    private static final int WRITE_OVERHEAD = 9;
    private static final int EXCHANGE_OVERHEAD = 13;
    private static final int READ_REPLY_OVERHEAD = 5;

    private final int address;
    private final boolean toAll;
    private final int[] numbers;
    private final int[] registers;
    private final int[] controlNumbers;
    private final int readStart;
    private final int readQuantity;
    private final int writeOverhead;
    private final int mostWritten;
    private final int longestRequest;

    ModbusDestination(NodeWire wire, boolean toAll) {
        this.address = wire.address();
        this.toAll = toAll;
        this.numbers = wire.signals().stream().mapToInt(SignalWire::number).toArray();
        this.registers = wire.signals().stream()
                .mapToInt(signal -> ModbusRtu.registers(signal.valueBytes()))
                .toArray();
        this.controlNumbers =
                wire.controls().stream().mapToInt(ControlWire::number).toArray();
        int controls = controlNumbers.length;
        int firstSignal = numbers.length == 0 ? 0 : numbers[0];
        this.readStart = controls == 0 ? firstSignal : controlNumbers[0];
        this.readQuantity = controls == 0 ? 1 : controlNumbers[controls - 1] - controlNumbers[0] + 1;
        this.writeOverhead = controls == 0 ? WRITE_OVERHEAD : EXCHANGE_OVERHEAD;
        this.mostWritten =
                controls == 0 ? ModbusRequest.MOST_REGISTERS_WRITTEN : ModbusRequest.MOST_REGISTERS_EXCHANGED;
        this.longestRequest = longestRequest();
    }

    @Override
    public int pick(long[] pending, int from, int[] picked) {
        int slots = numbers.length;
        int first = PendingSlots.nextWrapping(pending, from, slots);
        if (first < 0) {
            return 0;
        }
        int end = runEnd(first);
        int count = 0;
        for (int next = first; next >= 0; next = PendingSlots.next(pending, next + 1, end)) {
            while (first + count <= next) {
                picked[count] = first + count;
                count++;
            }
        }
        return count;
    }

    @Override
    public int requestChars(int[] picked, int count) {
        if (count == 0) {
            return toAll ? 0 : READ_REQUEST;
        }
        int chars = writeOverhead;
        for (int i = 0; i < count; i++) {
            chars += 2 * registers[picked[i]];
        }
        return chars;
    }

    @Override
    public int replyChars(int[] picked, int count, double draw) {
        if (toAll) {
            return 0;
        }
        return writesOnly(count) ? WRITE_REPLY : READ_REPLY_OVERHEAD + 2 * readQuantity;
    }

    @Override
    public int longestRequestChars() {
        return longestRequest;
    }

    @Override
    public int longestReplyChars() {
        if (toAll) {
            return 0;
        }
        int read = READ_REPLY_OVERHEAD + 2 * readQuantity;
        return numbers.length > 0 && writesOnly(1) ? Math.max(WRITE_REPLY, read) : read;
    }

    @Override
    public Bytes encodeRequest(int sequence, int[] picked, int count, long[] values) {
        return new ModbusFrame.Request(address, request(picked, count, values)).encode();
    }

    /**
     * {@inheritDoc}
     *
     * <p>Modbus has no room for the status. Registers between two controls read 0, and so does the one register that a
     * node without controls is polled for, since what it holds is not known here.
     */
    @Override
    public Bytes encodeReply(NodeStatus status, int[] picked, int count, int[] controlValues) {
        if (toAll) {
            throw new UnsupportedOperationException("nobody replies to a broadcast");
        }
        if (controlValues.length != controlNumbers.length) {
            throw new IllegalArgumentException("control values must be one per control: controls="
                    + controlNumbers.length + " values=" + controlValues.length);
        }
        return new ModbusFrame.Response(address, response(picked, count, controlValues)).encode();
    }

    private ModbusRequest request(int[] picked, int count, long[] values) {
        if (count == 0) {
            if (toAll) {
                throw new IllegalArgumentException("a broadcast must carry state: count=0");
            }
            return new ModbusRequest.ReadRegisters(3, readStart, readQuantity);
        }
        List<Integer> written = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (registers[picked[i]] == 2) {
                written.add((int) (values[i] >> 16) & 0xFFFF);
            }
            written.add((int) values[i] & 0xFFFF);
        }
        int start = numbers[picked[0]];
        return controlNumbers.length == 0
                ? new ModbusRequest.WriteRegisters(start, written)
                : new ModbusRequest.ExchangeRegisters(readStart, readQuantity, start, written);
    }

    private ModbusResponse response(int[] picked, int count, int[] controlValues) {
        if (writesOnly(count)) {
            int quantity = (requestChars(picked, count) - writeOverhead) / 2;
            return new ModbusResponse.RangeWritten(16, numbers[picked[0]], quantity);
        }
        List<Integer> read = new ArrayList<>(Collections.nCopies(readQuantity, 0));
        for (int i = 0; i < controlNumbers.length; i++) {
            read.set(controlNumbers[i] - readStart, controlValues[i] & 0xFFFF);
        }
        return new ModbusResponse.Registers(count == 0 ? 3 : 23, read);
    }

    private boolean writesOnly(int count) {
        return count > 0 && controlNumbers.length == 0;
    }

    /** The slot after the longest run of neighbouring registers from {@code first} that one request can write. */
    private int runEnd(int first) {
        int slot = first;
        int room = mostWritten;
        do {
            room -= registers[slot];
            slot++;
        } while (slot < numbers.length
                && numbers[slot] == numbers[slot - 1] + registers[slot - 1]
                && registers[slot] <= room);
        return slot;
    }

    private int longestRequest() {
        int longest = toAll ? 0 : READ_REQUEST;
        for (int first = 0; first < numbers.length; first++) {
            int chars = writeOverhead;
            int end = runEnd(first);
            for (int slot = first; slot < end; slot++) {
                chars += 2 * registers[slot];
            }
            longest = Math.max(longest, chars);
        }
        return longest;
    }
}
