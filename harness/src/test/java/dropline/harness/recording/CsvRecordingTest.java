package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class CsvRecordingTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "time_s,alt,gear\n0,1.5,1\n0.04,-2,0\n",
                "time_s;alt;gear\n0;1,5;1\n0,04;-2,0;0\n",
                "time_s;alt;gear\r\n0;1.5;true\r\n0.04;-2;FALSE\r\n",
                "t [ms]\talt\tgear\n0\t1.5\ton\n40\t-2\toff\n",
                "time (us),alt,gear\n0,15e-1,Yes\n40000,-2.0E0,no\n",
                "Zeit/ns,alt,gear\n0,1.50,1\n40000000,-2,0\n",
                "\uFEFFtime,alt,gear\n0,+1.5,1\n0.04,-2,0",
                "\"time_s\",\"alt\",\"gear\"\n\"0\",\"1,5\",\"1\"\n\"0,04\",\"-2\",\"0\"\n",
                "time,alt,gear,\n0,1.5,1,\n\n0.04,-2,0,\n   \n",
                " time , alt , gear \n 0 , 1.5 , 1 \n 0.0400 , -2 , 0 \n",
                "\n\ntime,alt,gear\n0,1.5,1\n4e-2,-2,0\n"
            })
    void everyCommonWayOfWritingATableReadsTheSame(String text) throws IOException {
        Path file = RecordingExamples.csv(folder, text);

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            assertEquals(
                    List.of("alt", "gear"),
                    reader.columns().stream().map(RecordingColumn::name).toList());
            assertEquals(List.of("0 1.5 1.0", "40000000 -2.0 0.0"), RecordingExamples.lines(reader));
        }
    }

    @Test
    void sixteenBitTextWithItsByteOrderMarkIsUnderstood() throws IOException {
        Path file = folder.resolve("wide.csv");
        Files.write(file, "\uFEFFtime;alt\n0;7\n".getBytes(StandardCharsets.UTF_16LE));

        assertEquals(List.of("0 7.0"), RecordingExamples.lines(file));
    }

    @Test
    void packedTextReadsAsPlain() throws IOException {
        Path file = folder.resolve("flight.bin");
        Files.write(file, RecordingExamples.gzip("time,a\n1,2\n".getBytes(StandardCharsets.UTF_8)));

        assertEquals(List.of("1000000000 2.0"), RecordingExamples.lines(file));
    }

    @Test
    void aUnitThatIsToldGoesOverTheHeaders() throws IOException {
        Path file = RecordingExamples.csv(folder, "time_s,a\n1500,2\n");

        assertEquals(
                List.of("1500000 2.0"), RecordingExamples.lines(file, new ReadOptions(false, TimeUnit.MICROSECONDS)));
    }

    @Test
    void timesAreExactToTheNanosecondHoweverLarge() throws IOException {
        Path file = RecordingExamples.csv(folder, "time_s,a\n-0.000000001,1\n1764075600.123456789,2\n");

        assertEquals(List.of("-1 1.0", "1764075600123456789 2.0"), RecordingExamples.lines(file));
    }

    @Test
    void anEmptyFieldMeansNoChangeAndNothingIsKnownBeforeTheFirstValue() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,a,b\n0,,1\n1,5,\n2,,\n");

        assertEquals(List.of("0 - 1.0", "1000000000 5.0 1.0", "2000000000 5.0 1.0"), RecordingExamples.lines(file));
    }

    @Test
    void aControlsFieldIsAMoveOnlyWhereItDiffersAndAloneItIsNoState() throws IOException {
        Path file = RecordingExamples.csv(
                folder, "time,a,control:gear lever,control:flaps\n0,1,0,\n1,2,on,\n2,,,3\n3,3,1,3\n");

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            assertEquals(List.of("gear lever", "flaps"), reader.controls());
            assertEquals(
                    List.of("0 1.0", "1000000000 2.0", "3000000000 3.0", "1000000000 ! 0 1", "2000000000 ! 1 3"),
                    RecordingExamples.lines(reader));
        }
    }

    @Test
    void everythingWrongIsListedWithLineAndCharacter() throws IOException {
        Path file = RecordingExamples.csv(folder, """
                time,alt,"vs",control:gear
                0,1,2,0
                1,abc,NaN,0
                0.5,1,-Infinity,1.5
                0.5,1,2
                2,1,2,0,9
                ,1,2,0
                soon,1,2,0
                1e30,1,2,0
                -1,1,2,0
                3,"1,5","2",0
                4,1.234,0x10,0
                """);

        assertEquals(
                List.of(
                        "NOT_A_NUMBER 3:3 abc",
                        "NOT_FINITE 3:7 NaN",
                        "NOT_FINITE 4:7 -Infinity",
                        "NOT_A_POSITION 4:17 1.5",
                        "RAGGED_ROW 5:0 3 fields",
                        "RAGGED_ROW 6:0 5 fields",
                        "NO_TIME 7:1 an empty field",
                        "NOT_A_TIME 8:1 soon",
                        "OUT_OF_RANGE 9:1 1e30",
                        "TIME_BACKWARDS 10:1 -1",
                        "OTHER_DECIMAL_MARK 11:4 1,5",
                        "NOT_A_NUMBER 12:9 0x10"),
                RecordingExamples.problems(file));
    }

    @Test
    void afterTwentyProblemsTheRestIsCounted() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,a\n" + "x,1\n".repeat(57));

        List<String> problems = RecordingExamples.problems(file);

        assertEquals(21, problems.size());
        assertEquals("MORE_PROBLEMS 0:0 and 37 more", problems.get(20));
    }

    @Test
    void readLenientlyBadRowsAreSkippedAndCounted() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,a\n0,1\n1,x\n2,3\n1,9\n3\n4,5\n");

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.skippingBadRows())) {
            assertEquals(List.of("0 1.0", "2000000000 3.0", "4000000000 5.0"), RecordingExamples.lines(reader));
            assertEquals(3, reader.skippedRows());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|EMPTY_FILE 0:0 0 bytes",
                "'\n\n'|EMPTY_FILE 0:0 0 bytes",
                "'Dear diary'|NO_COLUMNS 1:1 Dear diary",
                "'Panels of the Dunlin,,\nPanel,Address,Board\nA,1,x'|NO_COLUMNS 1:1 Panels of the Dunlin",
                "'1,2,3\n4,5,6'|NO_HEADER 1:1 1 2 3",
                "'time,a,b,a\n0,1,2,3'|DUPLICATE_COLUMN 1:10 field 4",
                "'time,a\n0,\"1\n2,3\n'|MALFORMED_CSV 2:0",
                "'time,a\u0001\n'|NOT_A_RECORDING 0:0 no text: code 0x01 at character 7"
            })
    void whatIsNoTableIsRefused(String text, String problem) throws IOException {
        Path file = RecordingExamples.csv(folder, text);

        List<String> problems = RecordingExamples.problems(file);

        assertEquals(1, problems.size(), problems.toString());
        assertTrue(problems.get(0).startsWith(problem), problems.toString());
    }

    @Test
    void aPackedTableThatWasCutLosesItsLastLineAndSaysSo() throws IOException {
        StringBuilder text = new StringBuilder("time,a\n");
        for (int i = 0; i < 5000; i++) {
            text.append(i).append(',').append(i * 7919L % 1000).append('\n');
        }
        byte[] packed = RecordingExamples.gzip(text.toString().getBytes(StandardCharsets.UTF_8));
        Path file = folder.resolve("cut.csv.gz");
        Files.write(file, Arrays.copyOf(packed, packed.length / 2));

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            List<String> lines = RecordingExamples.lines(reader);
            for (int i = 0; i < lines.size(); i++) {
                assertEquals(i * 1_000_000_000L + " " + (double) (i * 7919L % 1000), lines.get(i));
            }
            assertTrue(lines.size() > 1000 && lines.size() < 4000, "lines: " + lines.size());
            assertEquals(1, reader.losses().size());
        }
    }

    @Test
    void longRecordingsComeInSeveralBlocks() throws IOException {
        StringBuilder text = new StringBuilder("time_ms,a\n");
        for (int i = 0; i < 3000; i++) {
            text.append(i).append(',').append(i).append('\n');
        }
        Path file = RecordingExamples.csv(folder, text.toString());

        List<String> lines = RecordingExamples.lines(file);

        assertEquals(3000, lines.size());
        assertEquals("2999000000 2999.0", lines.get(2999));
    }
}
