package dropline.harness.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.harness.survive.FaultOutcome;
import dropline.harness.survive.PanelOutcome;
import dropline.harness.survive.Survival;
import dropline.harness.verdict.InjectedFault;
import dropline.harness.verdict.Recording;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The JSON document against its description in docs/survive-json.md. */
final class SurvivalJsonTest {
    @Test
    void keysAreTheDescribedOnesInTheDescribedOrder() throws IOException {
        JsonPage page = JsonPage.read("survive-json.md", Set.of());

        assertEquals(Set.of(), page.hold(JsonMapper.shared().readTree(written())));
    }

    @Test
    void figuresSurviveTheJourney() throws IOException {
        JsonNode json = JsonMapper.shared().readTree(written());

        JsonNode panel = json.get("outcomes").get(0).get("panels").get(0);
        assertEquals("never", panel.get("state").stringValue());
        assertEquals(4_000, panel.get("worstUpdateNanos").longValue());
        assertEquals(Long.MAX_VALUE, json.get("seed").longValue());
    }

    private static String written() throws IOException {
        StringWriter text = new StringWriter();
        SurvivalJson.write(survival(), text);
        return text.toString();
    }

    private static Survival survival() {
        PanelOutcome panel = new PanelOutcome(
                "Oil", "oil", PanelOutcome.State.NEVER, 4_000, 3_000, 0, "a change is not shown", false, 2, 1);
        InjectedFault fault =
                new InjectedFault("dead-node oil", "dead-node", "front", "oil", "", "", 1, 2, "none", 0, "none", 0);
        return new Survival(
                Survival.VERSION,
                "0.1.0",
                "Invented pit",
                new Recording("flight.dlr", 9_000),
                Long.MAX_VALUE,
                1,
                1,
                List.of(new Survival.Allowed("Oil", "front", 1, 2, 3)),
                List.of(new FaultOutcome(fault, "oil", List.of(panel))),
                List.of("1 bad row was left out of the recording."));
    }
}
