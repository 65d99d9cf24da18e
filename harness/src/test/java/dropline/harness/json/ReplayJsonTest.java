package dropline.harness.json;

import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.RIGHT;
import static dropline.harness.measure.SmallPit.SPEED;
import static dropline.harness.measure.SmallPit.SPEED_NEEDLE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.harness.finding.Cause;
import dropline.harness.finding.Confidence;
import dropline.harness.finding.Finding;
import dropline.harness.finding.Tiers;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SmallPit;
import dropline.harness.verdict.DeadNode;
import dropline.harness.verdict.InjectedFault;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.Run;
import dropline.harness.verdict.Strain;
import dropline.harness.verdict.Verdicts;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The JSON document against its description in docs/json.md. */
class ReplayJsonTest {
    @Test
    void keysAreTheDescribedOnesInTheDescribedOrder() throws IOException {
        JsonPage page = JsonPage.read(
                "json.md", Set.of("worst", "settling", "restsOn", "tried", "next", "half", "double", "boundNanos"));

        Set<String> unseen = page.hold(JsonMapper.shared().readTree(written(result())));

        assertEquals(Set.of(), unseen, "shapes described that the document did not hold");
    }

    @Test
    void theSameResultIsTheSameText() throws IOException {
        assertEquals(written(result()), written(result()));
    }

    @Test
    void theDocumentIsOneLine() throws IOException {
        String text = written(result());

        assertEquals(text.length() - 1, text.indexOf('\n'));
    }

    @Test
    void figuresSurviveTheJourney() throws IOException {
        ReplayResult result = result();
        JsonNode json = JsonMapper.shared().readTree(written(result));

        assertEquals(Long.MIN_VALUE + 1, json.get("seed").longValue());
        assertEquals("00000000000000ab", json.get("digest").stringValue());
        assertEquals(result.panels().size(), json.get("panels").size());
        JsonNode first = json.get("panels").get(0);
        assertEquals(
                result.panels().get(0).verdict().valueNanos(),
                first.get("verdict").get("valueNanos").longValue());
        assertEquals("<script> & \"quotes\"", json.get("recording").get("name").stringValue());
    }

    @Test
    void aWriterThatFailsIsAnIoException() {
        Writer full = new Writer() {
            @Override
            public void write(char[] chars, int offset, int length) throws IOException {
                throw new IOException("disk full");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };

        IOException thrown = Assertions.assertThrows(IOException.class, () -> ReplayJson.write(result(), full));
        assertTrue(String.valueOf(thrown.getMessage()).contains("disk full"));
    }

    private static String written(ReplayResult result) throws IOException {
        StringWriter text = new StringWriter();
        ReplayJson.write(result, text);
        return text.toString();
    }

    /** A result in which every shape appears. */
    private static ReplayResult result() {
        SegmentMeasures healthy = fed();
        SegmentMeasures dead = fed();
        Run run = new Run(
                "0.1.0",
                new Recording("<script> & \"quotes\"", 5_000 * MS),
                Long.MIN_VALUE + 1,
                0xABL,
                List.of(new InjectedFault(
                        "dead-node right", "dead-node", "", "right", "", "", 0, 5_000 * MS, "none", 0, "none", 0)),
                List.of(new Finding(
                        List.of(Cause.DRIVER_RELEASED_EARLY),
                        Finding.Subject.NODE,
                        "node 12",
                        12,
                        "right",
                        Confidence.CERTAIN,
                        14,
                        2_000,
                        9_000,
                        Tiers.ALL,
                        "Node <12> lets go of the line too soon.",
                        "Release the driver in the transmit-complete interrupt.")),
                List.of("a caveat"));
        return new Verdicts(SmallPit.pit(), Layout.of(SmallPit.pit()))
                .of(run, List.of(healthy), List.of(new DeadNode(RIGHT, 0, List.of(dead))))
                .restingOn(new RestsOn(
                        1,
                        2,
                        3,
                        4,
                        new RestsOn.Tried(
                                3,
                                0,
                                2_000 * MS,
                                0,
                                List.of("profile x, fifo at half"),
                                0,
                                new RestsOn.Next(
                                        "profile <x>, reply-gap",
                                        "300 us",
                                        "pit.yaml:3:4",
                                        "left",
                                        new Strain(0, 0.5, "a"),
                                        null,
                                        new Strain(1, 1.5, "b")))));
    }

    private static SegmentMeasures fed() {
        SegmentMeasures measures = SmallPit.measures();
        SmallPit.start(measures);
        measures.cycleStarted(2 * MS, 1);
        measures.cycleStarted(12 * MS, 2);
        measures.stateChanged(1_000 * MS, SPEED, 2, 50);
        measures.stateChanged(1_000 * MS, GEAR, 2, 1);
        measures.stateSent(1_000 * MS);
        measures.frameStarted(1_001 * MS, -1, 0, LEFT, 1, 8);
        measures.carried(1_001 * MS, LEFT, SPEED, 2, 1);
        measures.frameEnded(1_002 * MS, -1, 0, LEFT, 1);
        measures.answered(1_003 * MS, LEFT, 1, 1, 100_000);
        measures.applied(1_150 * MS, SPEED_NEEDLE, 2, 1_002 * MS);
        measures.moved(1_151 * MS, SPEED_NEEDLE, 0, 1_201 * MS, 50);
        measures.shown(1_151 * MS, SPEED_NEEDLE, 2);
        measures.ended(5_000 * MS);
        return measures;
    }
}
