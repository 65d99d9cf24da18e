package dropline.harness.bench;

import dropline.bus.fault.FaultKind;
import dropline.harness.live.Asking;
import dropline.protocol.Bytes;
import java.io.IOException;
import java.util.List;

/** Whether it keeps silent when others are spoken to, and bears damage and noise. */
final class Keeping {
    private final Bench bench;

    Keeping(Bench bench) {
        this.bench = bench;
    }

    void silence() throws IOException {
        Bytes own = bench.asking().pollOf(bench.subject().wire());
        probe(
                "silent-to-others",
                Probe.toAnother(bench.asking(), bench.subject()),
                FaultKind.ANSWERS_ANOTHER,
                FaultKind.DUPLICATE_ADDRESS);
        probe("silent-to-all", Probe.toAll(bench.subject()), FaultKind.ANSWERS_ANOTHER);
        probe("silent-to-damage", Probe.damaged(own), FaultKind.ANSWERS_ANOTHER);
        probe("silent-to-noise", Probe.noise(), FaultKind.BABBLING_NODE);
        probe("silent-unasked", List.of(Bytes.of()), FaultKind.BABBLING_NODE, FaultKind.STUCK_DRIVER);
        withNoiseAround(own);
    }

    private void probe(String name, List<Bytes> said, FaultKind... suspects) throws IOException {
        int answered = 0;
        int lost = 0;
        int trials = 0;
        for (int i = 0; i < bench.thoroughness().probes; i++) {
            for (Bytes bytes : said) {
                Asking.Outcome outcome = bench.asking().say(bytes, -1, bench.timeOut());
                answered += outcome.bytes() > 0 ? 1 : 0;
                bench.asking().rest(bench.restNanos());
                // damage may leave half a frame behind, which the next one ends
                boolean at = bench.isAnswered(bench.poll());
                boolean well = at || bench.isAnswered(bench.poll());
                lost += well ? 0 : 1;
                trials++;
            }
        }
        String says = answered == 0 && lost == 0
                ? "says nothing, and answers the next poll"
                : (answered > 0 ? "something was said " + answered + " times" : "says nothing")
                        + (lost > 0 ? "; " + lost + " times it did not answer the next polls" : "");
        bench.item(name, answered == 0 && lost == 0, says, trials, suspects);
    }

    /** Zeros and ones before a poll. */
    private void withNoiseAround(Bytes own) throws IOException {
        int lost = 0;
        int trials = 0;
        for (Bytes before : Probe.before(bench.segment())) {
            for (int i = 0; i < bench.thoroughness().probes; i++) {
                bench.asking().say(before, -1, bench.restNanos());
                bench.asking().rest(bench.restNanos());
                lost += bench.isAnswered(bench.asking().say(own, bench.address(), bench.timeOut())) ? 0 : 1;
                bench.asking().rest(bench.restNanos());
                trials++;
            }
        }
        bench.item(
                "hears-after-noise",
                lost == 0,
                "misses " + lost + " of " + trials + " polls that noise comes before",
                trials,
                FaultKind.RING_OVERRUN,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT);
    }
}
