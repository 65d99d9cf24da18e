package dropline.harness.stream;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

final class DatagramTest {
    private static final String STRUCT = """
            order: big
            datagram:
              - bytes: A5 5A
              - counter: uint16
              - time: uint32
                unit: ms
              - skip: 1
              - signal: altitude
                as: float32
              - signal: flaps
                as: int16
                order: little
                scale: 0.1
                offset: 5
            """;

    private static final String GROUPS = """
            order: little
            datagram:
              - text: SKEW
              - repeat: to the end
                of:
                  - index: uint8
                  - values: float32
                    count: 2
            names:
              3.0: pitch
            """;

    /** The bytes of 1.0, -2.5 and 0.15625 are worked examples of IEEE 754 binary32: 3F800000, C0200000, 3E200000. */
    @Test
    void aPlainStructIsReadFieldByField() throws DatagramException {
        Heard heard = new Heard(StreamReader.of(DatagramLayout.parse("s.yaml", STRUCT)));

        assertTrue(heard.bytes(hex("A5 5A 01 02 00 00 05 DC FF C0 20 00 00 F6 FF")));

        assertEquals("[{altitude=-2.5, flaps=4.0}]", heard.states());
        assertEquals(List.of(1_500_000_000L), heard.times());
        assertEquals(List.of(0x102L), heard.sequence());
        assertEquals(65_536, heard.reader().sequenceModulus());
    }

    @Test
    void groupsOfIndexAndValuesAreNamedByBoth() throws DatagramException {
        Heard heard = new Heard(StreamReader.of(DatagramLayout.parse("g.yaml", GROUPS)));

        assertTrue(heard.bytes(hex("53 4B 45 57 03 00 00 80 3F 00 00 20 3E C8 00 00 20 C0 00 00 00 00")));

        assertEquals("[{pitch=1.0, v200.0=-2.5, v200.1=0.0, v3.1=0.15625}]", heard.states());
    }

    @Test
    void everyWayADatagramCanDifferFromItsFileIsSaid() throws DatagramException {
        Heard heard = new Heard(StreamReader.of(DatagramLayout.parse("g.yaml", GROUPS)));

        assertFalse(heard.bytes(hex("53 4B 45 58 03 00 00 80 3F 00 00 20 3E")));
        assertFalse(heard.bytes(hex("53 4B 45 57 03 00 00 80 3F 00 00 20")));

        assertEquals("[]", heard.states());
        assertEquals(
                List.of(
                        "byte 3 is 58 and not 57: 53 4B 45 58 03 00 00 80 3F 00 00 20 3E (13 bytes)",
                        "it ends too soon, after 12 bytes: 53 4B 45 57 03 00 00 80 3F 00 00 20 (12 bytes)"),
                heard.reader().malformedExamples());
    }

    @Test
    void bytesBehindTheLastFieldAreMalformed() throws DatagramException {
        DatagramLayout one = DatagramLayout.parse("o.yaml", "datagram:\n  - signal: a\n    as: uint8\n");
        Heard heard = new Heard(StreamReader.of(one));

        assertFalse(heard.bytes(hex("01 02")));
        assertEquals(
                List.of("1 bytes more than its file says: 01 02 (2 bytes)"),
                heard.reader().malformedExamples());
    }

    @Test
    void allProblemsOfAFileAreToldAtOnceWithTheirPlaces() {
        String text = """
                order: middle
                datagram:
                  - texd: SKEW
                  - skip: 0
                  - signal: altitude
                    as: flaot32
                    sacle: 2
                  - values: uint8
                  - counter: float32
                  - repeat: twice
                    of:
                      - signal: x
                        as: uint8
                  - bytes: 4G
                  - as: uint8
                    signl: flaps
                """;

        DatagramException wrong = assertThrows(DatagramException.class, () -> DatagramLayout.parse("l.yaml", text));

        assertEquals(
                List.of(
                        "l.yaml:1:8 WRONG_TYPE",
                        "l.yaml:3:5 UNKNOWN_PART",
                        "l.yaml:4:11 OUT_OF_RANGE",
                        "l.yaml:6:9 WRONG_TYPE",
                        "l.yaml:7:5 UNKNOWN_KEY",
                        "l.yaml:8:5 MISPLACED_PART",
                        "l.yaml:9:14 WRONG_TYPE",
                        "l.yaml:10:13 WRONG_TYPE",
                        "l.yaml:12:9 MISPLACED_PART",
                        "l.yaml:14:12 WRONG_TYPE",
                        "l.yaml:16:5 UNKNOWN_PART"),
                wrong.problems().stream()
                        .map(problem -> problem.where() + " " + problem.code())
                        .toList());
        assertEquals("write text:", wrong.problems().get(1).fix());
    }

    @Test
    void aFileOfAnotherSortIsToldInOneProblem() {
        String protocol = "layout: gaps\nframing: {gap: 2 ms}\nframes:\n  request:\n    - address: uint8\n";

        DatagramException wrong = assertThrows(DatagramException.class, () -> DatagramLayout.parse("l.yaml", protocol));

        assertEquals(1, wrong.problems().size());
        assertEquals(
                "frames, so this is the description of a protocol",
                wrong.problems().get(0).found());
        assertEquals("dropline layout reads it", wrong.problems().get(0).fix());
    }

    @Test
    void anEmptyOrBrokenFileIsAProblem() {
        for (String text : List.of("", "datagram", "datagram:", "datagram: []", "datagram:\n  - {", "a: &b 1\nc: *d")) {
            assertThrows(DatagramException.class, () -> DatagramLayout.parse("l.yaml", text), text);
        }
    }

    @Test
    void theDatagramsOfTheManualAreUnderstood() throws IOException, DatagramException {
        String page = Files.readString(Path.of("..", "docs", "record.md"));
        int layouts = 0;
        for (String part : page.split("\n\n")) {
            if (part.startsWith("    order:")) {
                assertFalse(DatagramLayout.parse("record.md", part.stripIndent())
                        .parts()
                        .isEmpty());
                layouts++;
            }
        }
        assertEquals(2, layouts);
    }

    private static byte[] hex(String pairs) {
        return HexFormat.ofDelimiter(" ").parseHex(pairs);
    }
}
