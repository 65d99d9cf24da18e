package dropline.harness.pitfile;

import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Panel;
import dropline.harness.pitfile.Words.Choices;
import dropline.harness.yaml.Tree;
import java.util.List;
import java.util.stream.Stream;

/** The keys of panels and budgets. */
final class PanelKeys {
    static final Key<Long> UPDATE = Key.optional(
            "update",
            Times.time(Times.MICRO, Times.HOUR),
            "slowest update latency; 150 ms where nothing says otherwise");
    static final Key<Long> CONTROL = Key.optional(
            "control",
            Times.time(Times.MICRO, Times.HOUR),
            "slowest control latency; 150 ms where nothing says otherwise");
    static final Key<String> SOURCE = Key.optional("source", Words.text("text"), "where the limits come from");

    static final Choices<Indicator.Kind> INDICATOR_KINDS = new Choices<Indicator.Kind>()
            .with("lamp", Indicator.Kind.LAMP)
            .with("filament lamp", Indicator.Kind.FILAMENT_LAMP)
            .with("backlight zone", Indicator.Kind.BACKLIGHT_ZONE)
            .with("LED bar", Indicator.Kind.LED_BAR)
            .with("flag", Indicator.Kind.FLAG)
            .with("digits", Indicator.Kind.DIGITS)
            .with("character LCD", Indicator.Kind.CHARACTER_LCD)
            .with("VFD", Indicator.Kind.VFD)
            .with("OLED", Indicator.Kind.OLED)
            .with("gauge stepper", Indicator.Kind.GAUGE_STEPPER)
            .with("stepper", Indicator.Kind.STEPPER)
            .with("servo", Indicator.Kind.SERVO)
            .with("drum counter", Indicator.Kind.DRUM_COUNTER);
    static final Key<Indicator.Kind> KIND = Key.required("kind", Words.choice(INDICATOR_KINDS), "what it is");

    private static final List<Key<?>> LIMITS = List.of(UPDATE, CONTROL, SOURCE);

    static final Section KIND_LIMITS = Section.named(
            "kinds",
            "limits for kinds of indicator, by kind: " + KIND.type().words()
                    + "; a panel is held to the tightest of its kinds",
            List.of(UPDATE, SOURCE));
    static final Section BUDGETS = Section.one("budgets", "the limits a panel is judged against", LIMITS, KIND_LIMITS);
    static final Section BUDGET = Section.one("budget", "limits for this panel alone", LIMITS);

    static final Key<List<Tree.Scalar>> SHOWS =
            Key.required("shows", Words.names("the name of a signal, or a list of names"), "the signals it shows");
    static final Key<Long> DELAY = Key.standard(
                    "delay",
                    Times.time(0, 10 * Times.SECOND),
                    "0 us",
                    "lamp, backlight zone: time to switch; flag: time to turn; what moves: command to first motion")
            .figure();
    static final Key<Long> REFRESH_EVERY = Key.optional(
                    "refresh-every",
                    Times.time(Times.MICRO, Times.HOUR),
                    "what is refreshed: from one refresh to the next; servo: its frame, else 20 ms; backlight zone:"
                            + " the period of its dimmer, where a new brightness has to wait for it")
            .figure();
    static final Key<Long> REFRESH_TAKES = Key.optional(
                    "refresh-takes",
                    Times.time(1, Times.HOUR),
                    "LED bar, digits, character LCD, VFD, OLED: how long a refresh takes")
            .figure();
    static final Key<Blocks> REFRESH_BLOCKS =
            Key.standard("refresh-blocks", BusKeys.blocks(), "loop", "what a refresh keeps from running on its node");
    static final Key<Numbers.Speed> SPEED = Key.optional(
                    "speed", Numbers.speed(), "gauge stepper, servo, drum counter: greatest speed")
            .figure();

    static final Key<Long> DRAWS = Key.optional(
                    "draws",
                    Numbers.measure(Measure.current(), 0, 100_000_000),
                    "current it takes beside the board while lit, showing or moving; where left out, unknown, or for a"
                            + " panel what its indicators draw. A panel's counts before its indicators', whatever they"
                            + " do")
            .electrical();

    static final Section INDICATORS = Section.named(
                    "indicators",
                    "what it shows with, by name",
                    joined(
                            List.of(
                                    BusKeys.FIGURES_FROM,
                                    KIND,
                                    SHOWS,
                                    DELAY,
                                    REFRESH_EVERY,
                                    REFRESH_TAKES,
                                    REFRESH_BLOCKS,
                                    SPEED,
                                    DRAWS),
                            joined(MotionKeys.ALL, PowerKeys.INDICATOR)))
            .like(Shelf.INDICATORS);

    static final Choices<Control.Kind> CONTROL_KINDS = new Choices<Control.Kind>()
            .with("toggle", Control.Kind.TOGGLE)
            .with("three-way toggle", Control.Kind.THREE_WAY_TOGGLE)
            .with("held toggle", Control.Kind.HELD_TOGGLE)
            .with("selector", Control.Kind.SELECTOR)
            .with("button", Control.Kind.BUTTON)
            .with("held button", Control.Kind.HELD_BUTTON)
            .with("key matrix", Control.Kind.KEY_MATRIX)
            .with("encoder", Control.Kind.ENCODER)
            .with("axis", Control.Kind.AXIS)
            .with("lever", Control.Kind.LEVER);
    static final Key<Control.Kind> CONTROL_KIND = Key.required("kind", Words.choice(CONTROL_KINDS), "what it is");
    static final Key<Integer> CONTROL_NUMBER = Key.required(
            "number",
            Numbers.whole(0, 65535),
            "number on the wire (with modbus-rtu, its register), one for each control of a node");
    static final Key<Long> DEBOUNCE = Key.standard(
                    "debounce",
                    Times.time(0, 10 * Times.SECOND),
                    "0 us",
                    "how long a contact must hold still to be believed")
            .figure();
    static final Key<Long> BOUNCE = Key.standard(
                    "bounce", Times.time(0, 10 * Times.SECOND), "0 us", "longest time its contact bounces after a move")
            .figure();
    static final Key<Integer> DEAD_BAND = Key.standard(
                    "dead-band",
                    Numbers.whole(0, 65535),
                    "0",
                    "axis: moves up to this many units are not reported; lever: how far beyond the middle the next"
                            + " detent begins")
            .figure();

    static final Section CONTROLS = Section.named(
                    "controls",
                    "what can be moved on it, by name; a name stands once in the pit",
                    joined(
                            List.of(BusKeys.FIGURES_FROM, CONTROL_KIND, CONTROL_NUMBER, DEBOUNCE, BOUNCE, DEAD_BAND),
                            ContactKeys.ALL))
            .like(Shelf.CONTROLS);

    static final Key<Tree.Scalar> NODE =
            Key.required("node", new NameAt("the name of a node"), "the node that carries it");
    static final Key<String> PLACE = Key.standard("place", Words.text("text"), "", "where it is mounted");
    static final Key<Panel.Status> STATUS = Key.standard(
            "status",
            Words.choice(new Choices<Panel.Status>()
                    .with("built", Panel.Status.BUILT)
                    .with("bench", Panel.Status.BENCH)
                    .with("planned", Panel.Status.PLANNED)),
            "built",
            "how far it has come");

    static final Key<String> NOTES =
            Key.standard("notes", Words.text("text"), "", "what else is to be remembered; nothing follows from it");

    static final Section PANELS = Section.named(
                    "panels",
                    "what a person sees and touches, by name",
                    List.of(NODE, PLACE, STATUS, DRAWS, PowerKeys.FED_BY, NOTES),
                    BUDGET,
                    INDICATORS,
                    CONTROLS)
            .like(Shelf.PANELS);

    static final Section KINDS = Section.one(
            "kinds",
            "what is written once and used by name, with like",
            List.of(),
            NodeKeys.NODES.as("kinds of node, by name"),
            PANELS.as("kinds of panel, by name"),
            INDICATORS.as("kinds of indicator, by name"),
            CONTROLS.as("kinds of control, by name"));

    private static List<Key<?>> joined(List<Key<?>> first, List<Key<?>> second) {
        return Stream.concat(first.stream(), second.stream()).toList();
    }

    private PanelKeys() {}
}
