package dropline.harness.cli;

import dropline.harness.describe.RecordingFold;
import dropline.harness.describe.RecordingSummary;
import dropline.harness.describe.RecordingText;
import dropline.harness.describe.SignalsFile;
import dropline.harness.json.RecordingJson;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.report.Figures;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * A recording read through and described.
 *
 * @param console hears of the progress, and of what was left out
 * @param file the recording
 * @param controls where its controls' moves are, if elsewhere
 * @param lenient whether bad rows are skipped
 * @param signals where to write the signals it suggests; null for nowhere
 * @param json where to write the document
 */
record RecordingDescription(
        Console console,
        Path file,
        @Nullable Path controls,
        boolean lenient,
        @Nullable Path signals,
        JsonOutput json) {

    void run() throws IOException {
        RecordingFiles files = new RecordingFiles(file, controls);
        files.paths().forEach(path -> InputFiles.mustExist(path, "recording"));
        Path[] inputs = files.paths().toArray(Path[]::new);
        OutputFiles.mustBeWritable(json.file(), inputs);
        OutputFiles.mustBeWritable(signals, inputs);
        if (signals != null && Files.exists(signals)) {
            throw new WrongInput("dropline: " + signals + " is there already, and you may have edited it;"
                    + " give what is written another name");
        }
        RecordingSummary summary = read(files);
        summary.losses().forEach(loss -> console.err().println("dropline: " + loss));
        if (summary.skippedRows() > 0) {
            console.err()
                    .println("dropline: left out for being wrong: " + Figures.plural(summary.skippedRows(), "row"));
        }
        if (signals != null) {
            OutputFiles.write(signals, SignalsFile.of(summary));
        }
        json.write(console, out -> RecordingJson.write(summary, out), RecordingText.of(summary) + next(summary));
    }

    private RecordingSummary read(RecordingFiles files) throws IOException {
        ReadOptions options = lenient ? ReadOptions.skippingBadRows() : ReadOptions.strict();
        Progress bar = ProgressBar.on(console);
        try {
            return RecordingFold.of(files, options, share -> bar.reached(0, share));
        } finally {
            ProgressBar.end(bar);
        }
    }

    private String next(RecordingSummary summary) {
        if (summary.columns().isEmpty()) {
            return "";
        }
        return signals == null
                ? "\nNext: --write-signals FILE writes a signals: section of this for a pit file.\n"
                : "\nWrote " + signals + ": look at every range, then put it into your pit file.\n";
    }
}
