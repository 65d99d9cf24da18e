package dropline.harness.cli;

import dropline.harness.pitfile.PitFile;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A pair for which there is no pit file yet: what must be known to understand what is said on it. */
class SpokenByOptions {
    /** A board's name, where no pit file gives it one. */
    static final String NAME = "board";

    private static final long USUAL_TIME_OUT_NANOS = 50_000_000L;
    private static final int LEAST_BAUD = 300;
    private static final int MOST_BAUD = 10_000_000;
    private static final String BY_OPTIONS = "the pair given by options";

    @Option(
            names = "--protocol",
            required = true,
            paramLabel = "NAME",
            description = "In place of a pit file: dropline, modbus-rtu, or custom with --layout.")
    @SuppressWarnings("NullAway.Init")
    private String protocol;

    @Option(names = "--baud", required = true, paramLabel = "N", description = "Bits a second.")
    private int baud;

    @Option(names = "--layout", paramLabel = "FILE", description = "The description of a protocol of your own.")
    private @Nullable Path layout;

    @Option(
            names = "--time-out",
            paramLabel = "T",
            converter = Durations.class,
            description = "How long your controller waits for a reply. Default: 50ms.")
    private long timeOutNanos = USUAL_TIME_OUT_NANOS;

    /** A pit that has nothing but one board with one value. */
    final PitFile.Understood described(int address) {
        if (baud < LEAST_BAUD || baud > MOST_BAUD) {
            throw new WrongInput("dropline: --baud must be " + LEAST_BAUD + ".." + MOST_BAUD + ", not " + baud);
        }
        if (protocol.equals("custom") != (layout != null)) {
            throw new WrongInput(
                    layout == null
                            ? "dropline: --protocol custom needs --layout FILE"
                            : "dropline: --layout goes with --protocol custom");
        }
        if (layout != null) {
            InputFiles.mustExist(layout, "layout file");
        }
        PitFile.Result toAll = PitFile.parse(BY_OPTIONS, text(address, "broadcast"));
        PitFile.Result result =
                toAll instanceof PitFile.Understood ? toAll : PitFile.parse(BY_OPTIONS, text(address, "addressed"));
        if (result instanceof PitFile.Wrong wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
        if (result instanceof PitFile.Understood understood) {
            return understood;
        }
        throw new AssertionError(result);
    }

    private String text(int address, String state) {
        String described = layout == null
                ? ""
                : "    layout: '" + layout.toAbsolutePath().toString().replace("'", "''") + "'\n";
        return """
                pit: A board on the bench
                host: {state-rate: as recorded}
                hubs:
                  bench: {kind: board, adapter: none}
                budgets: {update: 150 ms, control: 150 ms, source: not asked for on a bench}
                signals:
                  value: {unit: on/off, range: 0..1, number: 1}
                segments:
                  bench:
                    baud: %d baud
                    format: 8N1
                    protocol: %s
                %s    controller: {hub: bench, state: %s, time-out: %d us, gap: 200 us}
                nodes:
                  %s: {segment: bench, address: %d, profile: 8-bit loop}
                panels:
                  panel:
                    node: %s
                    indicators:
                      lamp: {kind: lamp, shows: value}
                """.formatted(baud, protocol, described, state, timeOutNanos / 1_000, NAME, address, NAME);
    }
}
