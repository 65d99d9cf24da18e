package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
            description = "The recording: CSV, JSON lines or Dropline's own form, plain or gzip.")
    private @Nullable Path recording;

    @Option(
            names = "--controls",
            paramLabel = "FILE",
            description = "Take the controls' moves from this file: time, control, value in each line.")
    private @Nullable Path controls;

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
    RecordingFiles recording() {
        return recording == null ? null : new RecordingFiles(recording, controls);
    }

    long seed() {
        return seed;
    }

    /** The recording, for a command, or a use of it, that must have one; {@code or} says what would do instead. */
    RecordingFiles mustHaveRecording(String or) {
        RecordingFiles files = recording();
        if (files == null) {
            throw usage("a recording is missing" + or);
        }
        return files;
    }

    /** Without a recording, for a load is played. */
    void mustHaveNoRecording() {
        if (recording != null) {
            throw usage("--for plays the load the pit describes; leave out " + recording + " or --for");
        }
        if (controls != null) {
            throw usage("--controls adds moves to a recording, and --for plays none; leave out one of them");
        }
    }

    /** What is played, for people. */
    String name() {
        Path last = recording == null ? null : recording.getFileName();
        return recording == null ? "described load" : last == null ? recording.toString() : last.toString();
    }

    /** Looks at every file before work begins, and reads the pit's. */
    PitFile.Understood read(@Nullable Path... written) throws IOException {
        RecordingFiles files = recording();
        List<Path> inputs = new ArrayList<>();
        if (files != null) {
            files.paths().forEach(file -> InputFiles.mustExist(file, "recording"));
            inputs.addAll(files.paths());
        }
        PitFile.Understood understood = PitFiles.read(pit);
        inputs.add(pit);
        for (Path file : written) {
            OutputFiles.mustBeWritable(file, inputs.toArray(Path[]::new));
        }
        if (files != null) {
            files.mustAgree(options(understood));
        }
        return understood;
    }

    /** A stretch of the recording. */
    Source.Opening stretch(PitFile.Understood understood, RecordingFiles files, long fromNanos, long toNanos) {
        ReadOptions options = options(understood);
        return () -> Source.recording(files, understood.pit(), options, fromNanos, toNanos);
    }

    private ReadOptions options(PitFile.Understood understood) {
        return new ReadOptions(lenient, understood.recordingTime());
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
