package dropline.harness.cli;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Pin;
import dropline.bus.pit.Program;
import dropline.harness.firmware.FirmwareFile;
import dropline.harness.problem.Nearest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** A program in place of a board: the file that would be flashed, and what must be known to run it. */
final class FirmwareOptions {
    private static final double LEAST_MHZ = 1;
    private static final double MOST_MHZ = 20;
    private static final String USUAL_CLOCK = "16 MHz";

    @Option(
            names = "--firmware",
            paramLabel = "FILE",
            description = "Run this program, Intel HEX or ELF, on an emulated AVR in place of a board.")
    private @Nullable Path file;

    @Option(
            names = "--chip",
            paramLabel = "CHIP",
            description = "The chip it was built for: atmega328p, atmega168, atmega2560, atmega1280 or atmega32u4.")
    private @Nullable String chip;

    @Option(names = "--clock", paramLabel = "MHZ", description = "The chip's clock: 16 MHz. Default: 16 MHz.")
    private String clock = USUAL_CLOCK;

    @Option(
            names = "--driver-enable",
            paramLabel = "PIN",
            description = "The pin that turns the driver on, high, and the receiver off: PD2. Default: the transceiver"
                    + " does it by itself.")
    private @Nullable String driverEnable;

    @Option(
            names = "--usart",
            paramLabel = "N",
            description = "The USART that leads to the pair. Default: the chip's first.")
    private @Nullable Integer usart;

    boolean isGiven() {
        return file != null;
    }

    /** Nothing may be said of a program where none is given. */
    void mustBeOfAProgram(CommandLine line) {
        if (file == null && (chip != null || driverEnable != null || usart != null || !clock.equals(USUAL_CLOCK))) {
            throw new ParameterException(line, "--chip, --clock, --driver-enable and --usart go with --firmware FILE");
        }
    }

    /** What is run. */
    Program program() throws IOException {
        Path given = file;
        if (given == null) {
            throw new IllegalStateException("asked for only where --firmware is given");
        }
        InputFiles.mustExist(given, "firmware file");
        Chip built = chip();
        FirmwareFile.Result result = FirmwareFile.read(given, built);
        if (result instanceof FirmwareFile.Wrong wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
        if (result instanceof FirmwareFile.Understood understood) {
            return new Program(
                    understood.image(), built, hz(), usart(built), pin(built), List.of(), List.of(), Program.NONE);
        }
        throw new AssertionError(result);
    }

    private Chip chip() {
        String named = chip;
        if (named == null) {
            throw new WrongInput("dropline: --chip is missing: say which chip the program was built for, as in"
                    + " --chip atmega328p");
        }
        return Chip.named(named).orElseThrow(() -> {
            List<String> known = Arrays.stream(Chip.values()).map(Chip::word).toList();
            String near = Nearest.to(named, known)
                    .map(name -> "; did you mean " + name + "?")
                    .orElse("");
            return new WrongInput(
                    "dropline: --chip must be " + String.join(", ", known) + ", not '" + named + "'" + near);
        });
    }

    private long hz() {
        String number = clock.strip().toLowerCase(java.util.Locale.ROOT);
        number = number.endsWith("mhz")
                ? number.substring(0, number.length() - 3).strip()
                : "";
        double megahertz;
        try {
            megahertz = Double.parseDouble(number);
        } catch (NumberFormatException wrong) {
            megahertz = Double.NaN;
        }
        if (!(megahertz >= LEAST_MHZ && megahertz <= MOST_MHZ)) {
            throw new WrongInput("dropline: --clock must be " + LEAST_MHZ + " to " + MOST_MHZ
                    + " MHz, as in \"16 MHz\"," + " not '" + clock + "'");
        }
        return Math.round(megahertz * 1e6);
    }

    private int usart(Chip built) {
        int[] known = built.usarts();
        int wanted = usart == null ? known[0] : usart;
        if (Arrays.stream(known).noneMatch(one -> one == wanted)) {
            throw new WrongInput("dropline: the " + built.word() + " has USART "
                    + String.join(
                            ", ",
                            Arrays.stream(known).mapToObj(Integer::toString).toList()) + ", not " + wanted);
        }
        return wanted;
    }

    private @Nullable Pin pin(Chip built) {
        if (driverEnable == null) {
            return null;
        }
        return Pin.named(driverEnable)
                .filter(pin -> built.ports().indexOf(pin.port()) >= 0)
                .orElseThrow(() -> new WrongInput("dropline: --driver-enable must be a pin of the " + built.word()
                        + " as in PD2, with a port of " + built.ports() + ", not '" + driverEnable + "'"));
    }
}
