package dropline.harness.cli;

import dropline.harness.listen.Source;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The options that say where to hear a pair: a port, a server, or what was kept of it in a file. */
final class HeardOptions {
    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PortOptions port;

    @Option(
            names = "--from",
            paramLabel = "FILE",
            description = "In place of a port: what 'listen -o' captured, or a logic analyser's VCD or CSV of edges.")
    private @Nullable Path from;

    @Option(names = "--wire", paramLabel = "NAME", description = "Which of the analyser's wires, where it has several.")
    private @Nullable String wire;

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    /** Exactly one of them must have been given, and a file must be there. */
    void check() {
        if ((from != null) == port.isGiven()) {
            throw new ParameterException(
                    command.commandLine(),
                    from == null ? "--port is missing (or --tcp, or --from)" : "--from needs no port; leave it out");
        }
        if (from != null) {
            InputFiles.mustExist(from, "capture");
        }
    }

    /** The file; null where it is heard now. */
    @Nullable
    Path file() {
        return from;
    }

    PortOptions port() {
        return port;
    }

    /** Whether what an adapter adds is in the times. */
    boolean throughAnAdapter() throws IOException {
        return from == null || Source.isCapture(from);
    }

    /** Reads the file. */
    void read(Path captured, int baud, CharacterFormat format, Reader reader) {
        try (Source source = Source.open(captured, wire, baud, format)) {
            reader.read(source);
        } catch (IOException wrong) {
            throw new WrongInput("dropline: " + wrong.getMessage(), wrong);
        }
    }

    /** Takes what stands in a file. */
    @FunctionalInterface
    interface Reader {
        void read(Source source) throws IOException;
    }
}
