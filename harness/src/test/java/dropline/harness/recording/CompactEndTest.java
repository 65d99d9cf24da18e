package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CompactEndTest {
    @TempDir
    private Path folder;

    private Path csv = Path.of("");
    private Path compact = Path.of("");

    @BeforeEach
    void write() throws IOException {
        csv = RecordingExamples.csv(folder, "time [s],a\n10,1\n11.5,2\n70.25,3\n");
        compact = folder.resolve("flight.dlr");
        Convert.run(RecordingFiles.of(csv), compact, ReadOptions.strict(), (read, total) -> {});
    }

    @Test
    void aCompactRecordingTellsItsLastInstant() throws IOException {
        assertEquals(OptionalLong.of(70_250_000_000L), CompactEnd.lastNanos(compact));
    }

    @Test
    void aCsvOrPackedRecordingDoesNot() throws IOException {
        Path packed = folder.resolve("flight.dlr.gz");
        Files.write(packed, RecordingExamples.gzip(Files.readAllBytes(compact)));

        assertEquals(OptionalLong.empty(), CompactEnd.lastNanos(csv));
        assertEquals(OptionalLong.empty(), CompactEnd.lastNanos(packed));
    }

    @Test
    void aRecordingCutAnywhereDoesNotEither() throws IOException {
        byte[] whole = Files.readAllBytes(compact);
        Path cut = folder.resolve("cut.dlr");
        for (int length = 0; length < whole.length; length++) {
            Files.write(cut, Arrays.copyOf(whole, length));
            assertEquals(OptionalLong.empty(), CompactEnd.lastNanos(cut), "length " + length);
        }
    }

    @Test
    void aFlippedBitInTheEndIsNoticed() throws IOException {
        byte[] whole = Files.readAllBytes(compact);
        Path flipped = folder.resolve("flipped.dlr");
        for (int bit = 0; bit < CompactFormat.END_LENGTH * 8; bit++) {
            byte[] bytes = whole.clone();
            bytes[whole.length - 1 - bit / 8] ^= (byte) (1 << (bit % 8));
            Files.write(flipped, bytes);
            assertEquals(OptionalLong.empty(), CompactEnd.lastNanos(flipped), "bit " + bit);
        }
    }
}
