package dropline.harness.bench;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.capture.CaptureSink;
import dropline.harness.capture.Captures;
import dropline.harness.capture.DriverChange;
import dropline.harness.capture.SentFrame;
import dropline.harness.capture.Stretch;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.WatchedRun;
import dropline.harness.verdict.Words;
import dropline.protocol.Bytes;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** What is said on a board's segment while a flight is played: all of it but its own replies. */
public final class Traffic {
    private static final double LONGER_WORTH_TELLING = 1.02;

    /** Something that is said, and whether the board examined is to answer it. */
    private record Said(long atNanos, boolean isToIt, Bytes bytes) {}

    private final List<Said> said = new ArrayList<>();
    private long lastsNanos;

    private Traffic() {}

    /**
     * Simulates the pit.
     *
     * @param flight opens what is played
     * @param mostNanos only so much of it, ns
     */
    public static Traffic of(Subject subject, Source.Opening flight, long seed, long mostNanos) throws IOException {
        Pit pit = subject.pit();
        int own = own(subject);
        Traffic traffic = new Traffic();
        CaptureSink all = new CaptureSink() {
            @Override
            public void take(int segment, List<SentFrame> frames, List<DriverChange> drivers) {
                if (segment == subject.segment()) {
                    frames.forEach(frame -> traffic.add(frame, own));
                }
            }

            @Override
            public void reached(long horizonNanos) {
                // they are kept as they come
            }

            @Override
            public void close() {
                // nothing is held open
            }
        };
        Captures captures = new Captures(pit, new Stretch(0, mostNanos), List.of(all));
        WatchedRun.Ran ran =
                new WatchedRun(pit, flight, seed, List.of(), 1).run(captures.watchers(), captures, Progress.NONE);
        traffic.lastsNanos = ran.durationNanos();
        return traffic;
    }

    /** Its index in the layout. */
    private static int own(Subject subject) {
        List<Layout.NodePlace> places = Layout.of(subject.pit()).nodes();
        for (int n = 0; n < places.size(); n++) {
            if (places.get(n).node().name().equals(subject.name())) {
                return n;
            }
        }
        throw new AssertionError(subject);
    }

    private void add(SentFrame frame, int node) {
        if (frame.talker() != node) {
            boolean isToIt = frame.kind() == TraceSink.REQUEST && frame.node() == node;
            said.add(new Said(frame.startNanos(), isToIt, frame.bytes()));
        }
    }

    /**
     * Plays it around the board: what comes late makes the rest late too, so that no gap is shorter than in the pit.
     */
    void play(Bench bench) throws IOException {
        long shift = said.isEmpty()
                ? 0
                : bench.link().now() + bench.restNanos() - said.get(0).atNanos();
        long planned = shift;
        int asked = 0;
        int missed = 0;
        for (Said one : said) {
            bench.asking().rest(Math.max(0, one.atNanos() + shift - bench.link().now()));
            shift = bench.link().now() - one.atNanos();
            if (one.isToIt()) {
                asked++;
                missed += bench.isAnswered(bench.asking().say(one.bytes(), bench.address(), bench.timeOut())) ? 0 : 1;
            } else {
                bench.asking().say(one.bytes(), -1, 0);
            }
        }
        bench.asking().rest(bench.restNanos());
        if (asked == 0) {
            bench.undecided("pit-traffic", "the recording ends before it is polled");
            return;
        }
        bench.item(
                "pit-traffic",
                missed == 0,
                "misses " + missed + " of " + asked + " polls amid " + Words.time(lastsNanos) + " of the pit's traffic"
                        + (bench.link().isExact() ? "" : longer(shift - planned)),
                asked,
                FaultKind.EAVESDROPPER,
                FaultKind.RING_OVERRUN,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.COMMON_WIRE_LIFTED);
    }

    private String longer(long lateNanos) {
        double factor = 1 + (double) lateNanos / lastsNanos;
        return factor < LONGER_WORTH_TELLING
                ? ""
                : ", which took " + Words.time(lastsNanos + lateNanos) + " over this link: gaps were longer than in"
                        + " the pit";
    }
}
