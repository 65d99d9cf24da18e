package dropline.bus.trace;

import java.util.ArrayList;
import java.util.List;

/** Keeps what happened as short lines, so that tests compare whole traces. */
public final class TraceLines implements TraceSink {
    private final List<String> lines = new ArrayList<>();

    /** Every line so far. */
    public List<String> lines() {
        return lines;
    }

    /** The lines that begin with one of these words after the time. */
    public List<String> only(String... words) {
        return lines.stream()
                .filter(line -> List.of(words).contains(line.split(" ")[1]))
                .toList();
    }

    private void line(long at, String word, long... integers) {
        StringBuilder text = new StringBuilder().append(at).append(' ').append(word);
        for (long integer : integers) {
            text.append(' ').append(integer);
        }
        lines.add(text.toString());
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        line(atNanos, "changed", signal, serial, value);
    }

    @Override
    public void stateSent(long atNanos) {
        line(atNanos, "sent");
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        line(atNanos, "queued", destination, signal, serial);
    }

    @Override
    public void coalesced(long atNanos, int destination, int signal, int serial) {
        line(atNanos, "coalesced", destination, signal, serial);
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        line(atNanos, "started", talker, frame, node, transaction, chars);
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        line(atNanos, "carried", destination, signal, serial, transaction);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        line(atNanos, "ended", talker, frame, node, transaction);
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        line(atNanos, "answered", node, transaction, attempt, gapNanos);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        line(atNanos, "timed-out", node, transaction, attempt);
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        line(atNanos, "gave-up", node, transaction);
    }

    @Override
    public void backedOff(long atNanos, int node, long untilNanos) {
        line(atNanos, "backed-off", node, untilNanos);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        line(atNanos, "told", control, serial);
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        line(atNanos, "clash", talker, other);
    }

    @Override
    public void overrun(long atNanos, int node, int transaction) {
        line(atNanos, "overrun", node, transaction);
    }

    @Override
    public void applied(long atNanos, int slot, int serial, long heardNanos) {
        line(atNanos, "applied", slot, serial, heardNanos);
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        line(atNanos, "shown", slot, serial);
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        line(atNanos, "moved", slot, from, untilNanos, to);
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        line(atNanos, "control-moved", control, serial, value);
    }

    @Override
    public void sampled(long atNanos, int control, int serial) {
        line(atNanos, "sampled", control, serial);
    }

    @Override
    public void receivedWrong(long atNanos, int receiver, int talker, int transaction) {
        line(atNanos, "received-wrong", receiver, talker, transaction);
    }

    @Override
    public void phantom(long atNanos, int receiver, int chars) {
        line(atNanos, "phantom", receiver, chars);
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        line(atNanos, "reset", node, readyNanos);
    }

    @Override
    public void nodeStatus(
            long atNanos, int node, int boots, int receiveErrors, long longestLoopNanos, long refreshes) {
        line(atNanos, "node-status", node, boots, receiveErrors, longestLoopNanos, refreshes);
    }
}
