package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.harness.problem.Problem;
import dropline.protocol.modbus.ModbusRtu;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class PitFileTest {

    @Test
    void theSmallPitIsUnderstood() {
        Pit pit = PitText.understood(PitText.SMALL);

        Segment left = pit.segments().get(0);
        assertEquals(500_000, left.baud());
        assertEquals("dropline", left.protocol().name());
        assertEquals(Controller.Kind.HUB, left.controller().kind());
        assertEquals(0, left.controller().adapter().latencyTimerNanos());
        assertEquals(1_000_000, left.controller().adapter().frameNanos());
        assertEquals(List.of("a", "b"), left.nodes().stream().map(n -> n.name()).toList());
        Indicator card = left.nodes().get(0).panels().get(0).indicators().get(0);
        assertEquals(90, card.motion().ratePerSecond());
        assertEquals(List.of(0), card.signals());
        assertEquals(0, pit.statePeriodNanos());
    }

    @Test
    void aPresetsFiguresCountUnlessTheFileWritesItsOwn() {
        String own = PitText.with("profile: 8-bit loop", "profile: {like: 8-bit interrupt, boot: 3 s}");

        Profile profile =
                PitText.understood(own).segments().get(0).nodes().get(0).profile();

        assertEquals(3_000_000_000L, profile.bootNanos());
        assertEquals(Profile.ReplyFrom.INTERRUPT, profile.replyFrom());
        assertEquals(Distribution.uniform(150_000, 250_000), profile.replyGap());
        // ATmega640 data sheet, USART: two characters beside the shift register; Arduino core: 63 of 64 bytes usable
        assertEquals(2, profile.fifoChars());
        assertEquals(63, profile.ringChars());
    }

    @Test
    void theDefaultLatencyTimerOfThePresetIsSixteenMilliseconds() {
        String host = PitText.with("controller: {hub: centre}", "controller: {adapter: 16 ms timer}");

        Controller controller = PitText.understood(host).segments().get(0).controller();

        // FTDI AN232B-04: 16 ms by default, 62 user bytes in a full packet
        assertEquals(Controller.Kind.HOST, controller.kind());
        assertEquals(16_000_000, controller.adapter().latencyTimerNanos());
        assertEquals(62, controller.adapter().packetChars());
    }

    @Test
    void throughASplitterTheHostPolls() {
        String passive = PitText.with("{adapter: native USB}", "{kind: splitter, adapter: none}");

        Controller controller = PitText.understood(passive).segments().get(0).controller();

        assertEquals(Controller.Kind.HOST, controller.kind());
        assertEquals(Adapter.NONE, controller.adapter());
    }

    @Test
    void aPanelIsHeldToItsOwnBudgetElseToItsKindsElseToThePits() {
        String text = PitText.with(
                "hubs:", "budgets: {update: 200 ms, source: ours, kinds: {digits: {update: 80 ms}}}\nhubs:");
        Pit kinds = PitText.understood(text);
        Pit own = PitText.understood(text.replace("node: b", "node: b\n    budget: {update: 90 ms, source: mine}"));

        assertEquals(new Budget(200_000_000, 150_000_000, "ours"), budget(kinds, 0));
        assertEquals(new Budget(80_000_000, 150_000_000, "stated in the pit file"), budget(kinds, 1));
        assertEquals(new Budget(90_000_000, 150_000_000, "mine"), budget(own, 1));
    }

    @Test
    void withoutBudgetsThePublishedLimitCountsForComparison() {
        // 14 CFR Part 60 App. A Table A2A 4.a.2 (2014): 150 ms for levels C and D
        Budget budget = budget(PitText.understood(PitText.SMALL), 0);

        assertEquals(150_000_000, budget.updateNanos());
        assertEquals("14 CFR Part 60 App. A Table A2A 4.a.2, for comparison", budget.source());
    }

    @Test
    void modbusAddressesStateAndPaysTheTurnaroundUnlessTold() {
        String text = PitText.with("baud: 500 kbaud", "baud: 19200 baud\n    format: 8E1\n    protocol: modbus-rtu")
                .replace("kind: encoder, number: 1", "kind: encoder, number: 100");
        Segment segment = PitText.understood(text).segments().get(0);

        assertInstanceOf(ModbusRtu.class, segment.protocol());
        assertEquals(Controller.StateDelivery.ADDRESSED, segment.controller().state());
        // MODBUS over serial line V1.02, 2.4.1: typically 100 to 200 ms
        assertEquals(100_000_000, segment.controller().turnaroundNanos());
    }

    @Test
    void theUnitOfARecordingsTimeIsHandedOn() {
        PitFile.Result result = PitFile.parse("pit.yaml", "recording: {time: ms}\n" + PitText.SMALL);

        assertEquals(
                TimeUnit.MILLISECONDS,
                assertInstanceOf(PitFile.Understood.class, result).recordingTime());
    }

    @Test
    void aByteOrderMarkIsNoProblem(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("pit.yaml");
        Files.writeString(file, "\uFEFF" + PitText.SMALL);

        assertInstanceOf(PitFile.Understood.class, PitFile.read(file));
    }

    @Test
    void everyProblemOfAFileIsReportedInOneGo() {
        String text = PitText.SMALL
                .replace("500 kbaud", "500")
                .replace("address: 2", "address: 1")
                .replace("shows: heading", "shows: haeding")
                .replace("kind: encoder", "kind: encodr");

        List<String> codes = PitText.problems(text).stream().map(Problem::code).toList();

        assertEquals(List.of("MISSING_UNIT", "ADDRESS_CLASH", "UNKNOWN_NAME", "WRONG_TYPE"), codes);
    }

    @Test
    void unknownKeySuggestsTheNearestOne() {
        assertEquals("""
            pit.yaml:9:31: time-oot: UNKNOWN_KEY
              found:    time-oot
              expected: a key known under controller: hub, time-out, retries, back-off-after, back-off-for, refresh, \
            gap, turnaround, state, enable-lead, release-tail, adapter and 1 more
              fix:      write time-out:
            """, PitText.message("{hub: centre}", "{hub: centre, time-oot: 5 ms}"));
    }

    @Test
    void aReplyGapShorterThanACharacterPointsAtTheBaudRate() {
        String text = PitText.with("profile: 8-bit loop", "profile: {reply-gap: 20us}")
                .replace("500 kbaud", "115200 baud");

        // 10 bits at 115200 baud: 86.8 us
        assertEquals("""
                  pit.yaml:11:55: reply-gap: OUT_OF_RANGE
                    found:    20us
                    expected: at least 87 us, one character at 115200 baud (line 8)
                    fix:      write reply-gap: 100 us, or raise the baud rate\
                  """, PitText.problems(text).get(0).text());
    }

    @Test
    void aMovingIndicatorsSpeedIsInItsSignalsUnit() {
        assertTrue(PitText.message("speed: 90 deg/s", "speed: 90 kt/s").contains("a speed in deg/s"));
    }

    @Test
    void aTimeOutThatNoReplyCanMeetIsRefused() {
        String message = PitText.message("{hub: centre}", "{hub: centre, time-out: 200 us}");

        assertTrue(message.contains("pit.yaml:9:41: time-out: OUT_OF_RANGE"), message);
        assertTrue(message.contains("the soonest the reply of node a can end"), message);
    }

    @Test
    void anUnknownSegmentIsNotAlsoAnEmptyOne() {
        String text = PitText.SMALL.replace("segment: left", "segment: lift");

        assertEquals(
                List.of("UNKNOWN_NAME", "UNKNOWN_NAME"),
                PitText.problems(text).stream().map(Problem::code).toList());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "bus.yaml",
                "bus-with-state.yaml",
            })
    void theReferenceBusesAreUnderstood(String name) {
        PitFile.Result result = PitFile.read(scenarios().resolve("reference").resolve(name));

        Pit pit = assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit();
        assertEquals(29, pit.segments().get(0).nodes().size());
        assertEquals(500_000, pit.segments().get(0).baud());
    }

    /** Whatever single line is missing or doubled, a file is understood or has problems; nothing else ever happens. */
    @Test
    void noSpoiltFileGetsPastTheProblems() {
        List<String> lines = PitText.SMALL.lines().toList();
        int wrong = 0;
        for (int spoilt = 0; spoilt < lines.size(); spoilt++) {
            StringBuilder without = new StringBuilder();
            StringBuilder twice = new StringBuilder();
            for (int i = 0; i < lines.size(); i++) {
                without.append(i == spoilt ? "" : lines.get(i) + "\n");
                twice.append(lines.get(i)).append('\n').append(i == spoilt ? lines.get(i) + "\n" : "");
            }
            wrong += PitFile.parse("pit.yaml", without.toString()) instanceof PitFile.Wrong ? 1 : 0;
            wrong += PitFile.parse("pit.yaml", twice.toString()) instanceof PitFile.Wrong ? 1 : 0;
        }
        assertTrue(wrong > lines.size(), "wrong=" + wrong);
    }

    /** Cut off anywhere, a file is understood or has problems. */
    @Test
    void aFileCutOffAnywhereHasProblemsOrIsUnderstood() {
        for (int end = 0; end < PitText.SMALL.length(); end++) {
            PitFile.Result result = PitFile.parse("pit.yaml", PitText.SMALL.substring(0, end));
            if (result instanceof PitFile.Wrong wrong) {
                assertFalse(wrong.problems().isEmpty(), "end=" + end);
            }
        }
    }

    private static Budget budget(Pit pit, int node) {
        return pit.segments().get(0).nodes().get(node).panels().get(0).budget();
    }

    private static Path scenarios() {
        return Path.of("").toAbsolutePath().resolveSibling("scenarios");
    }
}
