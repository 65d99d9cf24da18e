package dropline.harness.describe;

import dropline.harness.describe.ColumnSummary.Kind;
import java.math.BigDecimal;
import java.math.MathContext;

/** Takes in one column's values as they come and keeps what a summary needs, however many there are. */
final class ColumnFold {
    /** Most values of a switch. */
    static final int MOST_POSITIONS = 12;

    private static final double FARTHEST_POSITION = 100;
    private static final double TURN = 360;
    /** A heading that goes round jumps at least so far. */
    private static final double LEAST_ROUND = 300;

    private static final double SMALL_SHARE = 1.0 / 20;
    private static final double OFTEN = 0.1;
    // what is left of a difference when its last digits are those that binary fractions add
    private static final MathContext SIX_DIGITS = new MathContext(6);
    private static final MathContext NINE_DIGITS = new MathContext(9);

    private final String name;
    private final double[] positions = new double[MOST_POSITIONS + 1];
    private int positionCount;
    private boolean likeASwitch = true;
    private double last = Double.NaN;
    private double least = Double.NaN;
    private double greatest = Double.NaN;
    private long changes;
    private double largestJump;
    private double smallestStep = Double.POSITIVE_INFINITY;
    private double jumps;
    private double jumpsTheShortWayRound;

    ColumnFold(String name) {
        this.name = name;
    }

    /** The next row's value; NaN where nothing is known. */
    void take(double value) {
        if (value == last || Double.isNaN(value)) {
            return;
        }
        if (!Double.isNaN(last)) {
            double jump = Math.min(Double.MAX_VALUE, Math.abs(value - last));
            changes++;
            jumps += jump;
            jumpsTheShortWayRound += Math.min(jump, Math.abs(TURN - jump));
            largestJump = Math.max(largestJump, jump);
            smallestStep = Math.min(smallestStep, jump);
        }
        last = value;
        least = value < least || Double.isNaN(least) ? value : least;
        greatest = value > greatest || Double.isNaN(greatest) ? value : greatest;
        likeASwitch = likeASwitch && isPosition(value);
    }

    private boolean isPosition(double value) {
        if (value != Math.rint(value) || Math.abs(value) > FARTHEST_POSITION) {
            return false;
        }
        int i = 0;
        while (i < positionCount && positions[i] != value) {
            i++;
        }
        if (i == positionCount) {
            positions[positionCount++] = value;
        }
        return positionCount <= MOST_POSITIONS;
    }

    ColumnSummary summary(long lastsNanos) {
        double perSecond = lastsNanos == 0 ? 0 : changes * 1e9 / lastsNanos;
        boolean wraps = wraps();
        double jump = new BigDecimal(largestJump).round(NINE_DIGITS).doubleValue();
        double step = changes == 0
                ? 0
                : new BigDecimal(smallestStep).round(SIX_DIGITS).doubleValue();
        return new ColumnSummary(name, least, greatest, changes, perSecond, jump, step, kind(perSecond, wraps), wraps);
    }

    private Kind kind(double perSecond, boolean wraps) {
        if (changes == 0) {
            return Kind.NEVER_MOVES;
        }
        if (likeASwitch) {
            return Kind.SWITCH;
        }
        double usual = (wraps ? jumpsTheShortWayRound : jumps) / changes;
        return usual <= SMALL_SHARE * (greatest - least) && perSecond >= OFTEN ? Kind.NEEDLE : Kind.DIGITS;
    }

    /** Values within one turn, with a jump of nearly all of it, and otherwise small steps. */
    private boolean wraps() {
        boolean oneTurn = (least >= 0 && greatest <= TURN) || (least >= -TURN / 2 && greatest <= TURN / 2);
        return oneTurn
                && !likeASwitch
                && largestJump >= LEAST_ROUND
                && jumpsTheShortWayRound / changes <= SMALL_SHARE * TURN;
    }
}
