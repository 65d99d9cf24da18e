package dropline.harness.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.pitfile.PitFile;
import dropline.harness.size.Judging;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Fronts as people build them: 8-bit boards that answer from their loop, at 500 kbaud, which 16 MHz makes exactly. */
final class FrontTest {
    private static final List<String> PLACES = List.of("front, left", "front, right", "overhead", "pedestal", "left");

    private static String pit(int panels, String unitLoad) {
        StringBuilder signals = new StringBuilder();
        StringBuilder nodes = new StringBuilder();
        StringBuilder all = new StringBuilder();
        for (int i = 1; i <= panels; i++) {
            signals.append("  value N: {unit: deg, range: 0..360, resolution: 0.5, number: N}\n".replace("N", "" + i));
            nodes.append("  board N: {segment: bus, address: N, profile: loop, transceiver: chip}\n"
                    .replace("board N", "board " + i)
                    .replace("address: N", "address: " + i));
            all.append("""
                  panel N:
                    node: board N
                    place: PLACE
                    indicators: {needle: {kind: gauge stepper, shows: value N, speed: 180 deg/s}}
                    controls: {switch N: {kind: toggle, number: 1, debounce: 5 ms}}
                    budget: {update: 100 ms, control: 150 ms, source: chosen for this test}
                """.replace(" N", " " + i).replace("PLACE", PLACES.get(i * PLACES.size() / (panels + 1))));
        }
        return """
            pit: Front
            load: {every: 40 ms, changes: 20}
            hubs: {hub: {kind: board, adapter: native USB}}
            transceivers: {chip: {source: chosen for this test, unit-load: UNIT}}
            profiles: {loop: {like: 8-bit loop, clock: 16 MHz, ticks-per-bit: 32}}
            segments:
              bus:
                baud: 500 kbaud
                controller: {hub: hub, time-out: 5 ms, gap: 50 us, transceiver: chip}
            """.replace("UNIT", unitLoad) + "signals:\n" + signals + "nodes:\n" + nodes + "panels:\n" + all;
    }

    private static Planned planned(String text) throws IOException {
        PitFile.Understood understood = PitOfBoards.understood(text);
        try (Judging judging = new Judging(2)) {
            PlanAsked asked = new PlanAsked(
                    "test", "load", understood.pit(), understood.nodes(), List.of(115_200), false, 0.2, 1, 1);
            return new Planning(
                            asked,
                            PitOfBoards.load(understood.pit(), 10_000_000_000L),
                            understood.figures(),
                            judging,
                            2)
                    .run();
        }
    }

    /** Common practice: a front of 31 panels on one segment is ordinary; with its controller that makes 32 loads. */
    @Test
    void aFrontOf31PanelsStaysOnOneSegment() throws IOException {
        PlanResult result = planned(pit(31, "1")).result();

        assertTrue(result.passes());
        assertEquals(1, result.segments().size());
        assertEquals(List.of(), result.moves());
    }

    /** 32 unit loads on a pair (TI SLLA272D, bus loading): 100 of a whole one, and controllers, need four pairs. */
    @Test
    void aHundredPanelsNeedFourSegmentsForTheirUnitLoadsAndThatIsSaid() throws IOException {
        PlanResult result = planned(pit(100, "1")).result();

        assertTrue(result.passes());
        assertEquals(4, result.segments().size());
        assertEquals(
                100,
                result.segments().stream().mapToInt(segment -> segment.nodes()).sum());
        assertTrue(result.segments().stream().allMatch(segment -> segment.nodes() <= 31));
        assertTrue(
                result.sentences().stream().anyMatch(sentence -> sentence.contains("unit loads would be")),
                result.sentences().toString());
    }

    @Test
    void withEighthsOfAUnitLoadFewerSegmentsDo() throws IOException {
        PlanResult result = planned(pit(100, "1/8")).result();

        assertTrue(result.passes());
        assertTrue(result.segments().size() < 4);
    }
}
