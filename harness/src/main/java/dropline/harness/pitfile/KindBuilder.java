package dropline.harness.pitfile;

import dropline.bus.pit.Control;
import dropline.bus.pit.Control.Matrix;
import dropline.bus.pit.Control.Positions;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Glow;
import dropline.bus.pit.Motion;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes what depends on the kind of an indicator or control, from a file without problems. */
final class KindBuilder {
    private static final int CENTRE = 1;
    private static final double FULL_TURN_DEGREES = 360;

    private KindBuilder() {}

    /**
     * Degrees of its shaft, and steps of its motor, become the signal's unit.
     *
     * @param range of the signal it shows, from least to greatest
     */
    static Motion motion(Block block, Indicator.Kind kind, double range) {
        if (!kind.moves()) {
            return Motion.NONE;
        }
        boolean steps = kind == Indicator.Kind.STEPPER;
        double degree = block.written(MotionKeys.SWEEP)
                .map(sweep -> range * 1000 / sweep)
                .orElse(1.0);
        double step = steps ? turn(block, degree) / block.value(MotionKeys.STEPS_PER_TURN) : 0;
        double unit = steps ? step : degree;
        double speed = steps
                ? block.value(MotionKeys.SLEW).number()
                : block.value(PanelKeys.SPEED).perSecond();
        return new Motion(
                speed * unit,
                block.get(MotionKeys.ACCELERATION).map(Rates.Amount::number).orElse(0.0) * unit,
                step,
                block.value(MotionKeys.ZEROING),
                block.get(MotionKeys.ZEROING_SPEED).map(Rates.Amount::number).orElse(0.0) * unit);
    }

    private static double turn(Block block, double degree) {
        return block.written(MotionKeys.TURN).map(Rates.Amount::number).orElse(FULL_TURN_DEGREES * degree);
    }

    static Glow glow(Block block, Indicator.Kind kind) {
        return kind == Indicator.Kind.FILAMENT_LAMP
                ? new Glow(block.value(MotionKeys.RISE), block.value(MotionKeys.FALL))
                : Glow.NONE;
    }

    static Positions positions(Block block, Control.Kind kind) {
        return switch (kind) {
            case SELECTOR -> {
                int count = block.value(ContactKeys.POSITIONS);
                yield new Positions(
                        count,
                        block.value(ContactKeys.OPEN_FOR),
                        block.get(ContactKeys.OPEN_VALUE).orElse(count));
            }
            case THREE_WAY_TOGGLE -> new Positions(3, block.value(ContactKeys.OPEN_FOR), CENTRE);
            default -> Positions.NONE;
        };
    }

    static @Nullable Matrix matrix(Block block, Control.Kind kind) {
        return kind != Control.Kind.KEY_MATRIX
                ? null
                : new Matrix(
                        block.value(ContactKeys.ROWS),
                        block.value(ContactKeys.COLUMNS),
                        block.value(ContactKeys.SCAN),
                        block.value(ContactKeys.DIODES));
    }

    static List<Control.Detent> detents(Block block, Control.Kind kind) {
        return kind == Control.Kind.LEVER ? block.value(ContactKeys.DETENTS) : List.of();
    }
}
