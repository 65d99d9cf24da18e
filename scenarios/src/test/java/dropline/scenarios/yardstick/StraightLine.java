package dropline.scenarios.yardstick;

/**
 * The reference bus as one loop that knows what comes next: no events, no objects, nothing that could go wrong. It
 * serves as the practical limit.
 */
final class StraightLine implements Model {
    private final long seed;

    StraightLine(long seed) {
        this.seed = seed;
    }

    @Override
    public Result run(long seconds) {
        ReferenceBus bus = new ReferenceBus(seed);
        Figures figures = new Figures();
        Waiting waiting = new Waiting();
        long end = seconds * 1_000_000_000L;
        long stateAt = ReferenceBus.STATE_NANOS;
        long at = 0;
        int poll = 0;
        int node = 0;
        while (at < end) {
            while (stateAt <= at) {
                waiting.change(stateAt, figures);
                figures.stateSent(stateAt);
                stateAt += ReferenceBus.STATE_NANOS;
            }
            while (!waiting.isEmpty()) {
                int count = waiting.take();
                long takes = ReferenceBus.stateNanos(count);
                figures.frame(takes);
                long heard = at + takes - ReferenceBus.HALF_BIT_NANOS;
                for (int i = 0; i < count; i++) {
                    figures.shown(waiting.picked[i], heard);
                }
                at += takes + ReferenceBus.CONTROLLER_GAP_NANOS;
            }
            if (node == 0) {
                figures.cycleStarted(at);
            }
            poll++;
            long gap = bus.gapNanos(node, poll);
            long reply = bus.replyNanos(node, poll);
            figures.frame(ReferenceBus.REQUEST_NANOS);
            figures.frame(reply);
            figures.answered(node, gap);
            at += ReferenceBus.REQUEST_NANOS + gap + reply + ReferenceBus.CONTROLLER_GAP_NANOS;
            node = node + 1 == ReferenceBus.NODES ? 0 : node + 1;
        }
        if (Double.isNaN(figures.rest())) {
            throw new IllegalStateException("a figure is missing");
        }
        return figures.result();
    }
}
