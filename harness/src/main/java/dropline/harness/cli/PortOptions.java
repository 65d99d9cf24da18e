package dropline.harness.cli;

import dropline.harness.link.Link;
import dropline.harness.link.SerialLink;
import dropline.harness.link.SerialPlan;
import dropline.harness.link.TcpLink;
import dropline.harness.wiring.Cautions;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The options that lead to a pair: a serial port, or a server that passes its bytes on. */
final class PortOptions {
    private static final long USUAL_BOOT_WAIT_NANOS = 2_000_000_000L;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            description = "The serial port: COM7, /dev/ttyUSB0. 'dropline ports' lists those there are.")
    private @Nullable String port;

    @Option(
            names = "--tcp",
            paramLabel = "HOST:PORT",
            converter = HostPort.class,
            description = "In place of a port: a server that passes raw bytes to and from the pair.")
    private @Nullable InetSocketAddress tcp;

    @Option(
            names = "--dtr",
            paramLabel = "on|off",
            converter = Levels.class,
            description = "Whether DTR is raised when the port opens. Default: on; many boards restart then.")
    private Level dtr = Level.ON;

    @Option(
            names = "--boot-wait",
            paramLabel = "T",
            converter = Durations.class,
            description = "How long to wait for the first answer after the port has opened. Default: 2s.")
    private long bootWaitNanos = USUAL_BOOT_WAIT_NANOS;

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    /** Of a control line. */
    enum Level {
        ON,
        OFF
    }

    /** {@code on} or {@code off}. */
    static final class Levels implements ITypeConverter<Level> {
        @Override
        public Level convert(String text) {
            return switch (text.toLowerCase(Locale.ROOT)) {
                case "on" -> Level.ON;
                case "off" -> Level.OFF;
                default -> throw new TypeConversionException("'" + text + "' is neither on nor off");
            };
        }
    }

    /** How long a board may take to start when its port opens, ns. */
    long bootWaitNanos() {
        return bootWaitNanos;
    }

    /** Says what to mind where it leads to real hardware, as far as one can know. */
    void caution(Console console) {
        if (port != null) {
            Cautions.LINES.forEach(line -> console.err().println("CAUTION  " + line));
        }
    }

    /** Whether one of the two was given. */
    boolean isGiven() {
        return port != null || tcp != null;
    }

    /** Opens it; what stands in the way is told. */
    Link open(int baud, CharacterFormat format) {
        String named = port;
        InetSocketAddress server = tcp;
        if ((named == null) == (server == null)) {
            throw new ParameterException(
                    command.commandLine(),
                    named == null ? "--port is missing (or --tcp)" : "--port and --tcp lead to different places");
        }
        try {
            return named != null
                    ? SerialLink.open(new SerialPlan(named, baud, format, dtr == Level.ON))
                    : TcpLink.to(Objects.requireNonNull(server));
        } catch (IOException refused) {
            throw new WrongInput("dropline: " + refused.getMessage(), refused);
        }
    }
}
