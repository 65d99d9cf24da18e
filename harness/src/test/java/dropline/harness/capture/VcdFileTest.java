package dropline.harness.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.trace.TraceSink;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file's form: IEEE 1364-2005, clause 18; header order as the pyvcd README shows it, the rest from memory. */
final class VcdFileTest {
    private static final long BIT = PlayedBus.BIT;
    private static final int CONTROLLER = TraceSink.CONTROLLER;
    private static final Stretch ALL = new Stretch(0, 10_000 * BIT);

    /** 0x55 alternates: start 0, then 1 0 1 0 1 0 1 0, stop 1, an edge at every bit but the last. */
    private static final String ONE_BYTE = """
            $version Dropline $end
            $comment
              played, seed 7; 0 is 0 ns after the start of the run.
              Frames that begin in the stretch are whole; one under way at its begin is left out.
            $end
            $timescale 1 us $end
            $scope module bus $end
            $var wire 1 ! pair $end
            $var wire 1 " from_controller $end
            $var wire 1 # from_nodes $end
            $var wire 1 $ controller_enable $end
            $var wire 1 % node_1_enable $end
            $upscope $end
            $enddefinitions $end
            #0
            $dumpvars
            1!
            1"
            1#
            0$
            0%
            $end
            #200
            1$
            #300
            0"
            0!
            #400
            1"
            1!
            #500
            0"
            0!
            #600
            1"
            1!
            #700
            0"
            0!
            #800
            1"
            1!
            #900
            0"
            0!
            #1000
            1"
            1!
            #1100
            0"
            0!
            #1200
            1"
            1!
            #1500
            0$
            """;

    @TempDir
    private Path folder;

    @Test
    void oneFrameOfOneByteIsWrittenBitByBit() throws IOException {
        PlayedBus bus =
                new PlayedBus(1).frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 2 * BIT, 3 * BIT, 15 * BIT, Bytes.of(0x55));

        assertEquals(ONE_BYTE, written(bus, Resolution.MICROSECOND, ALL));
    }

    @Test
    void driversThatDisagreeLeaveThePairUndefined() throws IOException {
        PlayedBus bus = new PlayedBus(2)
                .frame(0, TraceSink.REPLY, 0, 1, 0, 0, 10 * BIT, Bytes.of(0x00))
                .frame(1, TraceSink.REPLY, 0, 1, 0, 0, 10 * BIT, Bytes.of(0xFF));

        // Both start bits agree; then one sends zeros and the other ones, until both stop.
        assertEquals(List.of("#0 0", "#100 x", "#900 1"), changes(written(bus, Resolution.MICROSECOND, ALL), "!"));
    }

    @Test
    void aDriverThatIsEnabledAndIdleHoldsThePairAtOneAgainstZeros() throws IOException {
        PlayedBus bus = new PlayedBus(1)
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 0, 0, 15 * BIT, Bytes.of(0x0F))
                .frame(0, TraceSink.REPLY, 0, 1, 12 * BIT, 12 * BIT, 22 * BIT, Bytes.of(0x00));

        assertEquals(
                List.of("#0 0", "#100 1", "#500 0", "#900 1", "#1200 x", "#1500 0", "#2100 1"),
                changes(written(bus, Resolution.MICROSECOND, ALL), "!"));
    }

    @Test
    void whatIsSentWhileItsDriverIsOffDoesNotReachThePair() throws IOException {
        PlayedBus bus = new PlayedBus(1).frame(0, TraceSink.REPLY, 0, 1, 2 * BIT, 0, 6 * BIT, Bytes.of(0x00));

        String vcd = written(bus, Resolution.MICROSECOND, ALL);

        assertEquals(List.of("#200 0", "#600 1"), changes(vcd, "!"));
        assertEquals(List.of("#200 0", "#600 1"), changes(vcd, "#"));
        assertEquals(List.of("#200 1", "#600 0"), changes(vcd, "%"));
    }

    /** 115,200 baud, 8E1: bit n begins at n / 115200 s, here in ns, rounded once. 0x01 has odd weight: parity 1. */
    @Test
    void edgesAreMeasuredFromTheFramesFirstBit() throws IOException {
        PlayedBus bus = new PlayedBus(1, 115_200, CharacterFormat.EIGHT_E_ONE)
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 0, 0, 2_000_000, Bytes.of(0x01, 0x01, 0x01));

        assertEquals(
                List.of(
                        "#0 0",
                        "#8681 1",
                        "#17361 0",
                        "#78125 1",
                        "#95486 0",
                        "#104167 1",
                        "#112847 0",
                        "#173611 1",
                        "#190972 0",
                        "#199653 1",
                        "#208333 0",
                        "#269097 1"),
                changes(written(bus, Resolution.NANOSECOND, ALL), "!"));
    }

    @Test
    void aFrameThatLastsLongerThanByItsClockHasLongerBits() throws IOException {
        PlayedBus bus = new PlayedBus(1);
        bus.at(0, sink -> sink.driverOn(0, 0));
        bus.at(0, sink -> sink.frameStarted(0, 0, TraceSink.REPLY, 0, 1, 1));
        bus.at(11 * BIT, sink -> sink.frameEnded(11 * BIT, 0, TraceSink.REPLY, 0, 1));
        bus.at(11 * BIT, sink -> sink.driverOff(11 * BIT, 0));
        bus.bytesOf(0, Bytes.of(0xFF));

        assertEquals(List.of("#0 0", "#110 1"), changes(written(bus, Resolution.MICROSECOND, ALL), "!"));
    }

    @Test
    void exchangedWiresTurnEverythingRound() throws IOException {
        PlayedBus bus = new PlayedBus(1).frame(0, TraceSink.REPLY, 0, 1, 0, BIT, 12 * BIT, Bytes.of(0xFF));
        Fault swapped = new Fault(FaultKind.SWAPPED_PAIR, 0, 0, -1, -1, 0, Fault.TO_THE_END, 0, 0);
        Path file = folder.resolve("s.vcd");

        bus.play(
                ALL,
                20 * BIT,
                VcdFile.create(file, bus.pit(), "seed 7", List.of(swapped), ALL, Resolution.MICROSECOND));

        assertEquals(List.of("#0 0", "#100 1", "#200 0", "#1200 1"), changes(Files.readString(file), "!"));
    }

    @Test
    void timeCountsFromTheBeginOfTheStretchAndAFrameUnderWayIsLeftOut() throws IOException {
        PlayedBus bus = new PlayedBus(1)
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 0, BIT, 12 * BIT, Bytes.of(0x55))
                .frame(0, TraceSink.REPLY, 0, 1, 20 * BIT, 21 * BIT, 32 * BIT, Bytes.of(0xFF));

        String vcd = written(bus, Resolution.MICROSECOND, new Stretch(5 * BIT, 22 * BIT));

        assertEquals(List.of("#1600 0", "#1700 1"), changes(vcd, "!"));
        assertEquals(List.of("#0 1", "#700 0"), changes(vcd, "$"));
        assertEquals(List.of("#1500 1", "#2700 0"), changes(vcd, "%"));
        assertTrue(vcd.contains("0 is 500000 ns after the start of the run"), vcd);
    }

    @Test
    void timesNeverRunBackwards() throws IOException {
        PlayedBus bus = new PlayedBus(3);
        for (int i = 0; i < 50; i++) {
            long at = i * 7L * BIT + i * 13L;
            bus.frame(i % 3, TraceSink.REPLY, i % 3, i, at, at + BIT, at + 12 * BIT, Bytes.of(i));
        }

        long last = -1;
        for (String line :
                written(bus, Resolution.HUNDRED_NANOSECONDS, ALL).lines().toList()) {
            if (line.startsWith("#")) {
                long now = Long.parseLong(line.substring(1));
                assertTrue(now > last, line);
                last = now;
            }
        }
        assertTrue(last > 0);
    }

    @Test
    void theFirst94WiresHaveOneCharacterAndTheNextHaveTwo() {
        Set<String> codes = new HashSet<>();
        for (int wire = 0; wire < 94 + 94 * 94; wire++) {
            String code = VcdNames.code(wire);
            assertEquals(wire < 94 ? 1 : 2, code.length());
            assertTrue(code.chars().allMatch(letter -> letter >= 33 && letter <= 126), code);
            assertTrue(codes.add(code), code);
        }
        assertEquals("!!", VcdNames.code(94));
    }

    @Test
    void namesAreMadeOfLettersDigitsAndUnderscoresAndDiffer() {
        VcdNames names = new VcdNames();

        assertEquals("oil_gauge", names.unique("oil gauge"));
        assertEquals("oil_gauge_2", names.unique("oil-gauge"));
        assertEquals("_2nd", names.unique("2nd"));
        assertEquals("_", names.unique("\u00e9"));
    }

    @Test
    void aResolutionMustGiveABitTwoSteps() {
        assertTrue(Resolution.MICROSECOND.shows(500_000));
        assertFalse(Resolution.MICROSECOND.shows(500_001));
        assertTrue(Resolution.HUNDRED_NANOSECONDS.shows(4_000_000));
    }

    private String written(PlayedBus bus, Resolution resolution, Stretch stretch) throws IOException {
        Path file = folder.resolve("t.vcd");
        bus.play(stretch, 20_000 * BIT, VcdFile.create(file, bus.pit(), "seed 7", List.of(), stretch, resolution));
        return Files.readString(file);
    }

    /** The changes of one wire after the initial values: {@code #time level}. */
    private static List<String> changes(String vcd, String code) {
        String time = "#0";
        List<String> found = new java.util.ArrayList<>();
        for (String line : vcd.substring(vcd.indexOf("$dumpvars"))
                .lines()
                .skip(1)
                .dropWhile(l -> !l.equals("$end"))
                .toList()) {
            if (line.startsWith("#")) {
                time = line;
            } else if (line.substring(1).equals(code)) {
                found.add(time + " " + line.charAt(0));
            }
        }
        return found;
    }
}
