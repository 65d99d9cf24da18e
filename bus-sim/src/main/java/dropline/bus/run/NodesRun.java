package dropline.bus.run;

import dropline.bus.chance.Draws;
import dropline.bus.clock.UartClock;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Reception;
import dropline.bus.wire.Uart;
import dropline.bus.wire.Wire;
import dropline.protocol.Bytes;
import dropline.protocol.Listener;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A segment's nodes with a controller outside, which may say anything: bytes go in, and the bytes come out with which
 * the nodes answer. Everything that is known of nodes, buffers, drivers and faults is the same as in a
 * {@link SegmentRun}.
 */
public final class NodesRun {
    private static final long NEVER = Long.MAX_VALUE;

    /** A piece may be asked for this long after it is over. */
    private static final long KEPT_NANOS = 50_000_000;

    /** What a controller outside hears. */
    public interface Ear {
        /** A node begins to talk: its first start bit comes at {@code reply.startNanos}. */
        void talks(Frame reply, Bytes bytes);

        /** A node has talked; these characters came of it, which are not those it sent if something touched them. */
        void heard(Frame reply, Bytes bytes);
    }

    private final Segment segment;
    private final EventOrder events;
    private final Wire wire;
    private final Reception reception;
    private final Stations stations;
    private final Troubles troubles;
    private final HostInput input;
    private final Spoken spoken;
    private final Understanding understanding;
    private final Ear ear;
    private final long seed;
    private Uart outside;
    private final double bitNanos;
    private final long silenceNanos;
    private long reached;
    private long quietFrom = NEVER;

    /**
     * @param faults what goes wrong; those of other segments are left out
     * @param sink receives the segment's events in order
     * @throws UnsupportedOperationException where the segment's protocol knows lengths only
     */
    public NodesRun(Pit pit, int segmentIndex, long seed, List<Fault> faults, TraceSink sink, Ear ear) {
        this.ear = ear;
        Setting setting = new Setting(pit, segmentIndex, seed, faults, sink, this::bytesOf, false);
        segment = setting.segment;
        events = setting.events;
        wire = setting.wire;
        reception = setting.reception;
        silenceNanos = segment.silenceNanos();
        bitNanos = 1e9 / segment.baud();
        understanding = new Understanding(setting, faults, this::stations, () -> reached);
        stations = setting.stations(understanding::asked);
        troubles = setting.troubles(stations);
        input = setting.input((at, signal, serial, value) -> {});
        Listener cutter = segment.protocol().listener(understanding.wires(), segment.baud(), segment.format());
        spoken = new Spoken(segment, cutter);
        // the pair has been idle for long
        cutter.onSilence(Integer.MAX_VALUE);
        understanding.silence(Integer.MAX_VALUE);
        this.seed = seed;
        outside = outside(bitNanos);
    }

    private Uart outside(double itsBitNanos) {
        return new Uart(
                TraceSink.CONTROLLER,
                itsBitNanos,
                Transceiver.USUAL.samplesPerBit(),
                Transceiver.USUAL.receiver(),
                Draws.stream(seed, Draws.nameHash(segment.name()), Draws.Purpose.CONTENTION));
    }

    /** The controller outside speaks and hears at another baud rate from now on, bits a second. */
    public void tune(int baud) {
        UartClock clock = UartClock.exact(baud);
        spoken.tune(clock);
        outside = outside(clock.bitNanos());
    }

    /**
     * Every node restarts now.
     *
     * @throws IllegalStateException if the run was not told of a fault that may restart each of them
     */
    public void restart() {
        troubles.restart(reached);
    }

    private Stations stations() {
        return stations;
    }

    /** How far it has come, ns. */
    public long reachedNanos() {
        return reached;
    }

    /**
     * The controller outside says bytes, one right after the other.
     *
     * @param atNanos not before the instant reached; what it said before ends first
     * @return when the first start bit begins
     */
    public long say(long atNanos, Bytes bytes) {
        if (atNanos < reached) {
            throw new IllegalArgumentException(
                    "what is said must not lie in the past: atNanos=" + atNanos + " reached=" + reached);
        }
        long first = spoken.say(atNanos, bytes);
        Frame played = spoken.replyBefore();
        if (played != null) {
            wire.isReply(played);
        }
        return first;
    }

    /** When the last of what was said is over, ns. */
    public long saidUntilNanos() {
        return spoken.lastEndNanos();
    }

    /** Gives it the moves of controls that lie between the last {@code advanceTo} and the next. */
    public void offer(StateBlock block) {
        input.offer(block);
    }

    /** When something happens next on the pair, ns; {@link Long#MAX_VALUE} if nothing does until something is said. */
    public long nextNanos() {
        int talker = stations.nextTalker();
        long talk = talker < 0 ? NEVER : stations.quietUntil(talker);
        Frame heard = wire.nextHeard();
        long next = Math.min(talk, heard == null ? NEVER : heard.heardNanos);
        return Math.min(next, Math.min(spoken.nextNanos(), quietFrom));
    }

    /** Runs until an instant: everything before it is decided. */
    public void advanceTo(long toNanos) {
        long at = next();
        while (at < toNanos) {
            events.release(at);
            reached = at;
            step(at);
            at = next();
        }
        events.release(toNanos);
        input.finish();
        reached = toNanos;
    }

    /** The value of a signal that a node understood last, in units of its resolution; 0 if none did. */
    public long value(int signal) {
        return understanding.value(signal);
    }

    /** Ends the trace at the instant reached. */
    public void end() {
        events.end(reached);
    }

    private long next() {
        return Math.min(nextNanos(), Math.min(input.nextNanos(), troubles.nextNanos()));
    }

    private void step(long at) {
        Frame heard = wire.nextHeard();
        int talker = stations.nextTalker();
        if (troubles.nextNanos() == at) {
            troubles.step();
        } else if (input.nextNanos() == at) {
            input.step();
        } else if (heard != null && heard.heardNanos == at) {
            heard(heard);
        } else if (quietFrom == at) {
            quietFrom = NEVER;
            understanding.silence(tenths(silenceNanos));
        } else if (talker >= 0 && stations.quietUntil(talker) == at) {
            talk(talker);
        } else {
            quietFrom = NEVER;
            wire.begin(spoken.next());
        }
    }

    private void talk(int talker) {
        Frame reply = stations.talk(talker);
        Bytes bytes = understanding.asked(talker).freshAnswer();
        if (bytes.length() != reply.chars) {
            long tail = reply.driverOffNanos - reply.endNanos;
            long on = reply.driverOnNanos;
            reply.time(reply.startNanos, bytes.length(), 0, tail);
            reply.driverOnNanos = on;
        }
        quietFrom = NEVER;
        wire.begin(reply);
        ear.talks(reply, bytes);
    }

    private void heard(Frame piece) {
        piece.heard = true;
        spoken.forget(piece.heardNanos - KEPT_NANOS);
        if (piece.talker == TraceSink.CONTROLLER) {
            understanding.hear(piece, spoken.of(piece), silentBefore(piece), TraceSink.CONTROLLER);
        } else if (piece.kind == TraceSink.REPLY) {
            Bytes sent = bytesOf(piece);
            ear.heard(piece, reception.received(piece, wire, outside) ? sent : reception.sampled());
            understanding.hear(piece, sent, silentBefore(piece), piece.talker);
        }
        if (silenceNanos > 0) {
            quietFrom = Math.max(piece.endNanos, piece.heardNanos) + silenceNanos;
        }
    }

    private int silentBefore(Frame piece) {
        return tenths(piece.startNanos - understanding.endNanos());
    }

    private int tenths(long nanos) {
        return (int) Math.max(0, Math.min(Integer.MAX_VALUE, Math.round(nanos * 10 / bitNanos)));
    }

    private Bytes bytesOf(Frame frame) {
        @Nullable Bytes whole = understanding.bytesOf(frame);
        if (whole != null) {
            return whole;
        }
        if (frame.talker == TraceSink.CONTROLLER) {
            return spoken.of(frame);
        }
        return frame.kind == Frame.BABBLE
                ? FrameBytes.madeUp(frame)
                : understanding.asked(stations.position(frame.talker)).answer();
    }
}
