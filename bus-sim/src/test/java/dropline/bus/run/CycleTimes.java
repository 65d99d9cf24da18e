package dropline.bus.run;

import dropline.bus.trace.TraceSink;

/** Measures the poll cycles of one segment. */
final class CycleTimes implements TraceSink {
    private long firstNanos = -1;
    private long lastNanos;
    private long cycles;

    @Override
    public void cycleStarted(long atNanos, int cycle) {
        if (firstNanos < 0) {
            firstNanos = atNanos;
        } else {
            cycles++;
        }
        lastNanos = atNanos;
    }

    double meanNanos() {
        return (double) (lastNanos - firstNanos) / cycles;
    }
}
