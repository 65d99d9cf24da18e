package dropline.harness.cli;

import dropline.harness.learn.Lesson;
import dropline.harness.link.Arrival;
import dropline.harness.link.Link;
import dropline.harness.listen.Source;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline learn}: from bytes on a pair to a draft of their protocol. */
@Command(
        name = "learn",
        header = "Find out what frames look like on a pair, and draft a protocol file.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline learn --port PORT|--tcp HOST:PORT [--baud N,...] [--for T] [--write FILE]",
            "dropline learn --from FILE [--wire NAME] [--baud N,...] [--write FILE]"
        },
        descriptionHeading = "%n",
        description = {
            "Listens to a controller and its boards, without sending a byte, and works out how frames begin and",
            "end, where address and length stand, and what check they carry. What else would explain as much is",
            "told as a doubt. --write saves a draft to complete beside your sketches (docs/custom-protocols.md)."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline learn --port COM7 --write mine.yaml",
            "  dropline learn --from front.txt --baud 250000",
            "",
            "Exit codes:  0 found   1 no structure was found   2 the input is wrong   3 our own fault"
        })
final class LearnCommand implements Callable<Integer> {
    private static final List<Integer> USUAL_RATES =
            List.of(115_200, 250_000, 9_600, 19_200, 38_400, 57_600, 500_000, 1_000_000);
    private static final int ASSUMED_RATE = 115_200;
    private static final long LOOK_NANOS = 50_000_000L;
    /** So much explained at one rate that no other need be tried. */
    private static final double CLEAR = 0.9;

    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private HeardOptions heard;

    @Option(
            names = "--baud",
            paramLabel = "N",
            split = ",",
            description = "Rates to try, bits a second. Default: the usual ones; 115200 for a capture of bytes.")
    private @Nullable List<Integer> rates;

    @Option(
            names = "--for",
            paramLabel = "T",
            converter = Durations.class,
            description = "How long to listen at each rate. Default: 10s.")
    private long forNanos = 10_000_000_000L;

    @Option(names = "--write", paramLabel = "FILE", description = "Write the draft of a protocol file.")
    private @Nullable Path draft;

    @Mixin
    final Debug debug = new Debug();

    LearnCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        heard.check();
        Path from = heard.file();
        if (rates != null && rates.stream().anyMatch(rate -> rate < 300 || rate > 10_000_000)) {
            throw new WrongInput("dropline: --baud must be 300..10000000");
        }
        OutputFiles.mustBeWritable(draft, from == null ? new Path[0] : new Path[] {from});
        Lesson lesson = best();
        console.out().print("At " + lesson.baud() + " baud. " + lesson.text());
        if (draft != null) {
            write(draft, lesson);
        }
        console.out().flush();
        return lesson.share() > 0 ? ExitCode.PASS : ExitCode.FAIL;
    }

    private void write(Path file, Lesson lesson) throws IOException {
        if (lesson.draft().isEmpty()) {
            console.out().println("There is nothing to draft, so " + file + " was not written.");
            return;
        }
        OutputFiles.write(file, lesson.draft().get());
        console.out()
                .println("Wrote " + file + ", a draft; try it with: dropline layout " + file
                        + " --decode \"bytes you have seen\"");
    }

    /** Tries one rate after the other, until one explains most of what is heard, and nothing else does. */
    private Lesson best() throws IOException {
        Lesson best = null;
        for (int rate : rates()) {
            Lesson lesson = Lesson.of(arrivals(rate), rate);
            if (best == null || isBetter(lesson, best)) {
                best = lesson;
            }
            if (best.isSure() && best.share() > CLEAR) {
                break;
            }
        }
        if (best == null) {
            throw new AssertionError("no rate was tried");
        }
        return best;
    }

    /** At half the rate, what is said again and again may look like frames as well; but hardly without a doubt. */
    private static boolean isBetter(Lesson lesson, Lesson than) {
        return lesson.isSure() == than.isSure() ? lesson.share() > than.share() : lesson.isSure();
    }

    /** Bytes have come at one rate; a pair, and an analyser's edges, can be read at any. */
    private List<Integer> rates() throws IOException {
        if (rates != null) {
            return rates;
        }
        Path file = heard.file();
        return file != null && Source.isCapture(file) ? List.of(ASSUMED_RATE) : USUAL_RATES;
    }

    private List<Arrival.Received> arrivals(int rate) throws IOException {
        List<Arrival.Received> arrivals = new ArrayList<>();
        Path file = heard.file();
        if (file == null) {
            console.err().println("Listening at " + rate + " baud ...");
            listen(rate, arrivals);
        } else {
            heard.read(file, rate, CharacterFormat.EIGHT_N_ONE, source -> read(source, arrivals));
        }
        return arrivals;
    }

    private static void read(Source source, List<Arrival.Received> arrivals) throws IOException {
        int held = 0;
        Arrival.Received next = source.next();
        while (next != null && held < Lesson.MOST_BYTES) {
            arrivals.add(next);
            held += next.bytes().length();
            next = source.next();
        }
    }

    private void listen(int rate, List<Arrival.Received> arrivals) throws IOException {
        int held = 0;
        try (Link link = heard.port().open(rate, CharacterFormat.EIGHT_N_ONE)) {
            long until = link.now() + forNanos;
            while (link.now() < until && held < Lesson.MOST_BYTES) {
                Arrival arrival = link.await(Math.min(until, link.now() + LOOK_NANOS));
                if (arrival instanceof Arrival.Received received) {
                    arrivals.add(received);
                    held += received.bytes().length();
                }
            }
        }
    }
}
