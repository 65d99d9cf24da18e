package dropline.bus.run;

import dropline.bus.avr.board.Board;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Transceiver;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Wire;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What an emulated board puts on the pair: its driver's being on, and its characters one by one. Which frames these
 * make is told later, once that is known. It reaches the pair only while it is connected.
 */
final class Voice implements Board.Talk {
    static final long NEVER = Long.MAX_VALUE;

    /** As many characters are kept as may be asked for while others touch them. */
    private static final int KEPT = 256;

    /** The longest frame that can be told of as one. */
    private static final int LONGEST = 1024;

    private final int talker;
    private final boolean isAutomatic;
    private final boolean zerosOnly;
    private final Wire wire;
    private final Frame drive;
    private final Frame[] characters = new Frame[KEPT];
    private final int[] values = new int[KEPT];
    private final byte[] untold = new byte[LONGEST];
    private final long[] starts = new long[LONGEST];
    private final Frame whole;
    private @Nullable Board board;
    private UartClock clock;
    private int newest = KEPT - 1;
    private int count;
    private boolean isConnected;
    private boolean isEnabled;
    private boolean isOn;
    private boolean isJoined;
    private long offNanos;
    private long endNanos;
    private long heardNanos;
    private Bytes told = Bytes.of();

    /**
     * @param talker its node's index
     * @param isAutomatic whether the driver is on by itself whenever something is sent
     * @param clock what its bits are thought to last
     */
    Voice(
            int talker,
            boolean isAutomatic,
            Transceiver transceiver,
            UartClock clock,
            CharacterFormat format,
            Wire wire) {
        this.talker = talker;
        this.isAutomatic = isAutomatic;
        this.wire = wire;
        this.clock = clock;
        zerosOnly = transceiver.driver() == Transceiver.Driver.ZEROS_ONLY;
        drive = new Frame(talker, 0, clock, format);
        drive.zerosOnly = zerosOnly;
        whole = new Frame(talker, 0, clock, format);
    }

    /** The board whose voice it is. */
    void of(Board its) {
        board = its;
    }

    private Board board() {
        return Objects.requireNonNull(board);
    }

    @Override
    public void enabled(boolean isWanted, long cycle) {
        isEnabled = isWanted;
        turn(isWanted && isConnected, board().nanos(cycle));
    }

    /** Ties the board to the pair, or takes it off: unplugged, or without supply. */
    void connect(boolean isWanted, long atNanos) {
        if (isWanted != isConnected) {
            isConnected = isWanted;
            turn(isWanted && isEnabled, atNanos);
        }
    }

    private void turn(boolean isWanted, long at) {
        if (isWanted == isOn) {
            return;
        }
        isOn = isWanted;
        isJoined = true;
        Frame last = characters[newest];
        boolean isInside = last != null && at < last.endNanos;
        if (isOn) {
            whole.driverOnNanos = at;
            whole.driverOffNanos = NEVER;
            drive.drive(at, NEVER);
            wire.join(drive);
            wire.tellOn(talker, at);
            if (isInside && last != null) {
                last.driverOnNanos = at;
                last.driverOffNanos = last.endNanos;
            }
        } else {
            offNanos = at;
            whole.driverOffNanos = at;
            drive.driverOffNanos = at;
            wire.tellOff(talker, at);
            if (isInside && last != null) {
                last.driverOffNanos = Math.max(last.driverOnNanos, at);
            }
        }
    }

    @Override
    public void begins(int bits, int length, long startCycle, int bitCycles) {
        long start = board().nanos(startCycle);
        if (!isConnected) {
            return;
        }
        CharacterFormat format = board().usart().format();
        newest = (newest + 1) % KEPT;
        Frame character = characters[newest];
        if (character == null || !character.format().equals(format)) {
            character = new Frame(talker, 0, clock, format);
            character.kind = Frame.CHARACTER;
            character.node = talker;
            character.zerosOnly = zerosOnly;
            characters[newest] = character;
        }
        if (bitCycles != clock.ticksPerBit() || clock.hz() != board().chip().hz()) {
            clock = new UartClock(board().chip().hz(), bitCycles);
        }
        character.isPart = !isAutomatic || count > 0;
        character.timedBy(clock);
        character.time(start, 1, 0, 0);
        if (!isAutomatic && !isOn) {
            character.driverOnNanos = NEVER;
        }
        values[newest] = bits >> 1 & (1 << format.dataBits()) - 1;
        if (isAutomatic) {
            whole.driverOnNanos = count == 0 ? start : whole.driverOnNanos;
            whole.driverOffNanos = character.endNanos;
        }
        note(character);
        wire.join(character);
        isJoined = true;
    }

    private void note(Frame character) {
        if (count == LONGEST) {
            System.arraycopy(untold, 1, untold, 0, LONGEST - 1);
            System.arraycopy(starts, 1, starts, 0, LONGEST - 1);
            count--;
        }
        untold[count] = (byte) values[newest];
        starts[count++] = character.startNanos;
        endNanos = character.endNanos;
        heardNanos = character.heardNanos;
    }

    /** Whether it drives the pair at an instant. */
    boolean drives(long atNanos) {
        return isOn || (isAutomatic && count > 0 && atNanos < endNanos);
    }

    /** Whether something has come to the pair, or gone from it, since this was asked last. */
    boolean hasJoined() {
        boolean joined = isJoined;
        isJoined = false;
        return joined;
    }

    /** The byte of a character that it sent. */
    Bytes byteOf(Frame character) {
        for (int i = 0; i < KEPT; i++) {
            if (characters[i] == character) {
                return Bytes.of(values[i] & 0xFF);
            }
        }
        throw new IllegalStateException("a character must be one of the last " + KEPT + ": talker=" + talker);
    }

    /** When the first character that has not been told began, ns; {@link #NEVER} if all have been. */
    long untoldNanos() {
        return count == 0 ? NEVER : starts[0];
    }

    /**
     * When what has not been told is over for certain, ns: its driver has let go, or nothing came for two characters,
     * and the pair has been silent for as long as a frame needs; {@link #NEVER} if there is nothing.
     */
    long overNanos(long silenceNanos) {
        if (count == 0) {
            return NEVER;
        }
        long over = isAutomatic || isOn ? endNanos + 2 * (endNanos - starts[count - 1]) : Math.max(offNanos, endNanos);
        return over + silenceNanos;
    }

    /** When the last character was heard, ns. */
    long heardNanos() {
        return heardNanos;
    }

    /** When the last so many characters began, ns. */
    long startNanos(int chars) {
        return starts[Math.max(0, count - Math.max(1, chars))];
    }

    /**
     * Tells of what has not been told, as a frame.
     *
     * @param kind of the frame
     * @param node whom it is from, or whom it should be from
     */
    Frame tell(int kind, int node, int transaction, int attempt) {
        long on = whole.driverOnNanos;
        long off = whole.driverOffNanos;
        whole.kind = kind;
        whole.node = node;
        whole.transaction = transaction;
        whole.attempt = attempt;
        whole.timedBy(clock);
        whole.time(starts[0], Math.max(1, count), 0, 0);
        whole.endNanos = endNanos;
        whole.heardNanos = heardNanos;
        whole.driverOnNanos = on;
        whole.driverOffNanos = off;
        told = Bytes.copyOf(untold, 0, count);
        count = 0;
        if (isAutomatic) {
            wire.tellOn(talker, whole.startNanos);
            wire.tellOff(talker, endNanos);
        }
        wire.tell(whole);
        return whole;
    }

    /** The frame told last. */
    Frame whole() {
        return whole;
    }

    /** Its bytes. */
    Bytes told() {
        return told;
    }
}
