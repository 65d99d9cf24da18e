package dropline.scenarios.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import dropline.bus.supply.State;
import dropline.harness.json.PowerJson;
import dropline.harness.power.FlightStudy;
import dropline.harness.power.PowerResult;
import dropline.harness.power.PowerStudy;
import dropline.harness.power.PowerUpStudy;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.io.StringWriter;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** The demo's supplies: that they are enough, and that a flight takes what it can take. */
final class DemoPowerTest {
    private static final long MINUTE = 60_000_000_000L;

    private static PowerResult flown(Pit pit, int threads) throws IOException {
        Source.Opening opening =
                () -> Source.recording(RecordingFiles.of(Shipped.DEMO_FLIGHT), pit, ReadOptions.strict(), 0, MINUTE);
        PowerResult started = PowerUpStudy.with(PowerStudy.of(pit), pit, 1, threads);
        return FlightStudy.over(started, pit, "flight.dlr", opening, 1, threads, Progress.NONE);
    }

    private static String json(PowerResult result) throws IOException {
        StringWriter json = new StringWriter();
        PowerJson.write(result, json);
        return json.toString();
    }

    @Test
    void everyRuleHoldsOnEverySupply() {
        PowerResult result = PowerStudy.of(Shipped.pit(Shipped.DEMO_PIT));

        assertEquals(18, result.rulings().size());
        assertTrue(result.passes(), () -> result.rulings().toString());
        assertEquals(0, result.unfed());
    }

    @Test
    void aFlightTakesMoreThanIdleAndOnAverageLessThanALampTest() throws IOException {
        PowerResult result = flown(Shipped.pit(Shipped.DEMO_PIT), 2);

        for (PowerResult.Point supply : result.supplies()) {
            double mean = Objects.requireNonNull(result.flight())
                    .points()
                    .get(supply.number())
                    .mean();
            assertTrue(mean > supply.amps(State.IDLE), supply::toString);
            assertTrue(mean < supply.amps(State.LAMP_TEST), supply::toString);
        }
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws IOException {
        Pit pit = Shipped.pit(Shipped.DEMO_PIT);

        assertEquals(json(flown(pit, 1)), json(flown(pit, 3)));
    }
}
