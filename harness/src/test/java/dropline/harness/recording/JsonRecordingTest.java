package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class JsonRecordingTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"time\":0,\"alt\":1.5,\"gear\":true}\n{\"time\":0.04,\"alt\":-2,\"gear\":false}\n",
                "{ \"t [ms]\" : 0 , \"alt\" : \"1.5\", \"gear\":\"on\" }\r\n\r\n"
                        + "{\"gear\":0,\"alt\":-2.0e0,\"t [ms]\":4e1}",
                "\uFEFF{\"time_us\":\"0\",\"signal\":\"alt\",\"value\":1.5}\n"
                        + "{\"value\":1,\"name\":\"gear\",\"time_us\":0,\"unit\":\"on/off\"}\n"
                        + "{\"time_us\":40000,\"variable\":\"alt\",\"value\":-2,\"quality\":[1,\"good\"]}\n"
                        + "{\"time_us\":40000,\"signal\":\"gear\",\"value\":null}\n"
                        + "{\"time_us\":40000,\"signal\":\"gear\",\"value\":\"0\"}\n"
            })
    void wideAndLongObjectsReadTheSame(String text) throws IOException {
        Path file = RecordingExamples.csv(folder, text);

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            assertEquals(
                    List.of("alt", "gear"),
                    reader.columns().stream().map(RecordingColumn::name).toList());
            assertEquals(List.of("0 1.5 1.0", "40000000 -2.0 0.0"), RecordingExamples.lines(reader));
        }
    }

    @Test
    void namesInsideNamesAreJoinedByPointsAndItemsAreCounted() throws IOException {
        Path file = RecordingExamples.csv(
                folder, "{\"engine\":{\"oil\":{\"psi\":40},\"rpm\":[900,910]},\"time\":1}\n{\"time\":2,\"new\":1}\n");

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            assertEquals(
                    List.of("engine.oil.psi", "engine.rpm.1", "engine.rpm.2", "new"),
                    reader.columns().stream().map(RecordingColumn::name).toList());
            assertEquals(
                    List.of("1000000000 40.0 900.0 910.0 -", "2000000000 40.0 900.0 910.0 1.0"),
                    RecordingExamples.lines(reader));
        }
    }

    @Test
    void everyWideObjectIsAStateUnlessItOnlyMovesControls() throws IOException {
        Path file = RecordingExamples.csv(folder, """
                {"time":0,"a":1,"control:gear":0}
                {"time":0}
                {"time":1,"control:gear":1}
                {"time":2,"control":"flaps","value":2}
                {"time":3,"a":null}
                """);

        assertEquals(
                List.of("0 1.0", "0 1.0", "3000000000 1.0", "1000000000 ! 0 1", "2000000000 ! 1 2"),
                RecordingExamples.lines(file));
    }

    @Test
    void sixteenBitTextWithItsByteOrderMarkIsUnderstood() throws IOException {
        Path file = folder.resolve("wide");
        Files.write(file, "\uFEFF{\"time\":0,\"a\u00E9\":7}\n".getBytes(StandardCharsets.UTF_16BE));

        assertEquals(List.of("0 7.0"), RecordingExamples.lines(file));
    }

    @Test
    void timesAreExactToTheNanosecondHoweverLarge() throws IOException {
        Path file = RecordingExamples.csv(folder, "{\"time\":1764075600.123456789,\"a\":2}\n");

        assertEquals(List.of("1764075600123456789 2.0"), RecordingExamples.lines(file));
    }

    @Test
    void everythingWrongIsListedWithLineAndCharacter() throws IOException {
        Path file = RecordingExamples.csv(folder, """
                {"time":1,"a":1}
                {"time":1,"a":"abc"}
                {"time":1,"a":NaN}
                {"time":1,"a":1e999}
                {"time":true,"a":1}
                {"time":{"s":1},"a":1}
                {"tine":1,"a":1}
                {"time":0,"a":1}
                {"time":2,"a":1
                {"time":2,"a":1} {"time":3}
                [1,2]
                {"time":2,"a":1,"a":2}
                {"time":2,"a.b":1,"a":{"b":2}}
                {"time":2,"":1}
                {"time":2,"control:gear":0.5}
                {"time":1e30}
                {"time":2,"name":"Skerrow Dunlin"}
                """);

        assertEquals(
                List.of(
                        "NOT_A_NUMBER 2:15 abc",
                        "NOT_FINITE 3:15 NaN",
                        "NOT_FINITE 4:15 1e999",
                        "NOT_A_TIME 5:9 true",
                        "NOT_A_TIME 6:9 an object or a list",
                        "NO_TIME 7:1 tine, a",
                        "TIME_BACKWARDS 8:1 0",
                        "MALFORMED_JSON 9:16 the end of the line",
                        "MALFORMED_JSON 10:18 {\"time\":3}",
                        "MALFORMED_JSON 11:1 [1,2]",
                        "DUPLICATE_NAME 12:17 a second value",
                        "DUPLICATE_NAME 13:24 a second value",
                        "NOT_A_NAME 14:11 ",
                        "NOT_A_POSITION 15:11 0.5",
                        "OUT_OF_RANGE 16:9 1e30",
                        "NOT_A_NUMBER 17:11 Skerrow Dunlin"),
                RecordingExamples.problems(file));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'[{\"time\":1,\"a\":2}]'|NOT_A_RECORDING 0:0 a JSON list of objects",
                "'{\n \"time\":1,\n \"a\":2\n}\n'|MALFORMED_JSON 1:2 the end of the line",
                "'{\"time\":1,\"a\":\u00012}'|NOT_A_RECORDING 0:0 no text"
            })
    void whatIsNoObjectALineIsRefused(String text, String problem) throws IOException {
        Path file = RecordingExamples.csv(folder, text);

        assertTrue(
                RecordingExamples.problems(file).get(0).startsWith(problem),
                RecordingExamples.problems(file).toString());
    }

    @Test
    void aLineLongerThanCanBeHeldIsAProblemAndTheNextIsReadAgain() throws IOException {
        String endless = "{\"time\":1,\"a\":\"" + "x".repeat(TextLines.LONGEST) + "\"}";
        Path file = RecordingExamples.csv(folder, "{\"time\":0,\"a\":1}\n" + endless + "\n{\"time\":2,\"a\":3}\n");

        assertEquals(List.of("LINE_TOO_LONG 2:0 more than 4194304 characters"), RecordingExamples.problems(file));
        assertEquals(List.of("0 1.0", "2000000000 3.0"), RecordingExamples.lines(file, ReadOptions.skippingBadRows()));
    }

    @Test
    void aPackedFileThatWasCutLosesItsLastLineAndSaysSo() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 3000; i++) {
            text.append("{\"time\":")
                    .append(i)
                    .append(",\"a\":")
                    .append(i * 7919L % 1000)
                    .append("}\n");
        }
        byte[] packed = RecordingExamples.gzip(text.toString().getBytes(StandardCharsets.UTF_8));
        Path file = folder.resolve("cut.gz");
        Files.write(file, Arrays.copyOf(packed, packed.length / 2));

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            List<String> lines = RecordingExamples.lines(reader);
            assertTrue(lines.size() > 700 && lines.size() < 2500, "lines: " + lines.size());
            assertEquals(1, reader.losses().size());
        }
    }

    @Test
    void aFileThatGrowsBetweenItsTwoReadingsIsAProblemAndNoCrash() throws IOException {
        Path file = RecordingExamples.csv(folder, "{\"time\":0,\"a\":1}\n");
        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            Files.writeString(file, "{\"time\":1,\"b\":1}\n", java.nio.file.StandardOpenOption.APPEND);

            RecordingException wrong = assertThrows(RecordingException.class, () -> RecordingExamples.lines(reader));

            assertEquals("CHANGED_WHILE_READ", wrong.problems().get(0).code());
        }
    }
}
