package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.bench.BenchResult;
import dropline.harness.bench.Subject;
import dropline.harness.pitfile.PitFile;
import java.io.IOException;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A Modbus RTU board, right and with one mistake. */
final class RegisterBoardsTest {
    private static Subject registers() {
        String text = """
                pit: A board on the bench
                host: {state-rate: as recorded}
                hubs:
                  bench: {kind: board, adapter: none}
                budgets: {update: 150 ms, control: 150 ms, source: not asked for on a bench}
                signals:
                  value: {unit: on/off, range: 0..1, number: 0}
                segments:
                  bench:
                    baud: 19200 baud
                    format: 8E1
                    protocol: modbus-rtu
                    controller: {hub: bench, state: addressed, time-out: 50 ms, gap: 4 ms}
                nodes:
                  registers: {segment: bench, address: 7, profile: 8-bit loop}
                panels:
                  panel:
                    node: registers
                    indicators:
                      lamp: {kind: lamp, shows: value}
                """;
        if (PitFile.parse("registers", text) instanceof PitFile.Understood understood) {
            return new Subject(understood.pit(), 0, 0);
        }
        throw new AssertionError(PitFile.parse("registers", text));
    }

    @Test
    void theBoardThatIsRightPasses() throws IOException {
        BenchResult result = Programs.examined("registers.hex", registers());

        assertEquals(new TreeSet<>(), Programs.failed(result));
        assertTrue(result.items().size() > 18, () -> "items=" + result.items().size());
    }

    @Test
    void aBoardThatTakesTooShortASilenceForTheEndAnswersTooSoon() throws IOException {
        TreeSet<String> failed = Programs.failed(Programs.examined("registers-short-silence.hex", registers()));

        assertTrue(failed.contains("not-too-soon"), failed::toString);
        assertTrue(!failed.contains("answers"), failed::toString);
    }
}
