package dropline.harness.bench;

import dropline.bus.clock.UartClock;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Segment;
import dropline.harness.link.Link;
import dropline.harness.live.Asking;
import dropline.harness.live.Asking.Came;
import dropline.harness.live.Asking.Outcome;
import dropline.harness.verdict.Words;
import dropline.protocol.Bytes;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.DoubleConsumer;

/**
 * Examines one board over a link. A limit that is tighter than what the link may add to an instant is undecided, never
 * passed.
 */
public final class Examination {
    private static final int FIRST_POLLS = 20;
    private static final long BOOT_NANOS = 3_000_000_000L;

    /** Share of the time-out that an answer may take. */
    private static final double MOST_OF_TIME_OUT = 0.8;

    private final Subject subject;
    private final Segment segment;
    private final NodeWire wire;
    private final Link link;
    private final Asking asking;
    private final Thoroughness thoroughness;
    private final long floorNanos;
    private final long restNanos;
    private final List<Item> items = new ArrayList<>();
    private final List<NodeStatus> statuses = new ArrayList<>();

    /**
     * @param floorNanos what the link may add to an instant, ns: measured by 'dropline adapter', or a guess; 0 for an
     *     exact link
     */
    public Examination(Subject subject, Link link, long floorNanos, Thoroughness thoroughness) {
        this.subject = subject;
        this.link = link;
        this.thoroughness = thoroughness;
        this.floorNanos = link.isExact() ? 0 : floorNanos;
        segment = subject.on();
        wire = subject.wire();
        asking = new Asking(segment, subject.all(), link);
        long charNanos = UartClock.exact(segment.baud()).charsNanos(segment.format(), 1);
        restNanos = Math.max(Math.max(segment.controller().gapNanos(), segment.silenceNanos()), 4 * charNanos)
                + this.floorNanos;
    }

    /**
     * Does all of it.
     *
     * @param progress hears what share is done
     * @throws IOException if the link is gone for good
     */
    public BenchResult run(DoubleConsumer progress) throws IOException {
        Gaps gaps = new Gaps();
        OptionalLong tail = OptionalLong.empty();
        if (answers()) {
            progress.accept(0.05);
            gaps = gaps();
            progress.accept(0.2);
            silence();
            bursts();
            progress.accept(0.4);
            tail = releaseTail();
            amongOthers();
            progress.accept(0.6);
            soak(progress);
            status();
        }
        Passport passport =
                new Passport(subject.name(), gaps.count(), gaps.least(), gaps.half(), gaps.most(), floorNanos, tail);
        return new BenchResult(subject.name(), link.where(), floorNanos, items, passport);
    }

    private long timeOut() {
        return segment.controller().timeOutNanos() + floorNanos;
    }

    private Outcome poll() throws IOException {
        Outcome outcome = asking.poll(wire, timeOut());
        Came reply = outcome.replyOf(wire.address());
        if (reply != null && reply.heard().status() != null) {
            statuses.add(reply.heard().status());
        }
        asking.rest(restNanos);
        return outcome;
    }

    private boolean isAnswered(Outcome outcome) {
        return outcome.replyOf(wire.address()) != null;
    }

    private void item(String name, boolean well, String says, int trials, FaultKind... suspects) {
        items.add(new Item(
                name,
                well ? dropline.harness.verdict.Outcome.PASS : dropline.harness.verdict.Outcome.FAIL,
                says,
                trials,
                null,
                well ? List.of() : words(suspects)));
    }

    private void undecided(String name, String says) {
        items.add(new Item(name, dropline.harness.verdict.Outcome.UNDECIDED, says, 0, null, List.of()));
    }

    private static List<String> words(FaultKind... kinds) {
        return Arrays.stream(kinds).map(FaultKind::word).toList();
    }

    // --- whether it is there

    private boolean answers() throws IOException {
        int answered = 0;
        int bytes = 0;
        long until = link.now() + BOOT_NANOS;
        while (link.now() < until && answered == 0) {
            answered = isAnswered(poll()) ? 1 : 0;
        }
        answered = 0;
        for (int i = 0; i < FIRST_POLLS; i++) {
            Outcome outcome = poll();
            answered += isAnswered(outcome) ? 1 : 0;
            bytes += isAnswered(outcome) ? 0 : outcome.bytes();
        }
        String says = "answers " + answered + " of " + FIRST_POLLS + " polls"
                + (bytes > 0 ? "; something comes back that is no sound reply" : "");
        if (bytes > 0) {
            item(
                    "answers",
                    answered == FIRST_POLLS,
                    says,
                    FIRST_POLLS,
                    FaultKind.DRIVER_ENABLED_LATE,
                    FaultKind.DRIVER_RELEASED_EARLY,
                    FaultKind.WRONG_BAUD,
                    FaultKind.CLOCK_OFF,
                    FaultKind.BABBLING_NODE,
                    FaultKind.STUCK_DRIVER,
                    FaultKind.DUPLICATE_ADDRESS);
        } else {
            item(
                    "answers",
                    answered == FIRST_POLLS,
                    says,
                    FIRST_POLLS,
                    FaultKind.DEAD_NODE,
                    FaultKind.WRONG_BAUD,
                    FaultKind.CLOCK_OFF,
                    FaultKind.SWAPPED_PAIR,
                    FaultKind.DUPLICATE_ADDRESS,
                    FaultKind.LOOP_STALL,
                    FaultKind.BLACKOUT,
                    FaultKind.RESET,
                    FaultKind.EAVESDROPPER,
                    FaultKind.FLOATING_RECEIVER,
                    FaultKind.COMMON_WIRE_LIFTED);
        }
        return answered > 0;
    }

    // --- how soon

    private Gaps gaps() throws IOException {
        Gaps gaps = new Gaps();
        int missed = 0;
        for (int i = 0; i < thoroughness.gaps; i++) {
            Outcome outcome = poll();
            Came reply = outcome.replyOf(wire.address());
            if (reply == null) {
                missed++;
            } else {
                gaps.add(reply.startNanos() - outcome.saidUntilNanos(), reply.endNanos() - outcome.saidUntilNanos());
            }
        }
        long limit = Math.round(segment.controller().timeOutNanos() * MOST_OF_TIME_OUT);
        String says = "its answer was there after " + Words.time(gaps.slowest()) + " at most, reply gaps "
                + gaps.words() + (missed == 0 ? "" : "; " + missed + " polls were not answered");
        items.add(timed(
                "answer-in-time",
                missed > 0 ? Math.max(gaps.slowest(), limit + floorNanos + 1) : gaps.slowest(),
                limit,
                false,
                says,
                thoroughness.gaps,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.RESET,
                FaultKind.DRIVER_ENABLED_LATE,
                FaultKind.DRIVER_RELEASED_EARLY,
                FaultKind.CLOCK_OFF));
        long least = Math.max(segment.controller().releaseTailNanos(), segment.silenceNanos());
        items.add(timed(
                "not-too-soon",
                gaps.least(),
                least,
                true,
                "its soonest reply began " + Words.time(Math.max(0, gaps.least()))
                        + " after the request; the controller's driver may be on for "
                        + Words.time(least),
                gaps.count(),
                FaultKind.REPLY_TOO_SOON));
        return gaps;
    }

    private Item timed(
            String name, long value, long limit, boolean atLeast, String says, int trials, FaultKind... suspects) {
        // what the link adds makes things look later than they are, never sooner
        boolean well = atLeast ? value - floorNanos >= limit : value <= limit;
        boolean ill = atLeast ? value < limit : value - floorNanos > limit;
        dropline.harness.verdict.Outcome outcome = well
                ? dropline.harness.verdict.Outcome.PASS
                : ill ? dropline.harness.verdict.Outcome.FAIL : dropline.harness.verdict.Outcome.UNDECIDED;
        return new Item(
                name,
                outcome,
                says,
                trials,
                new Item.Measure(value, limit, atLeast, floorNanos),
                ill ? words(suspects) : List.of());
    }

    // --- what it must not answer

    private void silence() throws IOException {
        Bytes own = asking.pollOf(wire);
        probe(
                "silent-to-others",
                Probe.toAnother(asking, subject),
                FaultKind.ANSWERS_ANOTHER,
                FaultKind.DUPLICATE_ADDRESS);
        probe("silent-to-all", Probe.toAll(subject), FaultKind.ANSWERS_ANOTHER);
        probe("silent-to-damage", Probe.damaged(own), FaultKind.ANSWERS_ANOTHER);
        probe("silent-to-noise", Probe.noise(), FaultKind.BABBLING_NODE);
        probe("silent-unasked", List.of(Bytes.of()), FaultKind.BABBLING_NODE, FaultKind.STUCK_DRIVER);
        withNoiseAround(own);
    }

    private void probe(String name, List<Bytes> said, FaultKind... suspects) throws IOException {
        int answered = 0;
        int lost = 0;
        int trials = 0;
        for (int i = 0; i < thoroughness.probes; i++) {
            for (Bytes bytes : said) {
                Outcome outcome = asking.say(bytes, -1, timeOut());
                answered += outcome.bytes() > 0 ? 1 : 0;
                asking.rest(restNanos);
                // damage may leave half a frame behind, which the next one ends
                boolean well = isAnswered(poll()) || isAnswered(poll());
                lost += well ? 0 : 1;
                trials++;
            }
        }
        String says = answered == 0 && lost == 0
                ? "says nothing, and answers the next poll"
                : (answered > 0 ? "something was said " + answered + " times" : "says nothing")
                        + (lost > 0 ? "; " + lost + " times it did not answer the next polls" : "");
        item(name, answered == 0 && lost == 0, says, trials, suspects);
    }

    /** Zeros and ones before a poll. */
    private void withNoiseAround(Bytes own) throws IOException {
        int lost = 0;
        int trials = 0;
        for (Bytes before : Probe.before(segment)) {
            for (int i = 0; i < thoroughness.probes; i++) {
                asking.say(before, -1, restNanos);
                asking.rest(restNanos);
                lost += isAnswered(asking.say(own, wire.address(), timeOut())) ? 0 : 1;
                asking.rest(restNanos);
                trials++;
            }
        }
        item(
                "hears-after-noise",
                lost == 0,
                "misses " + lost + " of " + trials + " polls that noise comes before",
                trials,
                FaultKind.RING_OVERRUN,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT);
    }

    // --- what comes all at once

    private void bursts() throws IOException {
        int held = -1;
        int failed = -1;
        int[] lengths = {1, 2, 4, 8};
        for (int frames : lengths) {
            Bytes burst = Probe.burst(asking, subject, frames);
            boolean well = true;
            for (int i = 0; i < thoroughness.probes; i++) {
                well &= isAnswered(asking.say(burst, wire.address(), timeOut()));
                asking.rest(restNanos);
            }
            if (well && failed < 0) {
                held = burst.length();
            } else if (failed < 0) {
                failed = burst.length();
            }
        }
        boolean separate = segment.silenceNanos() > 0;
        if (separate) {
            undecided("back-to-back", "frames of this protocol never come without a silence between them");
            return;
        }
        item(
                "back-to-back",
                failed < 0,
                failed < 0
                        ? "answers a poll that follows " + held + " characters for others without a pause"
                        : "misses a poll at the end of " + failed + " characters without a pause",
                lengths.length * thoroughness.probes,
                FaultKind.RING_OVERRUN,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.EAVESDROPPER);
    }

    // --- when it lets go

    /** The least gap after its reply at which the next poll is answered: its driver is off by then. */
    private OptionalLong releaseTail() throws IOException {
        if (!link.isExact()) {
            undecided("lets-go", "where a start bit falls cannot be chosen over " + link.where());
            return OptionalLong.empty();
        }
        long half = UartClock.exact(segment.baud()).halfBitsNanos(1) + 1;
        long low = 0;
        long high = Math.max(20_000_000L, 4 * segment.controller().gapNanos());
        if (!isHeardAfter(high)) {
            item(
                    "lets-go",
                    false,
                    "a poll that comes " + Words.time(high) + " after its reply is lost",
                    thoroughness.probes,
                    FaultKind.DRIVER_RELEASED_LATE,
                    FaultKind.FLOATING_RECEIVER);
            return OptionalLong.empty();
        }
        while (high - low > 500) {
            long middle = (low + high) / 2;
            if (isHeardAfter(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        long limit = Math.max(
                segment.controller().gapNanos() + segment.controller().enableLeadNanos(), segment.silenceNanos());
        items.add(timed(
                "lets-go",
                Math.max(0, high - half),
                limit,
                false,
                "polls are heard from " + Words.time(Math.max(0, high - half))
                        + " after its reply on; the controller begins after "
                        + Words.time(limit),
                thoroughness.probes,
                FaultKind.DRIVER_RELEASED_LATE,
                FaultKind.FLOATING_RECEIVER));
        return OptionalLong.of(Math.max(0, high - half));
    }

    private boolean isHeardAfter(long nanos) throws IOException {
        int heard = 0;
        for (int i = 0; i < thoroughness.probes; i++) {
            Outcome first = asking.poll(wire, timeOut());
            asking.rest(nanos);
            heard += isAnswered(first) && isAnswered(asking.poll(wire, timeOut())) ? 1 : 0;
            asking.rest(Math.max(restNanos, 5_000_000));
        }
        return heard * 10 >= thoroughness.probes * 9;
    }

    // --- among others

    /** A round of the segment's polls, the others' replies played. */
    private void amongOthers() throws IOException {
        List<NodeWire> others = subject.others();
        if (others.isEmpty()) {
            undecided("among-others", "it has its segment to itself");
            return;
        }
        int lost = 0;
        for (int i = 0; i < thoroughness.probes * 5; i++) {
            NodeWire other = others.get(i % others.size());
            asking.say(asking.pollOf(other), -1, restNanos);
            asking.say(Probe.replyOf(subject, other), -1, restNanos);
            asking.rest(restNanos);
            lost += isAnswered(poll()) ? 0 : 1;
        }
        item(
                "among-others",
                lost == 0,
                "misses " + lost + " of " + thoroughness.probes * 5 + " polls that come after another's reply",
                thoroughness.probes * 5,
                FaultKind.EAVESDROPPER,
                FaultKind.RING_OVERRUN,
                FaultKind.COMMON_WIRE_LIFTED);
    }

    // --- for long

    private void soak(DoubleConsumer progress) throws IOException {
        int lost = 0;
        int garbled = 0;
        for (int i = 0; i < thoroughness.soak; i++) {
            Outcome outcome = poll();
            if (!isAnswered(outcome)) {
                lost++;
                garbled += outcome.bytes() > 0 ? 1 : 0;
            }
            if (i % 100 == 0) {
                progress.accept(0.6 + 0.4 * i / thoroughness.soak);
            }
        }
        item(
                "soak",
                lost == 0,
                "misses " + lost + " of " + thoroughness.soak + " polls"
                        + (garbled > 0 ? ", " + garbled + " of them with a reply that was not sound" : ""),
                thoroughness.soak,
                FaultKind.RESET,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.BABBLING_NODE,
                FaultKind.DRIVER_ENABLED_LATE,
                FaultKind.DRIVER_RELEASED_EARLY,
                FaultKind.CLOCK_OFF,
                FaultKind.COMMON_WIRE_LIFTED,
                FaultKind.NOISE_BURST);
    }

    // --- what it says of itself

    private void status() {
        if (statuses.isEmpty()) {
            undecided("stays-up", "replies of this protocol do not say how their board fares");
            return;
        }
        NodeStatus first = statuses.get(0);
        NodeStatus last = statuses.get(statuses.size() - 1);
        int restarts = last.bootCount() - first.bootCount() & 0xFF;
        item(
                "stays-up",
                restarts == 0,
                restarts == 0 ? "did not restart" : "restarted " + restarts + " times while it was examined",
                statuses.size(),
                FaultKind.RESET,
                FaultKind.BROWN_OUT);
        boolean refreshes = subject.described().panels().stream()
                .flatMap(panel -> panel.indicators().stream())
                .anyMatch(indicator -> indicator.kind().refreshes());
        if (refreshes) {
            boolean moves =
                    last.refreshes() != statuses.get(statuses.size() / 2).refreshes()
                            || last.refreshes() != first.refreshes();
            item(
                    "display-runs",
                    moves,
                    moves ? "its display is refreshed" : "its count of display refreshes stands still",
                    statuses.size(),
                    FaultKind.FROZEN_DISPLAY);
        }
    }
}
