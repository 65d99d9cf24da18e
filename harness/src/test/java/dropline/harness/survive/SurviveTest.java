package dropline.harness.survive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Pit;
import dropline.harness.json.SurvivalJson;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Source;
import dropline.harness.replay.Sweep;
import dropline.harness.report.SurvivalText;
import dropline.harness.survive.PanelOutcome.State;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two segments: one that is sent everything again every two seconds, one whose signal changes once and that is never
 * sent anything again. Faults last from 4 s to 5 s of 12 s.
 */
final class SurviveTest {
    private static final long SECOND = 1_000_000_000L;

    @TempDir
    private Path folder;

    private final Pit pit = pit();
    private Path recording = Path.of("");

    @BeforeEach
    void record() throws IOException {
        StringBuilder csv = new StringBuilder("time [s],lamp 1,speed,lamp 2\n");
        for (int row = 0; row <= 300; row++) {
            csv.append(BigDecimal.valueOf(row * 4L, 2))
                    .append(',')
                    .append(row / 10 % 2)
                    .append(',')
                    .append(row % 150);
            csv.append(',').append(row < 25 ? 0 : 1).append('\n');
        }
        recording = Files.writeString(folder.resolve("flight.csv"), csv);
    }

    @Test
    void whatComesOutDoesNotDependOnTheNumberOfThreads() throws IOException {
        assertEquals(json(survive(1, FaultKind.values())), json(survive(5, FaultKind.values())));
    }

    @Test
    void everyKindStrikesEverythingItCan() throws IOException {
        Survival survival = survive(2, FaultKind.DEAD_NODE, FaultKind.SILENT_HOST, FaultKind.DUPLICATE_ADDRESS);

        assertEquals(
                List.of(
                        "dead-node kept",
                        "dead-node kept too",
                        "dead-node left",
                        "silent-host",
                        "duplicate-address kept as kept too",
                        "duplicate-address kept too as kept"),
                survival.faults().stream().map(SurviveTest::what).toList());
    }

    @Test
    void aFaultIsToldOnItsOwnSegmentsPanelsAndTheHostsOnAll() throws IOException {
        Survival survival = survive(2, FaultKind.DEAD_NODE, FaultKind.SILENT_HOST);

        assertEquals(2, survival.faults().get(0).panels().size());
        assertEquals(1, survival.faults().get(2).panels().size());
        assertEquals(3, survival.faults().get(3).panels().size());
    }

    @Test
    void aFaultIsToldOnAllSegmentsOfTheBoardItStrikes() throws IOException {
        Survival survival = survive(oneBoard(), 2, FaultKind.DEAD_NODE);

        assertEquals(3, survival.faults().get(0).panels().size());
        assertEquals(3, survival.faults().get(2).panels().size());
        assertEquals(json(survival), json(survive(oneBoard(), 5, FaultKind.DEAD_NODE)), "whatever the threads");
    }

    @Test
    void aNodeThatWasDeadForASecondShowsAgainOnceItIsAlive() throws IOException {
        PanelOutcome panel = panelOf(survive(2, FaultKind.DEAD_NODE).faults().get(0), "kept lamp");

        assertEquals(State.RECOVERED, panel.state());
        assertTrue(panel.worstUpdateNanos() >= 900_000_000L, panel::toString);
        assertTrue(panel.recoveryNanos() < 3 * SECOND, panel::toString);
    }

    @Test
    void aPanelOnAnotherNodeIsUntouched() throws IOException {
        PanelOutcome panel = panelOf(survive(2, FaultKind.DEAD_NODE).faults().get(0), "kept needle");

        assertEquals(State.UNTOUCHED, panel.state());
        assertEquals(0, panel.recoveryNanos());
    }

    @Test
    void aSlippedNeedleNeverRecoversAndIsNamedFirst() throws IOException {
        Survival survival = survive(2, FaultKind.DEAD_NODE, FaultKind.NEEDLE_SLIPPED);
        String text = SurvivalText.of(survival);

        assertFalse(survival.survives());
        assertEquals(State.NEVER, survival.faults().get(3).state());
        assertTrue(text.startsWith("FAIL. After 1 of 4 single faults something never recovers"), text);
        assertTrue(
                text.contains("needle-slipped kept needle/needle: a needle stands in the wrong place on kept needle"),
                text);
        assertTrue(text.indexOf("Never recovers") < text.indexOf("By kind of fault"), text);
    }

    @Test
    void aValueThatIsNotSentAgainAfterARestartNeverRecovers() throws IOException {
        Survival survival = survive(2, FaultKind.RESET);

        assertEquals(State.RECOVERED, survival.faults().get(0).state());
        assertEquals(State.NEVER, survival.faults().get(2).state());
        assertEquals(
                "a forgotten value is not sent again",
                panelOf(survival.faults().get(2), "left lamp").lack());
    }

    @Test
    void whatRecoversPasses() throws IOException {
        Survival survival = survive(2, FaultKind.SILENT_HOST);
        String text = SurvivalText.of(survival);

        assertTrue(survival.survives(), text);
        assertTrue(text.startsWith("PASS. The pit recovers from every one of 1 single fault."), text);
        assertTrue(text.contains("fuse each supply branch"), text);
        assertTrue(text.contains("at 0:04.000, for 1 s or once"), text);
    }

    @Test
    void faultsBeginAfterAThirdUnlessTold() throws IOException {
        assertEquals(4 * SECOND, survive(2, FaultKind.SILENT_HOST).atNanos());
        assertEquals(
                2 * SECOND,
                survive(2, OptionalLong.of(2 * SECOND), SECOND, FaultKind.SILENT_HOST)
                        .atNanos());
    }

    @Test
    void aRecordingThatIsOverBeforeTheFaultsAreIsRefused() {
        SurviveException refused = assertThrows(
                SurviveException.class,
                () -> survive(2, OptionalLong.of(11 * SECOND), 2 * SECOND, FaultKind.SILENT_HOST));

        assertTrue(String.valueOf(refused.getMessage()).contains("ends at 12.0 s"), refused::toString);
    }

    @Test
    void progressRisesToTheEnd() throws IOException {
        List<Double> shares = new ArrayList<>();

        new Survive(pit, sweep(pit, 2), plan(OptionalLong.empty(), SECOND, FaultKind.RESET))
                .run((reached, share) -> shares.add(share));

        assertEquals(shares.stream().sorted().toList(), shares);
        assertEquals(1.0, shares.get(shares.size() - 1), 1e-9);
    }

    private static String what(FaultOutcome fault) {
        String other = fault.fault().other();
        return (fault.fault().kind() + " " + fault.target() + (other.isEmpty() ? "" : " as " + other)).strip();
    }

    private static PanelOutcome panelOf(FaultOutcome fault, String name) {
        return fault.panels().stream()
                .filter(panel -> panel.panel().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private Survival survive(int threads, FaultKind... kinds) throws IOException {
        return survive(threads, OptionalLong.empty(), SECOND, kinds);
    }

    private Survival survive(int threads, OptionalLong at, long lasts, FaultKind... kinds) throws IOException {
        return new Survive(pit, sweep(pit, threads), plan(at, lasts, kinds)).run(Progress.NONE);
    }

    private Survival survive(Pit other, int threads, FaultKind... kinds) throws IOException {
        return new Survive(other, sweep(other, threads), plan(OptionalLong.empty(), SECOND, kinds)).run(Progress.NONE);
    }

    private Sweep sweep(Pit played, int threads) {
        Source.Opening opening = () ->
                Source.recording(RecordingFiles.of(recording), played, ReadOptions.strict(), 0, PitFeed.TO_THE_END);
        return new Sweep(opening, 7, threads, RunLimit.USUAL);
    }

    private static Survive.Plan plan(OptionalLong at, long lasts, FaultKind... kinds) {
        return new Survive.Plan("0.1.0", "flight.csv", 7, List.of(kinds), at, lasts);
    }

    private static String json(Survival survival) throws IOException {
        StringWriter text = new StringWriter();
        SurvivalJson.write(survival, text);
        return text.toString();
    }

    private static Pit pit() {
        return understood(TEXT);
    }

    private static Pit oneBoard() {
        return understood(TEXT.replace("hub: other", "hub: board"));
    }

    private static Pit understood(String text) {
        PitFile.Result result = PitFile.parse("small.yaml", text);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit();
    }

    private static final String TEXT = """
            pit: Two segments
            host: {state-rate: as recorded}
            hubs:
              board: {kind: board, adapter: none}
              other: {kind: board, adapter: none}
            profiles:
              plain:
                source: chosen for this test
                replies-from: interrupt
                reply-gap: 100 us + exponential 50 us
                boot: 300 ms
              slow: {like: plain, reply-gap: 2200 us}
            budgets: {update: 150 ms, control: 150 ms, source: chosen for this test}
            signals:
              lamp 1: {unit: on/off, range: 0..1, number: 1}
              speed: {unit: kt, range: 0..200, number: 2}
              lamp 2: {unit: on/off, range: 0..1, number: 3}
            segments:
              refreshed:
                baud: 500 kbaud
                format: 8N1
                protocol: dropline
                controller: {hub: board, state: broadcast, time-out: 2 ms, refresh: 2 s}
              once:
                baud: 19.2 kbaud
                format: 8E1
                protocol: modbus-rtu
                controller: {hub: other, state: addressed, time-out: 100 ms, refresh: never}
            nodes:
              kept: {segment: refreshed, address: 1, profile: plain}
              kept too: {segment: refreshed, address: 2, profile: plain}
              left: {segment: once, address: 1, profile: slow, registers: {lamp 2: 0}}
            panels:
              kept lamp:
                node: kept
                indicators:
                  lamp: {kind: lamp, shows: lamp 1}
              kept needle:
                node: kept too
                indicators:
                  needle: {kind: gauge stepper, shows: speed, speed: 100 kt/s}
              left lamp:
                node: left
                indicators:
                  lamp: {kind: lamp, shows: lamp 2}
            """;
}
