package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What a command plays: a recording through a pit, or the load that the pit describes. */
final class Played {
    @Parameters(index = "0", paramLabel = "PIT", description = "The pit file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path pit;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "RECORDING",
            hideParamSyntax = true,
            description = "The recording: CSV or Dropline's own form, plain or gzip.")
    private @Nullable Path recording;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "The run's seed; the same seed gives the same run. Default: 1.")
    private long seed = 1;

    @Option(names = "--lenient", description = "Skip bad rows of the recording and count them, instead of stopping.")
    private boolean lenient;

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    Path pit() {
        return pit;
    }

    @Nullable
    Path recording() {
        return recording;
    }

    long seed() {
        return seed;
    }

    /**
     * The recording's file, for a command, or a use of it, that must have one; {@code or} says what would do instead.
     */
    Path mustHaveRecording(String or) {
        if (recording == null) {
            throw usage("a recording is missing" + or);
        }
        return recording;
    }

    /** Without a recording, for a load is played. */
    void mustHaveNoRecording() {
        if (recording != null) {
            throw usage("--for plays the load the pit describes; leave out " + recording + " or --for");
        }
    }

    /** What is played, for people. */
    String name() {
        Path last = recording == null ? null : recording.getFileName();
        return recording == null ? "described load" : last == null ? recording.toString() : last.toString();
    }

    /** Looks at every file before work begins, and reads the pit's. */
    PitFile.Understood read(@Nullable Path... written) throws IOException {
        if (recording != null) {
            InputFiles.mustExist(recording, "recording");
        }
        PitFile.Understood understood = PitFiles.read(pit);
        Path[] inputs = recording == null ? new Path[] {pit} : new Path[] {pit, recording};
        for (Path file : written) {
            OutputFiles.mustBeWritable(file, inputs);
        }
        return understood;
    }

    /** A stretch of the recording. */
    Source.Opening stretch(PitFile.Understood understood, Path file, long fromNanos, long toNanos) {
        ReadOptions options = new ReadOptions(lenient, understood.recordingTime());
        return () -> Source.recording(file, understood.pit(), options, fromNanos, toNanos);
    }

    /** The load that the pit describes. */
    Source.Opening load(PitFile.Understood understood, long durationNanos) {
        Pit.Load load = understood.pit().load();
        if (load == null) {
            throw new WrongInput(
                    "dropline: " + pit + " describes no load, so --for has nothing to play; give a recording,"
                            + " or write a load into the pit file (load: every, changes)");
        }
        return () -> Source.load(understood.pit(), load, durationNanos);
    }

    /** The command was used wrongly. */
    ParameterException usage(String message) {
        return new ParameterException(command.commandLine(), message);
    }
}
