package dropline.harness.bench;

import dropline.harness.link.Link;
import java.io.IOException;
import java.util.OptionalLong;
import java.util.function.DoubleConsumer;

/**
 * Examines one board over a link. A limit that is tighter than what the link may add to an instant is undecided, never
 * passed.
 */
public final class Examination {
    private final Bench bench;

    /**
     * @param floorNanos what the link may add to an instant, ns: measured, or a guess; of no account on an exact link
     */
    public Examination(Subject subject, Link link, long floorNanos, Thoroughness thoroughness) {
        bench = new Bench(subject, link, floorNanos, thoroughness);
    }

    /**
     * Does all of it.
     *
     * @param progress hears what share is done
     * @throws IOException if the link is gone for good
     */
    public BenchResult run(DoubleConsumer progress) throws IOException {
        Answering answering = new Answering(bench);
        Gaps gaps = new Gaps();
        OptionalLong tail = OptionalLong.empty();
        if (answering.answers()) {
            progress.accept(0.05);
            gaps = answering.gaps();
            progress.accept(0.2);
            new Keeping(bench).silence();
            progress.accept(0.4);
            Sharing sharing = new Sharing(bench);
            sharing.bursts();
            tail = sharing.releaseTail();
            sharing.amongOthers();
            progress.accept(0.6);
            Lasting lasting = new Lasting(bench);
            lasting.soak(progress);
            lasting.status();
        }
        String name = bench.subject().name();
        Passport passport =
                new Passport(name, gaps.count(), gaps.least(), gaps.half(), gaps.most(), bench.floorNanos(), tail);
        return new BenchResult(name, bench.link().where(), bench.floorNanos(), bench.items(), passport);
    }
}
