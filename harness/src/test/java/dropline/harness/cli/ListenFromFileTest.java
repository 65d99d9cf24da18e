package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code listen} and {@code learn} with {@code --from}: what a logic analyser saw. */
final class ListenFromFileTest {
    @TempDir
    private Path folder;

    private String pit = "";

    @BeforeEach
    void write() throws IOException {
        pit = SmallPit.write(folder, "150 ms").toString();
    }

    /** Our own waveforms, which sigrok reads, go the other way round as well. */
    @Test
    void aWaveformTellsWhoWasAskedAndAnswered() throws IOException {
        String flight = SmallPit.recording(folder).toString();
        Path vcd = folder.resolve("seen.vcd");
        Captured traced =
                Captured.run("trace", pit, flight, "--to", "1s", "--vcd", vcd.toString(), "--resolution", "1ns");
        assertEquals(0, traced.exitCode(), traced::err);

        Captured run = Captured.run("listen", pit, "--from", vcd.toString(), "--wire", "pair");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("; 0% of them are part of no sound frame."), run::out);
        assertTrue(run.out().matches("(?s).*1 +node 1 +\\d{3} +100% .*2 +node 2 +\\d{3} +100% .*"), run::out);
        // the profile's least reply gap: never below, and of hundreds of draws from 100 us on one comes close
        assertTrue(run.out().matches("(?s).*node 1 +\\d+ +100% +10\\d(\\.\\d)? us .*"), run::out);

        Captured learned = Captured.run("learn", "--from", vcd.toString(), "--wire", "pair");
        assertEquals(0, learned.exitCode(), learned::err);
        assertTrue(learned.out().startsWith("At 500000 baud. These are Dropline frames (100% "), learned::out);
    }

    /** What was heard can be looked at like a run: as a trace, a report, JSON, packets and a drawing. */
    @Test
    void whatWasHeardIsLookedAtLikeARun() throws IOException {
        String flight = SmallPit.recording(folder).toString();
        Path vcd = folder.resolve("seen.vcd");
        Path trace = folder.resolve("heard.trace");
        Path html = folder.resolve("heard.html");
        Captured traced = Captured.run(
                "trace", pit, flight, "--to", "1s", "--vcd", vcd.toString(), "--fault", "dead-node 'node 2' at 500ms");
        assertEquals(0, traced.exitCode(), traced::err);

        Captured run = Captured.run(
                "listen",
                pit,
                "--from",
                vcd.toString(),
                "--wire",
                "pair",
                "--trace",
                trace.toString(),
                "--html",
                html.toString(),
                "--json",
                folder.resolve("heard.json").toString());

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("1. Node node 2 (address 2): "), run::out);
        assertTrue(Files.readString(trace).contains(" 0 timed-out 1 "));
        assertTrue(Files.readString(html).contains("No panel is judged"));
        assertTrue(Files.readString(folder.resolve("heard.json")).contains("\"causes\":[\"dead-node\""));

        Captured seen = Captured.run(
                "trace",
                pit,
                "--heard",
                vcd.toString(),
                "--wire",
                "pair",
                "--from",
                "400ms",
                "--to",
                "420ms",
                "--pcapng",
                folder.resolve("heard.pcapng").toString(),
                "--timeline",
                folder.resolve("heard.svg").toString());
        assertEquals(0, seen.exitCode(), seen::err);
        assertTrue(seen.out().matches("Wrote \\d\\d+ frames\\.\\R"), seen::out);
        assertTrue(Files.readString(folder.resolve("heard.svg")).contains("heard, drivers inferred"));
    }

    @Test
    void aPairWithoutAPitFileIsHeard() throws IOException {
        String flight = SmallPit.recording(folder).toString();
        Path vcd = folder.resolve("seen.vcd");
        Captured.run("trace", pit, flight, "--to", "1s", "--vcd", vcd.toString());

        Captured run = Captured.run(
                "listen", "--protocol", "dropline", "--baud", "500000", "--from", vcd.toString(), "--wire", "pair");
        Captured wrongRate = Captured.run(
                "listen", "--protocol", "dropline", "--baud", "250000", "--from", vcd.toString(), "--wire", "pair");
        Captured both =
                Captured.run("listen", pit, "--protocol", "dropline", "--baud", "500000", "--from", vcd.toString());

        assertTrue(run.out().matches("(?s).*\n  1 +\\d{3} +100% .*\n  2 +\\d{3} +100% .*"), run::out);
        assertTrue(wrongRate.out().contains("; 100% of them are part of no sound frame."), wrongRate::out);
        assertEquals(2, both.exitCode());
    }

    @Test
    void aTableOfEdgesIsRead() throws IOException {
        Path csv = edges("Time [s],Channel 0\n", CharacterFormat.EIGHT_N_ONE, 115_200, "hello");

        Captured run = Captured.run("listen", pit, "--from", csv.toString());

        assertTrue(run.out().startsWith("Heard "), run::out);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "nothing of the kind| this is no capture",
                "time,a,b%0,1,1%| say which wire with --wire; there are a, b",
                "time,a%0,1%0.1,2%| found '0.1,2', expected the time in seconds and levels 0 or 1",
                "time,a%1,1%0.1,0%| its time lies before that of the row",
                "$timescale 1 eon $end| found timescale '1eon', expected one such as 10 ns",
                "$timescale 1 ns $end| the head of the VCD does not end ($enddefinitions)",
                "$timescale 1 ns $end $enddefinitions $end| there is no wire of one bit in it"
            })
    void aWrongFileIsToldInOneLine(String content, String expected) throws IOException {
        Path file = Files.writeString(folder.resolve("wrong.txt"), content.replace('%', '\n'));

        Captured run = Captured.run("listen", pit, "--from", file.toString());

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains(expected.strip()), run::err);
        assertEquals(1, run.err().lines().count(), run::err);
    }

    private Path edges(String head, CharacterFormat format, int baud, String text) throws IOException {
        StringBuilder rows = new StringBuilder(head);
        double at = 0.001;
        for (int i = 0; i < text.length(); i++) {
            for (int bit = 0; bit < format.bits(); bit++) {
                rows.append(String.format(Locale.ROOT, "%.9f,%d%n", at, format.bit(text.charAt(i), bit)));
                at += 1.0 / baud;
            }
        }
        return Files.writeString(folder.resolve("seen.csv"), rows);
    }
}
