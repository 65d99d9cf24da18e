package dropline.bus.indicator;

import dropline.bus.fault.Chance;
import dropline.bus.fault.Fault;
import dropline.bus.pit.Signal;
import java.util.ArrayList;
import java.util.List;

/**
 * A needle or servo of which the node's count and the true position may differ. The node counts on as if all were well;
 * the eye sees the true position. Positions are in units of the signal's resolution.
 */
final class Needle {
    private final Signal signal;
    private final double unitsPerNano;
    private final List<Fault> sticking = new ArrayList<>();
    private final List<Long> lost = new ArrayList<>();
    private final List<Chance> losing = new ArrayList<>();

    private long startNanos;
    private long endNanos;
    private long countFrom;
    private long countTo;
    private long trueFrom;
    private long trueTo;
    private long offset;

    /** At rest, where the node believes it to be. */
    Needle(Signal signal, long rest, double unitsPerNano) {
        this.signal = signal;
        this.unitsPerNano = unitsPerNano;
        countFrom = rest;
        countTo = rest;
        trueFrom = rest;
        trueTo = rest;
    }

    /** Within this fault's span it stops so many units short. */
    void sticks(Fault fault) {
        sticking.add(fault);
    }

    /** A move that this chance strikes loses so many units, for good. */
    void loses(long units, Chance chance) {
        lost.add(units);
        losing.add(chance);
    }

    /** The node sends it to a value, the short way round if the signal wraps. */
    void command(long atNanos, int serial, long value) {
        long count = between(countFrom, countTo, atNanos);
        long from = between(trueFrom, trueTo, atNanos);
        long distance = signal.difference(value, count);
        for (int i = 0; i < losing.size(); i++) {
            if (losing.get(i).strikes(atNanos, serial)) {
                offset -= Long.signum(distance) * Math.min(lost.get(i), Math.abs(distance));
            }
        }
        begin(atNanos, atNanos + (long) Math.ceil(Math.abs(distance) / unitsPerNano));
        countFrom = count;
        countTo = count + distance;
        trueFrom = from;
        trueTo = stuck(atNanos, from, countTo + offset);
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

    /** It jumps by so many units on its shaft; a motion under way goes on from there. */
    void jump(long atNanos, long units) {
        offset += units;
        if (isMoving(atNanos)) {
            cut(atNanos);
            trueFrom += units;
        } else {
            countFrom = countTo;
            trueFrom = trueTo;
            begin(atNanos, atNanos);
        }
        trueTo += units;
    }

    /** It stands off by so many units before its first motion. */
    void startOff(long units) {
        offset += units;
        trueFrom += units;
        trueTo += units;
    }

    /** It stops where it is. */
    void halt(long atNanos) {
        cut(atNanos);
        countTo = countFrom;
        trueTo = trueFrom;
        endNanos = atNanos;
    }

    boolean isMoving(long atNanos) {
        return atNanos < endNanos;
    }

    /** Where the last motion began. */
    long from() {
        return trueFrom;
    }

    /** When the last motion is over, ns. */
    long endNanos() {
        return endNanos;
    }

    /** Where the last motion ends. */
    long to() {
        return trueTo;
    }

    private void cut(long atNanos) {
        countFrom = between(countFrom, countTo, atNanos);
        trueFrom = between(trueFrom, trueTo, atNanos);
        startNanos = atNanos;
    }

    private void begin(long atNanos, long untilNanos) {
        startNanos = atNanos;
        endNanos = untilNanos;
    }

    private long between(long from, long to, long atNanos) {
        if (atNanos >= endNanos) {
            return to;
        }
        double part = (double) (atNanos - startNanos) / (endNanos - startNanos);
        return from + Math.round(part * (to - from));
    }
}
