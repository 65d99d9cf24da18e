package dropline.harness.cli;

import dropline.harness.record.Ending;
import dropline.harness.record.Plan;
import dropline.harness.record.Recorder;
import dropline.harness.record.RefusedException;
import dropline.harness.record.Summary;
import dropline.harness.record.Tally;
import dropline.harness.stream.DatagramException;
import dropline.harness.stream.DatagramLayout;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline record}: a live state stream into a recording. */
@Command(
        name = "record",
        header = "Catch what the simulator sends, and make a recording of it.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "Receives the simulator's state stream live. Text is recognised by looking: key=value, CSV, JSON;",
            "binary datagrams need --datagram. Ends with Ctrl-C, after --for, or when the stream ends."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline record --udp 0.0.0.0:41500 --show",
            "  dropline record --udp 0.0.0.0:41500 -o flight.dlr",
            "  dropline record --udp 0.0.0.0:41500 --forward 127.0.0.1:41501 -o flight.dlr",
            "  dropline record --udp 0.0.0.0:41500 --datagram mine.yaml -o flight.dlr",
            "  dropline record --tcp 192.168.1.20:41500 --for 30m -o flight.dlr",
            "",
            "Exit codes:  0 recorded   1 nothing or not all was   2 the input is wrong   3 our own fault"
        })
final class RecordCommand implements Callable<Integer> {
    private static final long FOR_EVER = Long.MAX_VALUE / 4;

    private final Console console;

    @ArgGroup(multiplicity = "1")
    @SuppressWarnings("NullAway.Init")
    private From from;

    /** Where it comes from: one of the two. */
    static final class From {
        @Option(
                names = "--udp",
                paramLabel = "HOST:PORT",
                description = "Receive datagrams at this address of this computer; 0.0.0.0 stands for all it has.",
                converter = HostPort.class,
                order = 1)
        private @Nullable InetSocketAddress udp;

        @Option(
                names = "--tcp",
                paramLabel = "HOST:PORT",
                description = "Connect to this server and receive lines; connect anew when the connection is lost.",
                converter = HostPort.class,
                order = 2)
        private @Nullable InetSocketAddress tcp;
    }

    @Option(names = "--show", description = "Show what arrives, and a line of figures every second.", order = 3)
    private boolean show;

    @Option(
            names = "--forward",
            paramLabel = "HOST:PORT",
            description = "Pass every datagram on, unchanged.",
            converter = HostPort.class,
            order = 4)
    private @Nullable InetSocketAddress forward;

    @Option(
            names = "--datagram",
            paramLabel = "FILE",
            description = "What stands where in a binary datagram (YAML, see docs/record.md).",
            order = 5)
    private @Nullable Path datagram;

    @Option(
            names = "--for",
            paramLabel = "T",
            description = "End after this time, as in 90s, 30m, 1h.",
            converter = Durations.class,
            order = 6)
    private @Nullable Long forNanos;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "The recording to write; its ending says in which form, as for convert.",
            order = 7)
    private @Nullable Path out;

    @Mixin
    final Debug debug = new Debug();

    RecordCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException, InterruptedException {
        Plan plan = plan();
        Live live = new Live(console, show);
        try (Recorder recorder = Recorder.open(plan, live)) {
            EndOfProcess end = EndOfProcess.watch(recorder::stop, console);
            try {
                console.err().println("Waiting for what comes; Ctrl-C ends the recording.");
                Ending ending = recorder.run(forNanos == null ? FOR_EVER : forNanos);
                Tally tally = recorder.tally();
                summary(tally, ending);
                boolean failed = ending == Ending.NOT_WRITABLE || (out != null && tally.states() == 0);
                return end.completed(failed ? ExitCode.FAIL : ExitCode.PASS);
            } finally {
                end.release();
            }
        } catch (RefusedException refused) {
            throw new WrongInput("dropline: " + refused.getMessage(), refused);
        }
    }

    private Plan plan() throws IOException {
        if (!show && out == null) {
            throw new WrongInput("dropline: nothing to do; --show shows what arrives, -o FILE records it");
        }
        if (from.tcp != null) {
            if (forward != null || datagram != null) {
                throw new WrongInput("dropline: --forward and --datagram are for datagrams, that is, with --udp");
            }
            OutputFiles.mustBeWritable(out);
            return new Plan(true, from.tcp, null, null, out);
        }
        InetSocketAddress at = from.udp;
        if (at == null) {
            throw new AssertionError("one of the two is there");
        }
        if (forward != null && forward.getPort() == at.getPort() && isHere(forward)) {
            throw new WrongInput("dropline: --forward leads back to where datagrams are received; give another port");
        }
        DatagramLayout described = datagram == null ? null : read(datagram);
        OutputFiles.mustBeWritable(out);
        return new Plan(false, at, forward, described, out);
    }

    private static boolean isHere(InetSocketAddress address) throws SocketException {
        return address.getAddress().isAnyLocalAddress()
                || NetworkInterface.getByInetAddress(address.getAddress()) != null;
    }

    private static DatagramLayout read(Path file) throws IOException {
        InputFiles.mustExist(file, "datagram file");
        try {
            return DatagramLayout.read(file);
        } catch (DatagramException wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
    }

    private void summary(Tally tally, Ending ending) {
        Summary.of(tally).forEach(console.out()::println);
        if (out == null || ending == Ending.NOT_WRITABLE) {
            return;
        }
        if (tally.states() > 0) {
            console.out().println("Wrote " + out + ". Look at it: dropline describe " + out);
        } else {
            String why = tally.received() == 0 ? "see docs/record.md, Nothing arrives?" : "--show shows what arrives";
            console.err().println("dropline: nothing was written, for no state came; " + why);
        }
    }
}
