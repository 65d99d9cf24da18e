package dropline.bus.indicator;

import dropline.bus.fault.Chance;
import dropline.bus.fault.Fault;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Motion.Zeroing;
import dropline.bus.pit.Signal;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import java.util.ArrayList;
import java.util.List;

/**
 * Something that moves and of which the node's count and the true position may differ. The node counts on as if all
 * were well; the eye sees the true position. Positions are in units of the signal's resolution.
 *
 * <p>One that must find its zero after a restart is busy with that before it carries out a command, of which it then
 * has only the newest. At its zero its count is right again, so that steps it had lost no longer matter; a needle that
 * slipped on its shaft stays where it slipped to.
 */
final class Needle implements Mechanism {
    private static final double NANOS_PER_SECOND = 1e9;

    private final int slot;
    private final Signal signal;
    private final long zero;
    private final double unitsPerNano;
    private final double gainPerNano;
    private final Zeroing zeroing;
    private final double zeroUnitsPerNano;
    private final long zeroingNanos;
    private final List<Fault> sticking = new ArrayList<>();
    private final List<Long> lost = new ArrayList<>();
    private final List<Chance> losing = new ArrayList<>();

    private final Path path = new Path();
    private int joint;
    private long countFrom;
    private long countTo;
    private long trueFrom;
    private long trueTo;
    private long slipped;
    private long uncounted;

    private int turningSerial;
    private int turn;
    private long zeroFromNanos = NEVER;
    private long zeroUntilNanos = NEVER;
    private int waitingSerial;
    private long waitingValue;

    /** At rest, where the node believes it to be. */
    Needle(int slot, Signal signal, long rest, Motion motion) {
        this.slot = slot;
        this.signal = signal;
        zero = rest;
        unitsPerNano = motion.ratePerSecond() / signal.resolution() / NANOS_PER_SECOND;
        gainPerNano = motion.accelerationPerSecond2() / signal.resolution() / (NANOS_PER_SECOND * NANOS_PER_SECOND);
        zeroing = motion.zeroing();
        zeroUnitsPerNano = motion.zeroingPerSecond() / signal.resolution() / NANOS_PER_SECOND;
        zeroingNanos = motion.longestZeroingNanos(signal);
        path.rest(0);
        countFrom = rest;
        countTo = rest;
        trueFrom = rest;
        trueTo = rest;
    }

    /** Whether it may be busy when it is commanded, gaining speed or finding its zero. */
    boolean takesItsTime() {
        return gainPerNano > 0 || zeroing != Zeroing.NONE;
    }

    /** Within this fault's span it stops so many units short. */
    void sticks(Fault fault) {
        sticking.add(fault);
    }

    /** A move that this chance strikes loses so many units, until the zero is found again. */
    void loses(long units, Chance chance) {
        lost.add(units);
        losing.add(chance);
    }

    /** The short way round if the signal wraps. */
    @Override
    public void command(long atNanos, int serial, long value, EventOrder events) {
        if (isZeroing()) {
            waitingSerial = serial;
            waitingValue = value;
            return;
        }
        long count = path.along(countFrom, countTo, atNanos);
        long from = path.along(trueFrom, trueTo, atNanos);
        double speed = path.speedAt(atNanos);
        long distance = signal.difference(value, count);
        for (int i = 0; i < losing.size(); i++) {
            if (losing.get(i).strikes(atNanos, serial)) {
                uncounted -= Long.signum(distance) * Math.min(lost.get(i), Math.abs(distance));
            }
        }
        if (gainPerNano == 0) {
            path.straight(atNanos, atNanos + (long) Math.ceil(Math.abs(distance) / unitsPerNano), distance);
        } else {
            path.ramped(atNanos, distance, speed, unitsPerNano, gainPerNano);
        }
        countFrom = count;
        countTo = count + distance;
        trueFrom = from;
        trueTo = stuck(atNanos, from, countTo + slipped + uncounted);
        joint = 0;
        turn = path.turn();
        turningSerial = serial;
        postPiece(events);
        if (turn == 0) {
            shown(atNanos, events);
        }
    }

    /** It stops short of a goal on the side from which it comes, and does not leave a place that is near enough. */
    private long stuck(long atNanos, long from, long goal) {
        long stop = goal;
        for (Fault fault : sticking) {
            if (fault.spans(atNanos)) {
                stop = Math.max(goal - fault.amount(), Math.min(goal + fault.amount(), from));
            }
        }
        return stop;
    }

    private void shown(long atNanos, EventOrder events) {
        if (turningSerial > 0) {
            events.post(atNanos, Rank.SHOWN, slot, turningSerial, 0, 0);
            turningSerial = 0;
        }
    }

    /** It jumps by so many units on its shaft; a motion under way goes on from there. */
    void jump(long atNanos, long units, EventOrder events) {
        slipped += units;
        if (atNanos >= path.endNanos()) {
            rest(atNanos);
        } else if (gainPerNano == 0) {
            long end = path.endNanos();
            countFrom = path.along(countFrom, countTo, atNanos);
            trueFrom = path.along(trueFrom, trueTo, atNanos) + units;
            path.straight(atNanos, end, countTo - countFrom);
        } else {
            trueFrom += units;
        }
        trueTo += units;
        post(events, atNanos, path.nanos(joint + 1));
    }

    /** It stands off by so many units before its first motion. */
    void startOff(long units) {
        slipped += units;
        trueFrom += units;
        trueTo += units;
    }

    /** It stops where it is; the first thing its program does then is to look for its zero. */
    @Override
    public void forget(long nowNanos, long readyNanos, EventOrder events) {
        turningSerial = 0;
        waitingSerial = 0;
        zeroUntilNanos = NEVER;
        zeroFromNanos = zeroing == Zeroing.NONE ? NEVER : readyNanos;
        if (nowNanos < path.endNanos()) {
            countTo = path.along(countFrom, countTo, nowNanos);
            trueTo = path.along(trueFrom, trueTo, nowNanos);
            rest(nowNanos);
            post(events, nowNanos, nowNanos);
        }
    }

    private void rest(long atNanos) {
        countFrom = countTo;
        trueFrom = trueTo;
        path.rest(atNanos);
        joint = 0;
    }

    @Override
    public long nextNanos() {
        long next = Math.min(zeroFromNanos, zeroUntilNanos);
        return joint < path.joints() - 2 || turningSerial > 0 ? Math.min(next, path.nanos(joint + 1)) : next;
    }

    @Override
    public void step(EventOrder events) {
        long at = nextNanos();
        if (at == zeroUntilNanos) {
            zeroUntilNanos = NEVER;
            if (waitingSerial > 0) {
                command(at, waitingSerial, waitingValue, events);
                waitingSerial = 0;
            }
        } else if (at == zeroFromNanos) {
            zeroFromNanos = NEVER;
            findZero(at, events);
        } else {
            joint++;
            if (joint == turn) {
                shown(at, events);
            }
            if (joint < path.joints() - 1) {
                postPiece(events);
            }
        }
    }

    private boolean isZeroing() {
        return zeroFromNanos != NEVER || zeroUntilNanos != NEVER;
    }

    private void findZero(long atNanos, EventOrder events) {
        long away = trueTo - zero - slipped;
        long down = signal.wraps() ? Math.floorMod(away, signal.steps()) : away;
        long arrived = atNanos + (long) Math.ceil(Math.abs(down) / zeroUnitsPerNano);
        zeroUntilNanos = zeroing == Zeroing.STOP ? Math.max(arrived, atNanos + zeroingNanos) : arrived;
        uncounted = 0;
        countFrom = zero + down;
        countTo = zero;
        trueFrom = trueTo;
        trueTo -= down;
        path.straight(atNanos, arrived, -down);
        joint = 0;
        postPiece(events);
    }

    private void postPiece(EventOrder events) {
        post(events, path.nanos(joint), path.nanos(joint + 1));
    }

    private void post(EventOrder events, long atNanos, long untilNanos) {
        long from = atNanos == untilNanos ? trueFrom : path.along(trueFrom, trueTo, atNanos);
        events.post(
                atNanos,
                Rank.MOVED,
                slot,
                turningSerial,
                0,
                0,
                0,
                from,
                untilNanos,
                path.along(trueFrom, trueTo, untilNanos));
    }
}
