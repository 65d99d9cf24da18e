package dropline.harness.bench;

import dropline.bus.clock.UartClock;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Segment;
import dropline.harness.link.Link;
import dropline.harness.live.Asking;
import dropline.harness.verdict.Outcome;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One board on a link, and what has been found out about it. */
final class Bench {
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

    Bench(Subject subject, Link link, long floorNanos, Thoroughness thoroughness) {
        this.subject = subject;
        this.link = link;
        this.thoroughness = thoroughness;
        this.floorNanos = link.isExact() ? 0 : floorNanos;
        segment = subject.on();
        wire = subject.wire();
        asking = new Asking(segment, subject.all(), link);
        long charNanos = UartClock.exact(segment.baud()).charsNanos(segment.format(), 1);
        long pauseNanos = Math.max(segment.controller().gapNanos(), segment.silenceNanos());
        restNanos = Math.max(pauseNanos, 4 * charNanos) + this.floorNanos;
    }

    Subject subject() {
        return subject;
    }

    Segment segment() {
        return segment;
    }

    Link link() {
        return link;
    }

    Asking asking() {
        return asking;
    }

    Thoroughness thoroughness() {
        return thoroughness;
    }

    /** What the link may add to an instant, ns. */
    long floorNanos() {
        return floorNanos;
    }

    /** A pause after which everybody may be spoken to, ns. */
    long restNanos() {
        return restNanos;
    }

    List<Item> items() {
        return items;
    }

    /** What it said of itself in its replies, in order. */
    List<NodeStatus> statuses() {
        return statuses;
    }

    /** Its address. */
    int address() {
        return wire.address();
    }

    /** How long to wait for an answer, ns. */
    long timeOut() {
        return segment.controller().timeOutNanos() + floorNanos;
    }

    /** Polls it, and rests. */
    Asking.Outcome poll() throws IOException {
        Asking.Outcome outcome = asking.poll(wire, timeOut());
        Asking.Came reply = outcome.replyOf(wire.address());
        if (reply != null && reply.heard().status() != null) {
            statuses.add(reply.heard().status());
        }
        asking.rest(restNanos);
        return outcome;
    }

    /** Whether it has answered. */
    boolean isAnswered(Asking.Outcome outcome) {
        return outcome.replyOf(wire.address()) != null;
    }

    /** An item that is a pass or a failure; what fails looks like these faults. */
    void item(String name, boolean well, String says, int trials, FaultKind... suspects) {
        items.add(new Item(
                name, well ? Outcome.PASS : Outcome.FAIL, says, trials, null, well ? List.of() : words(suspects)));
    }

    /** An item that this link, or this protocol, cannot tell. */
    void undecided(String name, String says) {
        items.add(new Item(name, Outcome.UNDECIDED, says, 0, null, List.of()));
    }

    private static List<String> words(FaultKind... kinds) {
        return Arrays.stream(kinds).map(FaultKind::word).toList();
    }

    /** An item that is a matter of time: at most, or at least, the limit. */
    void timed(String name, long value, long limit, boolean atLeast, String says, int trials, FaultKind... suspects) {
        // what the link adds makes things look later than they are, never sooner
        boolean well = atLeast ? value - floorNanos >= limit : value <= limit;
        boolean ill = atLeast ? value < limit : value - floorNanos > limit;
        Outcome outcome = well ? Outcome.PASS : ill ? Outcome.FAIL : Outcome.UNDECIDED;
        items.add(new Item(
                name,
                outcome,
                says,
                trials,
                new Item.Measure(value, limit, atLeast, floorNanos),
                ill ? words(suspects) : List.of()));
    }
}
