package dropline.harness.pitfile;

import dropline.bus.pit.Control;
import dropline.bus.pit.Control.Detent;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Motion.Zeroing;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Checks of what depends on the kind of an indicator or control. */
final class KindChecks {
    private static final String STEPS = "steps";
    private static final String DEGREES = "deg";
    private static final int MOST_KEYS = 16;

    private static final KindUses<Kind> OF_INDICATORS = new KindUses<>(
                    PanelKeys.KIND, PanelKeys.INDICATOR_KINDS.words())
            .with(
                    PanelKeys.DELAY,
                    those(kind -> !kind.refreshes() && kind != Kind.FILAMENT_LAMP),
                    EnumSet.of(Kind.FLAG))
            .with(PanelKeys.REFRESH_EVERY, those(kind -> kind.refreshes() || kind.hasFrames()), those(Kind::refreshes))
            .must(PanelKeys.REFRESH_TAKES, those(Kind::refreshes))
            .may(PanelKeys.REFRESH_BLOCKS, those(Kind::refreshes))
            .must(PanelKeys.SPEED, EnumSet.of(Kind.GAUGE_STEPPER, Kind.SERVO, Kind.DRUM_COUNTER))
            .must(MotionKeys.STEPS_PER_TURN, EnumSet.of(Kind.STEPPER))
            .may(MotionKeys.TURN, EnumSet.of(Kind.STEPPER))
            .may(MotionKeys.SWEEP, EnumSet.of(Kind.STEPPER, Kind.GAUGE_STEPPER, Kind.SERVO, Kind.DRUM_COUNTER))
            .must(MotionKeys.SLEW, EnumSet.of(Kind.STEPPER))
            .may(MotionKeys.ACCELERATION, EnumSet.of(Kind.STEPPER, Kind.GAUGE_STEPPER))
            .may(MotionKeys.ZEROING, EnumSet.of(Kind.STEPPER, Kind.GAUGE_STEPPER, Kind.DRUM_COUNTER))
            .may(MotionKeys.ZEROING_SPEED, EnumSet.of(Kind.STEPPER, Kind.GAUGE_STEPPER, Kind.DRUM_COUNTER))
            .must(MotionKeys.RISE, EnumSet.of(Kind.FILAMENT_LAMP))
            .must(MotionKeys.FALL, EnumSet.of(Kind.FILAMENT_LAMP))
            .may(PowerKeys.CURVE, EnumSet.of(Kind.BACKLIGHT_ZONE))
            .may(PowerKeys.BITS, EnumSet.of(Kind.BACKLIGHT_ZONE));

    private static final KindUses<Control.Kind> OF_CONTROLS = new KindUses<>(
                    PanelKeys.CONTROL_KIND, PanelKeys.CONTROL_KINDS.words())
            .may(PanelKeys.DEAD_BAND, EnumSet.of(Control.Kind.AXIS, Control.Kind.LEVER))
            .must(ContactKeys.POSITIONS, EnumSet.of(Control.Kind.SELECTOR))
            .may(ContactKeys.OPEN_FOR, EnumSet.of(Control.Kind.SELECTOR, Control.Kind.THREE_WAY_TOGGLE))
            .may(ContactKeys.OPEN_VALUE, EnumSet.of(Control.Kind.SELECTOR))
            .must(ContactKeys.ROWS, EnumSet.of(Control.Kind.KEY_MATRIX))
            .must(ContactKeys.COLUMNS, EnumSet.of(Control.Kind.KEY_MATRIX))
            .must(ContactKeys.SCAN, EnumSet.of(Control.Kind.KEY_MATRIX))
            .may(ContactKeys.DIODES, EnumSet.of(Control.Kind.KEY_MATRIX))
            .must(ContactKeys.DETENTS, EnumSet.of(Control.Kind.LEVER));

    private final Parts parts;
    private final Report report;

    KindChecks(Parts parts, Report report) {
        this.parts = parts;
        this.report = report;
    }

    private static Set<Kind> those(Predicate<Kind> which) {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        for (Kind kind : Kind.values()) {
            if (which.test(kind)) {
                kinds.add(kind);
            }
        }
        return kinds;
    }

    void indicator(Block indicator, List<Tree.Scalar> shows) {
        OF_INDICATORS.check(indicator, report);
        Optional<Kind> kind = indicator.written(PanelKeys.KIND);
        Optional<Block> signal =
                shows.isEmpty() ? Optional.empty() : parts.signal(shows.get(0).text());
        if (kind.isPresent() && kind.get().moves() && signal.isPresent()) {
            moving(indicator, kind.get(), signal.get());
        }
    }

    private void moving(Block indicator, Kind kind, Block signal) {
        turnOrSweep(indicator, kind);
        zeroing(indicator, signal);
        boolean swept = indicator.has(MotionKeys.SWEEP);
        String unit = swept ? DEGREES : signal.get(Schema.UNIT).orElse("");
        if (unit.isEmpty()) {
            return;
        }
        String why = swept
                ? "those of its shaft, since its sweep is given ("
                        + indicator.at(MotionKeys.SWEEP).line(indicator.nameAt()) + ")"
                : "the unit of " + signal.name() + " (" + signal.at(Schema.UNIT).line(indicator.nameAt()) + ")";
        String motor = kind == Kind.STEPPER ? STEPS : unit;
        String motorWhy = kind == Kind.STEPPER ? "steps of its motor" : why;
        indicator
                .written(PanelKeys.SPEED)
                .ifPresent(speed -> unit(speed.place(), "speed", speed.unit(), unit, "/s", why));
        indicator
                .written(MotionKeys.SLEW)
                .ifPresent(slew -> unit(slew.place(), "slew", slew.unit(), STEPS, "/s", motorWhy));
        if (!swept) {
            indicator
                    .written(MotionKeys.TURN)
                    .ifPresent(turn -> unit(turn.place(), "turn", turn.unit(), unit, "", why));
        }
        indicator
                .written(MotionKeys.ACCELERATION)
                .ifPresent(gain -> unit(gain.place(), "acceleration", gain.unit(), motor, "/s2", motorWhy));
        indicator
                .written(MotionKeys.ZEROING_SPEED)
                .ifPresent(speed -> unit(speed.place(), "zeroing-speed", speed.unit(), motor, "/s", motorWhy));
    }

    private void turnOrSweep(Block indicator, Kind kind) {
        boolean turn = indicator.has(MotionKeys.TURN);
        boolean sweep = indicator.has(MotionKeys.SWEEP);
        if (kind == Kind.STEPPER && !turn && !sweep) {
            KindUses.needs(indicator, MotionKeys.TURN, "or sweep, since kind is stepper", report);
        } else if (turn && sweep) {
            String expected = "turn or sweep, since each says how far it turns";
            report.at(indicator.at(MotionKeys.SWEEP), "sweep", PitCode.CONFLICT, expected, "delete one of the two");
        }
    }

    private void unit(Tree.Scalar place, String key, String found, String wanted, String per, String why) {
        if (!found.equals(wanted)) {
            String thing =
                    switch (per) {
                        case "/s" -> "a speed in ";
                        case "/s2" -> "an acceleration in ";
                        default -> "an amount in ";
                    };
            report.at(place, key, PitCode.WRONG_UNIT, thing + wanted + per + ", " + why, null);
        }
    }

    private void zeroing(Block indicator, Block signal) {
        Zeroing zeroing = indicator.get(MotionKeys.ZEROING).orElse(Zeroing.NONE);
        if (zeroing != Zeroing.NONE && !indicator.has(MotionKeys.ZEROING_SPEED)) {
            String why = "since zeroing is " + indicator.at(MotionKeys.ZEROING).found();
            KindUses.needs(indicator, MotionKeys.ZEROING_SPEED, why, report);
        }
        if (zeroing == Zeroing.NONE && indicator.has(MotionKeys.ZEROING_SPEED)) {
            report.at(
                    indicator.at(MotionKeys.ZEROING_SPEED),
                    "zeroing-speed",
                    PitCode.UNUSED_KEY,
                    "zeroing-speed only with zeroing: sensor or zeroing: stop",
                    "delete it, or write zeroing:");
        }
        if (zeroing == Zeroing.STOP && signal.get(Schema.WRAPS).orElse(false)) {
            Tree written = indicator.at(MotionKeys.ZEROING);
            boolean own = !written.place().file().equals(Presets.FILE);
            report.at(
                    own ? written : indicator.nameAt(),
                    "zeroing",
                    PitCode.CONFLICT,
                    own ? "stop" : "zeroing: stop, which the preset that it is like brings with it",
                    "sensor or none, since " + signal.name() + " wraps and its indicator goes round past any stop",
                    own ? null : "write zeroing: sensor beside its like");
        }
    }

    void control(Block control) {
        OF_CONTROLS.check(control, report);
        control.written(PanelKeys.CONTROL_KIND).ifPresent(kind -> {
            switch (kind) {
                case SELECTOR -> selector(control);
                case KEY_MATRIX -> matrix(control);
                case LEVER -> lever(control);
                default -> {}
            }
        });
    }

    private void selector(Block control) {
        long open = control.get(ContactKeys.OPEN_FOR).orElse(0L);
        long debounce = control.get(PanelKeys.DEBOUNCE).orElse(0L);
        if (open > debounce && !control.has(ContactKeys.OPEN_VALUE)) {
            String why = "since its contacts are open for longer than debounce, so that the firmware sees it";
            KindUses.needs(control, ContactKeys.OPEN_VALUE, why, report);
        }
        Optional<Integer> value = control.written(ContactKeys.OPEN_VALUE);
        Optional<Integer> positions = control.written(ContactKeys.POSITIONS);
        if (value.isPresent() && positions.isPresent() && value.get() < positions.get()) {
            String expected = "a value that no position has: " + positions.get() + " or more, since positions are 0.."
                    + (positions.get() - 1);
            report.at(control.at(ContactKeys.OPEN_VALUE), "open-value", PitCode.CONFLICT, expected, null);
        }
    }

    private void matrix(Block control) {
        Optional<Integer> rows = control.written(ContactKeys.ROWS);
        Optional<Integer> columns = control.written(ContactKeys.COLUMNS);
        if (rows.isPresent() && columns.isPresent() && rows.get() * columns.get() > MOST_KEYS) {
            report.at(
                    control.at(ContactKeys.COLUMNS),
                    "columns",
                    PitCode.OUT_OF_RANGE,
                    "at most " + MOST_KEYS + " keys, rows times columns, since a control has 16 bits on the wire",
                    "make several controls of it, each with some of the rows and a number of its own");
        }
    }

    private void lever(Block control) {
        int deadBand = control.get(PanelKeys.DEAD_BAND).orElse(0);
        List<Detent> detents = control.written(ContactKeys.DETENTS).orElse(List.of());
        for (int i = 1; i < detents.size(); i++) {
            int apart = detents.get(i).position() - detents.get(i - 1).position();
            if (apart <= 2 * deadBand) {
                report.at(
                        control.at(PanelKeys.DEAD_BAND),
                        "dead-band",
                        PitCode.CONFLICT,
                        "less than half of " + apart + ", which is what lies between "
                                + detents.get(i - 1).name() + " and "
                                + detents.get(i).name(),
                        null);
                return;
            }
        }
    }
}
