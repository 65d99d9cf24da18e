package dropline.scenarios.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.harness.json.ReplayJson;
import dropline.harness.report.HtmlReport;
import dropline.harness.verdict.ControlResult;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.SegmentResult;
import java.io.IOException;
import java.io.StringWriter;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The demo flight through the demo pit: what it says, and that two panels miss their limit for the reasons intended.
 */
final class DemoTest {
    private static final long SEED = 1;

    private static Pit pit;
    private static ReplayResult result;

    @BeforeAll
    static void replay() throws IOException {
        pit = Shipped.pit(Shipped.DEMO_PIT);
        result = Shipped.judged(pit, "flight.dlr", Shipped.demo(pit, SEED), SEED);
    }

    @Test
    void pitHasManyPanelsOnThreeSegmentsOfThreeKinds() {
        assertEquals(
                List.of("500000 8N1 dropline", "76800 8N1 dropline", "19200 8E1 modbus-rtu"),
                pit.segments().stream()
                        .map(s ->
                                s.baud() + " " + s.format() + " " + s.protocol().name())
                        .toList());
        assertTrue(panels().size() >= 34, () -> "panels=" + panels().size());
    }

    @Test
    void pitHasEveryKindOfControllerAndNodeAndTheCommonIndicatorsAndControls() {
        Layout layout = Layout.of(pit);
        Set<Controller.Kind> controllers = EnumSet.noneOf(Controller.Kind.class);
        pit.segments().forEach(segment -> controllers.add(segment.controller().kind()));
        Set<Indicator.Kind> indicators = EnumSet.noneOf(Indicator.Kind.class);
        layout.slots().forEach(slot -> indicators.add(slot.indicator().kind()));
        Set<Control.Kind> controls = EnumSet.noneOf(Control.Kind.class);
        layout.controls().forEach(place -> controls.add(place.control().kind()));
        Set<Profile.ReplyFrom> replies = EnumSet.noneOf(Profile.ReplyFrom.class);
        layout.nodes().forEach(place -> replies.add(place.node().profile().replyFrom()));

        assertEquals(EnumSet.allOf(Controller.Kind.class), controllers);
        Set<Indicator.Kind> common = EnumSet.range(Indicator.Kind.LAMP, Indicator.Kind.SERVO);
        common.add(Indicator.Kind.BACKLIGHT_ZONE);
        assertEquals(common, indicators);
        assertEquals(EnumSet.range(Control.Kind.TOGGLE, Control.Kind.AXIS), controls);
        assertEquals(EnumSet.allOf(Profile.ReplyFrom.class), replies);
    }

    @Test
    void exactlyTheTwoIntendedPanelsMissTheirLimit() {
        assertEquals(Outcome.FAIL, result.outcome());
        assertEquals(Set.of("Engine trend", "Gear and flaps"), panels(Outcome.FAIL));
        assertEquals(Set.of(), panels(Outcome.UNDECIDED));
        assertEquals(panels().size() - 2, panels(Outcome.PASS).size());
    }

    @Test
    void reasonsGivenAreTheDisplayAndTheQueue() {
        PanelResult display = panel("Engine trend");
        PanelResult gear = panel("Gear and flaps");

        assertTrue(display.meanStages().deviceNanos() > display.updateLatency().meanNanos() / 2, display::toString);
        assertTrue(gear.meanStages().queueNanos() > gear.updateLatency().meanNanos() / 2, gear::toString);
        String advice = result.advice().toString();
        assertTrue(advice.contains("Engine trend") && advice.contains("Gear and flaps"), advice);
    }

    /** The worst case of a display: it just misses one refresh and waits for the next to end. */
    @Test
    void slowDisplayStaysBelowItsClosedForm() {
        long refreshEvery = 97_000_000;
        long refreshTakes = 92_160_000;
        PanelResult display = panel("Engine trend");
        long bus = display.updateLatency().maxNanos() - refreshEvery - refreshTakes;

        assertTrue(bus < 20_000_000, () -> "nanos on the way to the display=" + bus);
        assertTrue(display.updateLatency().maxNanos() > refreshTakes);
    }

    @Test
    void everyControlIsMovedAndToldInTime() {
        assertEquals(Layout.of(pit).controls().size(), result.controls().size());
        for (ControlResult control : result.controls()) {
            assertEquals(Outcome.PASS, control.verdict().outcome(), control::toString);
            assertEquals(0, control.lostSteps(), control::toString);
        }
    }

    @Test
    void nothingIsLostOnTheWire() {
        for (SegmentResult segment : result.segments()) {
            assertTrue(segment.asked() - segment.answered() <= 1, segment::toString);
            assertEquals(0, segment.retried() + segment.gaveUp() + segment.clashes() + segment.overruns());
        }
    }

    @Test
    void jsonIsWellFormedAndHoldsEveryPanelAndWholeNanoseconds() throws IOException {
        StringWriter text = new StringWriter();
        ReplayJson.write(result, text);

        JsonNode json = JsonMapper.builder().build().readTree(text.toString());

        assertEquals(ReplayResult.VERSION, json.path("version").asInt());
        assertEquals(panels().size(), json.path("panels").size());
        assertTrue(wholeNanos(json) > 1000, "a result is full of times");
    }

    @Test
    void reportShowsEveryPanel() {
        String page = HtmlReport.of(result);

        for (String panel : panels()) {
            assertTrue(page.contains(panel), () -> "the report must show every panel: panel=" + panel);
        }
        assertTrue(
                page.startsWith("<!DOCTYPE html>") || page.startsWith("<!doctype html>"), () -> page.substring(0, 40));
    }

    /** Counts the times in a document, each of which must be a whole number. */
    private static int wholeNanos(JsonNode node) {
        int found = 0;
        for (var property : node.properties()) {
            JsonNode value = property.getValue();
            if (property.getKey().endsWith("Nanos") && value.isValueNode()) {
                assertTrue(value.isIntegralNumber(), () -> property.getKey() + "=" + value);
                found++;
            }
            found += wholeNanos(value);
        }
        if (node.isArray()) {
            for (JsonNode element : node) {
                found += wholeNanos(element);
            }
        }
        return found;
    }

    private static PanelResult panel(String name) {
        return result.panels().stream()
                .filter(panel -> panel.panel().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Set<String> panels(Outcome outcome) {
        return result.panels().stream()
                .filter(panel -> panel.verdict().outcome() == outcome)
                .map(PanelResult::panel)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The names of all panels of the pit. */
    private static Set<String> panels() {
        return Layout.of(pit).nodes().stream()
                .flatMap(place -> place.node().panels().stream())
                .map(panel -> panel.name())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
