package dropline.bus.run;

import static dropline.bus.Pits.MILLI;

import dropline.bus.Pits;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.trace.TraceSink;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** Values that come to wait as a Poisson stream at each of some nodes; how long they wait, how old what is shown is. */
final class QueueRun implements TraceSink {
    private static final long SEED = 5;
    private static final int BATCHES = 40;
    private static final double UNIT = MILLI;

    /** Alike nodes on one segment, each with so many signals. */
    record Queues(
            int nodes,
            int signals,
            Controller.StateDelivery delivery,
            int baud,
            Sized sized,
            Profile profile,
            long gapNanos,
            long timeOutNanos) {}

    /** The mean of a run, and the standard error of it, in units. */
    record Means(double mean, double standardError) {
        static Means of(double[] batches) {
            double sum = 0;
            double squares = 0;
            for (double batch : batches) {
                sum += batch;
                squares += batch * batch;
            }
            int count = batches.length;
            double mean = sum / count;
            return new Means(mean, Math.sqrt((squares / count - mean * mean) / (count - 1)));
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%.4f +- %.4f", mean, standardError);
        }
    }

    private final Queues queues;
    private final double rate;
    private final long[] arrived;
    private final SplittableRandom random = new SplittableRandom(SEED);
    private final int[] next;
    private double arrivalNanos;
    private double serviceNanos;
    private long frameNanos = -1;
    private int inFrame;
    private long shownNanos;
    private long shownArrived;
    private double waited;
    private double aged;
    private double peaked;
    private long count;
    private final double[] waits = new double[BATCHES];
    private final double[] ages = new double[BATCHES];
    private final double[] peaks = new double[BATCHES];

    /** @param rate arrivals in a unit at each node */
    QueueRun(Queues queues, double rate) {
        this.queues = queues;
        this.rate = rate;
        arrived = new long[queues.nodes * queues.signals];
        next = new int[queues.nodes];
    }

    /**
     * Runs one batch to settle and then those that count.
     *
     * @param service what a value's own characters take, in units
     */
    void run(double service, int secondsABatch) {
        serviceNanos = service * UNIT;
        SegmentRun run = new SegmentRun(pit(), 0, SEED, List.of(), this);
        StateBlock block = new StateBlock();
        long now = 0;
        for (int batch = -1; batch < BATCHES; batch++) {
            waited = 0;
            aged = 0;
            peaked = 0;
            count = 0;
            long begun = shownNanos;
            for (int second = 0; second < secondsABatch; second++) {
                now += 1000 * MILLI;
                fill(block, now);
                run.offer(block);
                run.advanceTo(now);
            }
            if (batch >= 0) {
                waits[batch] = waited / count / UNIT;
                ages[batch] = aged / (shownNanos - begun) / UNIT;
                peaks[batch] = peaked / count / UNIT;
            }
        }
    }

    /** From a value's coming to wait to its own characters, after those of values before it in its frame. */
    Means waits() {
        return Means.of(waits);
    }

    /** How old the newest value shown is, over time. */
    Means ages() {
        return Means.of(ages);
    }

    /** The age just before each value is shown. */
    Means peaks() {
        return Means.of(peaks);
    }

    private void fill(StateBlock block, long untilNanos) {
        block.clear();
        while (arrivalNanos < untilNanos) {
            if (arrivalNanos > 0) {
                int node = random.nextInt(queues.nodes);
                int signal = node * queues.signals + next[node];
                next[node] = (next[node] + 1) % queues.signals;
                block.addRow((long) arrivalNanos);
                block.addChange(signal, random.nextInt(1000));
            }
            arrivalNanos -= Math.log1p(-random.nextDouble()) * UNIT / (rate * queues.nodes);
        }
    }

    private Pit pit() {
        List<Signal> signals = new ArrayList<>();
        List<Node> nodes = new ArrayList<>();
        for (int n = 0; n < queues.nodes; n++) {
            List<Indicator> lamps = new ArrayList<>();
            for (int s = 0; s < queues.signals; s++) {
                lamps.add(Pits.lamp(signals.size()));
                signals.add(Pits.signal(signals.size(), false));
            }
            nodes.add(Pits.node("node" + n, n + 1, queues.profile, lamps, List.of()));
        }
        Controller controller = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                queues.delivery,
                queues.timeOutNanos,
                0,
                0,
                0,
                queues.gapNanos,
                0,
                0,
                0,
                0);
        Segment segment =
                new Segment("queue", queues.baud, CharacterFormat.EIGHT_N_ONE, queues.sized, controller, nodes, true);
        return new Pit("queue", 0, null, signals, List.of(segment));
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        arrived[signal] = atNanos;
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        inFrame = atNanos == frameNanos ? inFrame + 1 : 0;
        frameNanos = atNanos;
        waited += atNanos - arrived[signal] + inFrame * serviceNanos;
        count++;
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        double before = shownNanos - shownArrived;
        double after = atNanos - shownArrived;
        aged += (after * after - before * before) / 2;
        peaked += after;
        shownNanos = atNanos;
        shownArrived = arrived[slot];
    }
}
