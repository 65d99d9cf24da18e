package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class LongCsvRecordingTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "time_s,signal,value\n0,alt,1.5\n0,gear,1\n0.04,alt,-2\n0.04,gear,0\n",
                "value;name;t [ms]\r\n1,5;alt;0\r\ntrue;gear;0\r\n-2,0;alt;40\r\noff;gear;40\r\n",
                "\uFEFFtimestamp us\tunit\tvariable\tvalue\n0\tft\talt\t1.5\n"
                        + "0\t\tgear\ton\n4e4\tft\talt\t-2\n40000\t\tgear\tno",
                ",Time,Signal,Value,\n7,0,\"alt\",1.5,\n,,,,\n,0, gear ,1,\n\n,0.04,alt,-2.0,\n,0.04,gear,0,\n"
            })
    void everyCommonWayOfWritingChangesReadsTheSame(String text) throws IOException {
        Path file = RecordingExamples.csv(folder, text);

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            assertEquals(
                    List.of("alt", "gear"),
                    reader.columns().stream().map(RecordingColumn::name).toList());
            assertEquals(List.of("0 1.5 1.0", "40000000 -2.0 0.0"), RecordingExamples.lines(reader));
        }
    }

    @Test
    void valuesOfOneInstantAreOneStateAndANameThatComesAgainBeginsAnother() throws IOException {
        Path file = RecordingExamples.csv(folder, """
                time,signal,value
                0,a,1
                1,b,2
                1,a,2
                1,b,0
                2,c,7
                """);

        assertEquals(
                List.of("0 1.0 - -", "1000000000 2.0 2.0 -", "1000000000 2.0 0.0 -", "2000000000 2.0 0.0 7.0"),
                RecordingExamples.lines(file));
    }

    @Test
    void aLineOfNothingButItsTimeBeginsAStateAndANameWithoutAValueOnlySaysThatItIsThere() throws IOException {
        Path file = RecordingExamples.csv(folder, """
                time,signal,value
                0,late,
                0,a,1
                1,,
                1,a,2
                1,,
                2,,
                """);

        assertEquals(
                List.of("0 - 1.0", "1000000000 - 2.0", "1000000000 - 2.0", "2000000000 - 2.0"),
                RecordingExamples.lines(file));
    }

    @Test
    void controlsStandAmongSignalsOrInAColumnOfTheirOwn() throws IOException {
        Path among = RecordingExamples.csv(folder, """
                time,signal,value
                0,a,1
                1,control:gear lever,on
                1,control:flaps,0
                2,control:gear lever,1
                """);
        assertEquals(List.of("0 1.0", "1000000000 ! 0 1"), RecordingExamples.lines(among));

        Path own = RecordingExamples.csv(folder, "time_ms,control,value\n500,flaps,-3\n700,gear lever,2\n");
        try (RecordingReader reader = RecordingReader.open(own, ReadOptions.strict())) {
            assertEquals(List.of("flaps", "gear lever"), reader.controls());
            assertEquals(Optional.of(TimeUnit.MILLISECONDS), reader.timeUnit());
            assertEquals(List.of("500000000 ! 0 -3", "700000000 ! 1 2"), RecordingExamples.lines(reader));
        }
    }

    @Test
    void everythingWrongIsListedWithLineAndCharacter() throws IOException {
        Path file = RecordingExamples.csv(folder, """
                time,signal,value
                1,a,1
                1,a,abc
                2,a,NaN
                2,,5
                soon,a,1
                ,a,1
                0.5,a,1
                3,a
                3,a,1,x
                1e30,a,1
                3,control:gear,0.5
                3,control:,1
                3,a\uFFFD,1
                3,a,"1,5"
                """);

        assertEquals(
                List.of(
                        "NOT_A_NUMBER 3:5 abc",
                        "NOT_FINITE 4:5 NaN",
                        "NOT_A_NAME 5:3 an empty field",
                        "NOT_A_TIME 6:1 soon",
                        "NO_TIME 7:1 an empty field",
                        "TIME_BACKWARDS 8:1 0.5",
                        "RAGGED_ROW 9:0 2 fields",
                        "RAGGED_ROW 10:0 4 fields",
                        "OUT_OF_RANGE 11:1 1e30",
                        "NOT_A_POSITION 12:3 0.5",
                        "NOT_A_NAME 13:3 control:",
                        "NOT_A_NAME 14:3 a\uFFFD",
                        "OTHER_DECIMAL_MARK 15:6 1,5"),
                RecordingExamples.problems(file));
    }

    @Test
    void charactersThatNobodySeesMakeNoName() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,signal,value\n" + "0,a,1\n".repeat(1000) + "1,a\u0000,1\n");

        assertEquals(List.of("NOT_A_NAME 1002:3 a\u0000"), RecordingExamples.problems(file));
    }

    @Test
    void readLenientlyBadLinesBringUpNoNamesAndAreCounted() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,signal,value\n0,a,1\n1,wrong,x\n2,a,3\n1,past,9\n3,\"b,1\n");

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.skippingBadRows())) {
            assertEquals(List.of(new RecordingColumn("a", RecordingColumn.AS_IS)), reader.columns());
            assertEquals(List.of("0 1.0", "2000000000 3.0"), RecordingExamples.lines(reader));
            assertEquals(2, reader.skippedRows());
            assertEquals(1, reader.losses().size());
            assertTrue(
                    reader.losses().get(0).startsWith("From line 6 on"),
                    reader.losses().toString());
        }
    }

    @Test
    void aPackedFileThatWasCutLosesItsLastLineAndSaysSo() throws IOException {
        StringBuilder text = new StringBuilder("time,signal,value\n");
        for (int i = 0; i < 5000; i++) {
            text.append(i).append(",a,").append(i * 7919L % 1000).append('\n');
        }
        byte[] packed = RecordingExamples.gzip(text.toString().getBytes(StandardCharsets.UTF_8));
        Path file = folder.resolve("cut.gz");
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
    void aTableWithAColumnForEachSignalIsStillOne() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,value,speed\n0,1,2\n");

        assertEquals(List.of("0 1.0 2.0"), RecordingExamples.lines(file));
    }
}
