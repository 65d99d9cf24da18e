package dropline.harness.bench;

import dropline.harness.link.Link;
import dropline.protocol.FirmwareVersion;
import java.io.IOException;
import java.util.OptionalLong;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Examines one board over a link. A limit that is tighter than what the link may add to an instant is undecided, never
 * passed.
 */
public final class Examination {
    private final Bench bench;
    private final @Nullable Traffic traffic;
    private final @Nullable Inside inside;

    /**
     * @param traffic played around it; null for none
     * @param inside looks into it, where it is emulated; null where it is not
     * @param floorNanos what the link may add to an instant, ns: measured, or a guess; of no account on an exact link
     */
    public Examination(
            Subject subject,
            Link link,
            long floorNanos,
            Thoroughness thoroughness,
            @Nullable Traffic traffic,
            @Nullable Inside inside) {
        this.traffic = traffic;
        this.inside = inside;
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
        OptionalLong boot = OptionalLong.empty();
        FirmwareVersion firmware = null;
        if (answering.answers()) {
            progress.accept(0.05);
            firmware = answering.identity();
            gaps = answering.gaps();
            answering.pauses();
            answering.lengths();
            progress.accept(0.2);
            new Keeping(bench).silence();
            progress.accept(0.4);
            Sharing sharing = new Sharing(bench);
            sharing.bursts();
            tail = sharing.releaseTail();
            sharing.amongOthers();
            if (traffic != null) {
                traffic.play(bench);
            }
            Telling telling = new Telling(bench);
            telling.moved();
            progress.accept(0.6);
            Lasting lasting = new Lasting(bench);
            lasting.soak(telling, progress);
            telling.still();
            lasting.status();
            Bearing bearing = new Bearing(bench);
            bearing.rates();
            boot = bearing.restart();
        }
        if (inside != null) {
            inside.tell(bench);
        }
        String name = bench.subject().name();
        Passport passport = new Passport(
                name, gaps.count(), gaps.least(), gaps.half(), gaps.most(), bench.floorNanos(), tail, boot, firmware);
        return new BenchResult(name, bench.link().where(), bench.floorNanos(), bench.items(), gaps.sorted(), passport);
    }
}
