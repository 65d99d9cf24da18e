package dropline.harness.record;

import dropline.harness.report.Figures;
import dropline.harness.stream.State;
import dropline.harness.stream.StreamReader;
import java.io.Closeable;
import java.io.IOException;
import java.net.BindException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Catches one live stream. {@link #run} does all the work in the thread that calls it; the socket has a thread of its
 * own that does no more than put messages into a queue.
 */
public final class Recorder implements Closeable {
    private static final long SECOND = 1_000_000_000L;
    private static final long TICK = SECOND / 4;
    private static final int SHOWN = 10;
    private static final int EXAMPLES = 5;

    private final Intake intake;
    private final Arrivals arrivals;
    private final StreamReader reader;
    private final @Nullable Take take;
    private final Watcher watcher;
    private final LongSupplier clockNanos;
    private final StateTime time = new StateTime();
    private final SequenceCount sequence;
    private final List<String> brokenExamples = new ArrayList<>();
    private volatile boolean stopping;
    private @Nullable String guessed;
    private @Nullable IOException unwritable;
    private boolean ended;
    private SequenceCount.Place placed = SequenceCount.Place.NEWEST;
    private long read;
    private long broken;
    private long late;
    private long repeated;
    private long states;
    private long outages;
    private long receivedBefore;

    Recorder(
            Intake intake,
            Arrivals arrivals,
            StreamReader reader,
            @Nullable Take take,
            Watcher watcher,
            LongSupplier clockNanos) {
        this.intake = intake;
        this.arrivals = arrivals;
        this.reader = reader;
        this.take = take;
        this.watcher = watcher;
        this.clockNanos = clockNanos;
        this.sequence = new SequenceCount(reader.sequenceModulus());
    }

    /**
     * Opens file and socket; from then on nothing that arrives is missed.
     *
     * @throws RefusedException if the recording is there already, or the address cannot be used
     */
    public static Recorder open(Plan plan, Watcher watcher) throws IOException, RefusedException {
        StreamReader reader = plan.datagram() == null ? StreamReader.guessing() : StreamReader.of(plan.datagram());
        Arrivals arrivals = new Arrivals(Arrivals.USUAL_BYTES, System::nanoTime);
        Take take = plan.out() == null ? null : Take.begin(plan.out(), watcher::said);
        try {
            return new Recorder(intake(plan, arrivals), arrivals, reader, take, watcher, System::nanoTime);
        } catch (IOException | RefusedException | RuntimeException e) {
            if (take != null) {
                take.finish();
                take.close();
            }
            throw e;
        }
    }

    private static Intake intake(Plan plan, Arrivals arrivals) throws IOException, RefusedException {
        if (plan.tcp()) {
            return TcpIntake.open(plan.address(), arrivals, TcpIntake.USUAL_PATIENCE_MILLIS);
        }
        try {
            return UdpIntake.open(plan.address(), plan.forward(), arrivals);
        } catch (BindException e) {
            throw new RefusedException("cannot receive at " + plan.address().getHostString() + ":"
                    + plan.address().getPort() + ": " + e.getMessage() + ". Either another program receives there"
                    + " already (let the simulator send to another port, and pass on to that program with"
                    + " --forward), or this computer has no such address (0.0.0.0 stands for all it has)");
        }
    }

    /** The port it receives at; 0 where it receives at none. */
    public int port() {
        return intake.port();
    }

    /**
     * Records until it is asked to stop, the time is over, the stream has ended or the file cannot be written any more;
     * then completes the recording.
     *
     * @param forNanos for how long; counted from this call
     */
    public Ending run(long forNanos) throws InterruptedException {
        long start = clockNanos.getAsLong();
        long nextTick = start + TICK;
        int ticks = 0;
        while (unwritable == null && !ended) {
            long now = clockNanos.getAsLong();
            if (stopping || now - start >= forNanos) {
                break;
            }
            if (now - nextTick >= 0) {
                nextTick = now + TICK;
                tick(++ticks % 4 == 0);
            }
            Arrival next = arrivals.next(Math.min(nextTick - now, forNanos - (now - start)));
            if (next != null) {
                take(next);
            }
        }
        intake.close();
        takeWhatIsLeft();
        finish();
        return unwritable != null ? Ending.NOT_WRITABLE : ended ? Ending.STREAM_ENDED : Ending.ASKED;
    }

    /** Asks it to stop; may be called from any thread. What has arrived by then is still recorded. */
    public void stop() {
        stopping = true;
    }

    /** What has come of everything so far; exact once {@link #run} has returned. */
    public Tally tally() {
        List<String> examples = new ArrayList<>(reader.malformedExamples());
        examples.addAll(brokenExamples);
        String own = reader.timeName();
        return new Tally(
                intake.unit(),
                reader.form(),
                own == null ? "arrival" : "its own, " + own,
                arrivals.received(),
                read,
                reader.malformed() + broken,
                examples,
                late,
                repeated,
                arrivals.dropped(),
                intake.systemDrops(),
                reader.sequenceName() != null,
                sequence.missing(),
                states,
                reader.signals(),
                reader.noNumbers(),
                reader.noNumberExamples(),
                reader.nameless(),
                time.jumps(),
                outages,
                intake.forwarded(),
                intake.notForwarded(),
                time.last());
    }

    private void takeWhatIsLeft() throws InterruptedException {
        for (Arrival next = arrivals.next(0); next != null && unwritable == null; next = arrivals.next(0)) {
            take(next);
        }
    }

    private void take(Arrival arrival) {
        switch (arrival.kind()) {
            case MESSAGE -> message(arrival);
            case BROKEN -> {
                broken++;
                if (brokenExamples.size() < EXAMPLES && !brokenExamples.contains(arrival.text())) {
                    brokenExamples.add(arrival.text());
                }
            }
            case NOTE -> say(arrival.text());
            case LOST -> {
                outages++;
                say(arrival.text());
            }
            case END -> {
                ended = true;
                say(arrival.text());
            }
        }
    }

    private void message(Arrival arrival) {
        if (read + reader.malformed() < SHOWN) {
            watcher.arrived(StreamReader.shown(arrival.bytes(), arrival.bytes().length));
        }
        placed = SequenceCount.Place.NEWEST;
        boolean wellFormed =
                reader.read(arrival.bytes(), arrival.bytes().length, state -> state(state, arrival.nanos()));
        if (wellFormed) {
            switch (placed) {
                case NEWEST -> read++;
                case LATE -> late++;
                case REPEATED -> repeated++;
            }
        }
    }

    private void state(State state, long arrivalNanos) {
        if (state.numbered()) {
            SequenceCount.Place place = sequence.take(state.sequence());
            if (place != SequenceCount.Place.NEWEST) {
                placed = place;
                return;
            }
        }
        long jumps = time.jumps();
        long at = time.of(state, arrivalNanos);
        if (at == StateTime.LATE) {
            placed = SequenceCount.Place.LATE;
            return;
        }
        if (time.jumps() > jumps) {
            say("the stream's own time jumped; the recording's runs on by the clock");
        }
        states++;
        if (take != null && unwritable == null) {
            try {
                take.state(reader, state, at);
            } catch (IOException e) {
                unwritable = e;
            }
        }
    }

    private void tick(boolean second) {
        try {
            if (take != null && second) {
                take.force();
            } else if (take != null) {
                take.write();
            }
        } catch (IOException e) {
            unwritable = e;
        }
        if (second) {
            guess();
            watcher.second(tally());
            receivedBefore = arrivals.received();
        }
    }

    /** Says what the stream seems to be, again whenever that changes. */
    private void guess() {
        String form = reader.form();
        if (form != null && !form.equals(guessed)) {
            guessed = form;
            long rate = arrivals.received() - receivedBefore;
            say(form + ", " + Figures.count(rate) + " " + intake.unit() + "s/s, "
                    + Figures.plural(reader.signals(), "name") + "; time: " + tally().time());
        }
    }

    private void say(String sentence) {
        watcher.said(sentence);
        if (take != null) {
            take.log(time.last(), sentence);
        }
    }

    private void finish() {
        if (take == null) {
            return;
        }
        Summary.of(tally()).forEach(line -> take.log(time.last(), line));
        try {
            if (unwritable == null) {
                take.finish();
            }
        } catch (IOException e) {
            unwritable = e;
        }
        if (unwritable != null) {
            say("THE RECORDING STOPPED: " + unwritable.getMessage() + ". Safe in " + take.part() + ": "
                    + Figures.plural(take.safeStates(), "state") + ", up to " + Figures.instant(take.safeNanos())
                    + ". Make room, then: dropline convert " + take.part() + " FLIGHT.dlr");
        }
    }

    @Override
    public void close() throws IOException {
        intake.close();
        if (take != null) {
            take.close();
        }
    }
}
