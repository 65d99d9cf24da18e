package dropline.scenarios.baseline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.plan.AtBaud;
import dropline.harness.baseline.Accepted;
import dropline.harness.baseline.AcceptedRun;
import dropline.harness.baseline.Comparison;
import dropline.harness.baseline.Deviation;
import dropline.harness.baseline.Deviation.Standing;
import dropline.harness.baseline.Figure;
import dropline.harness.baseline.Subject;
import dropline.harness.baseline.Tracked;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Replayed;
import dropline.harness.replay.Source;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.Run;
import dropline.harness.verdict.Verdicts;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Twenty seconds of the demo flight: an unchanged pit raises no alarm, one that was changed a little the right one. */
final class FalseAndTrueAlarmsTest {
    private static final long SECOND = 1_000_000_000L;
    private static final int ACCEPTED_SEEDS = 20;
    private static final int AGAIN = 100;
    private static final String RUN = "climb";

    private static PitFile.Understood demo = understood(PitFile.read(Path.of("demo/pit.yaml")));
    private static Comparison comparison = new Comparison(new Accepted("", "", 1, Map.of()));

    @BeforeAll
    static void accept() throws IOException {
        List<Tracked> runs = new ArrayList<>();
        for (long seed : LongStream.rangeClosed(1, ACCEPTED_SEEDS).toArray()) {
            runs.add(tracked(demo, seed));
        }
        AcceptedRun run = AcceptedRun.of("flight", "", 1, "", runs);
        comparison = new Comparison(new Accepted("", "", ACCEPTED_SEEDS, Map.of(RUN, run)));
    }

    private static PitFile.Understood understood(PitFile.Result result) {
        if (result instanceof PitFile.Understood understood) {
            return understood;
        }
        throw new AssertionError(result);
    }

    private static Tracked tracked(PitFile.Understood described, long seed) throws IOException {
        return tracked(described.pit(), seed);
    }

    private static Tracked tracked(Pit pit, long seed) throws IOException {
        RecordingFiles flight = RecordingFiles.of(Path.of("demo/flight.dlr"));
        Replayed replayed = new Replay(
                        pit,
                        () -> Source.recording(flight, pit, ReadOptions.strict(), 60 * SECOND, 80 * SECOND),
                        seed,
                        1)
                .run(false, null, Progress.NONE);
        Run run =
                new Run("test", new Recording("flight", replayed.durationNanos()), seed, replayed.digest(), List.of());
        return Tracked.of(new Verdicts(pit, Layout.of(pit)).of(run, replayed.segments()));
    }

    private static List<Deviation> deviations(PitFile.Understood pit) throws IOException {
        return comparison.of(RUN, List.of(tracked(pit, 5_000)));
    }

    private static PitFile.Understood with(String path, String value) {
        return understood(demo.tree().with(path, value));
    }

    private static List<Deviation> alarms(List<Deviation> deviations) {
        return deviations.stream()
                .filter(one -> one.standing() == Standing.WORSE || one.standing() == Standing.GONE)
                .toList();
    }

    private static boolean isOf(Deviation deviation, Subject.Kind kind, String name, Figure figure) {
        return deviation.subject().equals(new Subject(kind, name)) && deviation.figure() == figure;
    }

    @Test
    void aHundredRunsOfTheSamePitRaiseNoAlarm() throws IOException {
        List<Deviation> all = new ArrayList<>();
        for (int again = 0; again < AGAIN; again++) {
            all.addAll(comparison.of(RUN, List.of(tracked(demo, 10_000 + again))));
        }

        assertEquals(List.of(), all);
    }

    @Test
    void fiftyMicrosecondsOfOneBoardsReplyGapAreSeen() throws IOException {
        // its mean is 100 us
        List<Deviation> alarms =
                alarms(deviations(with("nodes.airspeed-board.profile", "{like: front-loop, reply-gap: 150 us}")));

        assertTrue(isOf(alarms.get(0), Subject.Kind.NODE, "airspeed-board", Figure.REPLY_GAP), alarms.toString());
        assertTrue(
                alarms.stream()
                        .allMatch(one -> List.of("airspeed-board", "front")
                                .contains(one.subject().name())),
                alarms.toString());
    }

    @Test
    void fiveMillisecondsMoreOfABlockingDisplayAreSeen() throws IOException {
        String path = demo.tree().paths().stream()
                .filter(one -> one.endsWith("drum.refresh-takes"))
                .findFirst()
                .orElseThrow();

        List<Deviation> alarms = alarms(deviations(with(path, "5060 us")));

        assertTrue(
                alarms.stream().anyMatch(one -> isOf(one, Subject.Kind.NODE, "altimeter-board", Figure.REPLY_GAP)),
                alarms.toString());
        assertTrue(
                alarms.stream()
                        .filter(one -> one.subject().kind() == Subject.Kind.NODE)
                        .allMatch(one -> one.subject().name().equals("altimeter-board")),
                alarms.toString());
    }

    @Test
    void oneMorePanelIsSeen() throws IOException {
        PitFile.Understood more = understood(demo.tree().withPart("""
                nodes:
                  spare-board: {segment: front, address: 99, profile: front-loop, supply: front-left}
                panels:
                  Spare:
                    node: spare-board
                    indicators:
                      spare number: {like: number, shows: altitude, refresh-takes: 60 us}
                """));

        List<Deviation> deviations = deviations(more);

        assertTrue(deviations.stream()
                .anyMatch(one -> one.standing() == Standing.NEW
                        && one.subject().equals(new Subject(Subject.Kind.NODE, "spare-board"))));
        assertTrue(deviations.stream()
                .anyMatch(one -> one.standing() == Standing.NEW
                        && one.subject().equals(new Subject(Subject.Kind.PANEL, "Spare"))));
        assertTrue(
                alarms(deviations).stream()
                        .anyMatch(one -> isOf(one, Subject.Kind.SEGMENT, "front", Figure.MEAN_CYCLE)),
                deviations.toString());
    }

    @Test
    void aBaudRateOneStepDownIsSeen() throws IOException {
        // the boards' clocks are set to the new rate as well
        Pit slower = AtBaud.of(demo.pit(), 0, 250_000);

        List<Deviation> alarms = alarms(comparison.of(RUN, List.of(tracked(slower, 5_000))));

        assertTrue(
                alarms.stream().anyMatch(one -> isOf(one, Subject.Kind.SEGMENT, "front", Figure.MEAN_CYCLE)),
                alarms.toString());
        assertTrue(
                alarms.stream()
                        .noneMatch(one -> one.subject().name().equals("overhead")
                                || one.subject().name().equals("pedestal")),
                alarms.toString());
    }
}
