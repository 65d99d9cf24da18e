package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever a file holds, reading it ends with rows or with problems, never otherwise. */
final class RecordingFuzzTest {
    private static final String ALPHABET = "0123456789.,;\t\"\n\r -+eE%truefalsnoNa:control\u00E9\u0000";

    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Test
    void tablesOfAnyCharactersEndInRowsOrProblems() throws IOException {
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder(random.nextInt(4) == 0 ? "" : "time,a,b,control:c\n");
            int length = random.nextInt(200);
            for (int i = 0; i < length; i++) {
                text.append(ALPHABET.charAt(random.nextInt(ALPHABET.length() - random.nextInt(2))));
            }
            mustEndWell(text.toString().getBytes(StandardCharsets.UTF_8), seed);
        }
    }

    @Test
    void linesOfNamedValuesOfAnyCharactersEndInRowsOrProblems() throws IOException {
        String[] pieces = {
            "{",
            "}",
            "[",
            "]",
            ":",
            ",",
            "\"",
            "\n",
            "\r\n",
            "\"time\":",
            "1",
            "-2.5",
            "1e999",
            "NaN",
            "null",
            "true",
            "\"signal\":\"a\"",
            "\"value\":3",
            "\"control:c\":1",
            "{\"time\":1,\"a\":2}\n",
            "0,a,1\n",
            "0,,\n",
            "\u0000",
            "\uFFFD",
            "\u00E9",
            "\\u00",
            " ",
            "\t",
            "0,control:c,1.5\n"
        };
        String[] beginnings = {"{\"time\":0,\"a\":1}\n", "time,signal,value\n", "value;control;t [ms]\n", "{"};
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder(beginnings[random.nextInt(beginnings.length)]);
            for (int i = random.nextInt(60); i > 0; i--) {
                text.append(pieces[random.nextInt(pieces.length)]);
            }
            mustEndWell(text.toString().getBytes(StandardCharsets.UTF_8), seed);
        }
    }

    @Test
    void longAndJsonRecordingsWithAnyBytesChangedEndInRowsOrProblems() throws IOException {
        for (String ending : List.of(".long.csv", ".jsonl")) {
            Path written = folder.resolve("whole" + ending);
            RecordingExamples.copy(Files.write(folder.resolve("whole.dlr"), compact()), written);
            byte[] whole = Files.readAllBytes(written);
            for (long seed = 1; seed <= 100; seed++) {
                Random random = new Random(seed);
                byte[] bytes = Arrays.copyOf(whole, whole.length - random.nextInt(20));
                for (int i = random.nextInt(6); i >= 0; i--) {
                    bytes[random.nextInt(bytes.length)] = (byte) random.nextInt();
                }
                mustEndWell(bytes, seed);
            }
        }
    }

    @Test
    void anyBytesEndInRowsOrProblems() throws IOException {
        byte[][] beginnings = {
            {}, {0x1F, (byte) 0x8B}, {0x1F, (byte) 0x8B, 8, 0, 0, 0, 0, 0, 0, 0}, {(byte) 0xFF, (byte) 0xFE}
        };
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            byte[] beginning = beginnings[random.nextInt(beginnings.length)];
            byte[] bytes = new byte[random.nextInt(300) + beginning.length];
            random.nextBytes(bytes);
            System.arraycopy(beginning, 0, bytes, 0, beginning.length);
            mustEndWell(bytes, seed);
        }
    }

    @Test
    void compactRecordingsWithAnyBytesChangedEndInRowsOrProblems() throws IOException {
        byte[] whole = compact();
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            byte[] bytes = Arrays.copyOf(whole, whole.length - random.nextInt(20));
            for (int i = random.nextInt(4); i >= 0; i--) {
                bytes[8 + random.nextInt(bytes.length - 8)] = (byte) random.nextInt();
            }
            mustEndWell(bytes, seed);
            mustEndWell(RecordingExamples.gzip(bytes), seed);
        }
    }

    @Test
    void payloadsOfAnyBytesWhoseCheckIsRightEndInRowsOrProblems() throws IOException {
        ByteSink file = new ByteSink();
        byte[] whole = compact();
        int header = 14 + (whole[10] & 0xFF) + 4;
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            byte[] payload = new byte[random.nextInt(60)];
            for (int i = 0; i < payload.length; i++) {
                payload[i] = (byte) (random.nextInt(3) == 0 ? random.nextInt() : random.nextInt(5));
            }
            file.clear();
            file.append(whole, header);
            appendBlock(file, payload);
            mustEndWell(Arrays.copyOf(file.bytes(), file.length()), seed);
        }
    }

    private static void appendBlock(ByteSink file, byte[] payload) {
        Deflater deflater = new Deflater();
        byte[] packed = new byte[200];
        deflater.setInput(payload);
        deflater.finish();
        int length = deflater.deflate(packed);
        deflater.end();
        int from = file.length();
        file.u8(CompactFormat.BLOCK);
        file.little(length, 4);
        file.little(payload.length, 4);
        file.append(packed, length);
        CRC32 check = new CRC32();
        check.update(file.bytes(), from, file.length() - from);
        file.little(check.getValue(), 4);
    }

    private byte[] compact() throws IOException {
        Path file = folder.resolve("whole.dlr");
        try (RecordingWriter writer = RecordingWriter.create(file, CompactRecordingTest.columns(3), List.of("gear"))) {
            for (int row = 0; row < 40; row++) {
                writer.row(row * 40L, new double[] {row, row / 7.0, row < 20 ? Double.NaN : 1});
                writer.move(row * 40L, "gear", row & 1);
            }
            writer.finish();
        }
        return Files.readAllBytes(file);
    }

    private void mustEndWell(byte[] bytes, long seed) throws IOException {
        Path file = Files.write(folder.resolve("any"), bytes);
        for (boolean lenient : new boolean[] {false, true}) {
            try (RecordingReader reader = RecordingReader.open(file, new ReadOptions(lenient, null))) {
                RecordingExamples.lines(reader);
            } catch (RecordingException e) {
                assertTrue(!e.problems().isEmpty() && e.problems().size() <= 21, "seed " + seed);
            } catch (RuntimeException e) {
                throw new AssertionError("seed " + seed, e);
            }
        }
    }
}
