package dropline.harness.cli;

import dropline.harness.replay.Progress;
import java.io.PrintWriter;
import java.util.function.LongSupplier;

/**
 * One line on a terminal that says how far a replay is, how fast it goes and how long it will take; erased at its end.
 */
final class ProgressBar implements Progress {
    private static final int CELLS = 24;
    private static final long UPDATE_NANOS = 100_000_000L;
    private static final int LINE = 78;

    private final PrintWriter err;
    private final LongSupplier clockNanos;
    private final long startNanos;
    private long shownNanos;
    private boolean shown;
    private double lastShare;
    private long playedNanos;
    private long lastReachedNanos;

    /** Reads the time from {@code clockNanos}. */
    ProgressBar(PrintWriter err, LongSupplier clockNanos) {
        this.err = err;
        this.clockNanos = clockNanos;
        this.startNanos = clockNanos.getAsLong();
        this.shownNanos = startNanos;
    }

    /** A bar where a person watches, nothing elsewhere. */
    static Progress on(Console console) {
        return console.terminal() ? new ProgressBar(console.err(), System::nanoTime) : Progress.NONE;
    }

    /** Erases a bar that was shown. */
    static void end(Progress progress) {
        if (progress instanceof ProgressBar bar) {
            bar.erase();
        }
    }

    @Override
    public void reached(long reachedNanos, double share) {
        playedNanos += reachedNanos >= lastReachedNanos ? reachedNanos - lastReachedNanos : reachedNanos;
        lastReachedNanos = reachedNanos;
        lastShare = Math.max(lastShare, Math.min(1, share));
        long now = clockNanos.getAsLong();
        if (now - shownNanos >= UPDATE_NANOS) {
            shownNanos = now;
            shown = true;
            String line = line(now - startNanos);
            err.print("\r" + line + " ".repeat(Math.max(0, LINE - line.length())));
            err.flush();
        }
    }

    private String line(long wallNanos) {
        int full = (int) Math.round(lastShare * CELLS);
        long rate = playedNanos / Math.max(1, wallNanos);
        long left = lastShare > 0 ? Math.round(wallNanos / 1e9 * (1 - lastShare) / lastShare) : 0;
        return "[" + "=".repeat(full) + " ".repeat(CELLS - full) + "] " + Math.round(lastShare * 100) + "%, "
                + (rate == 0 ? "" : rate + " times as fast as life, ") + left + " s left";
    }

    private void erase() {
        if (shown) {
            err.print("\r" + " ".repeat(LINE) + "\r");
            err.flush();
        }
    }
}
