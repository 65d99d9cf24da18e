package dropline.bus.copper;

import java.util.ArrayList;
import java.util.List;

/**
 * Resistors between points, from points to fixed potentials, and currents into points: solved exactly by the sum of the
 * currents at every point. The matrix of conductances is symmetric and its diagonal outweighs the rest, so that it is
 * factored as it stands (L D L', within its envelope), without pivoting.
 */
final class Network {
    /** Below this share of what stood on the diagonal, nothing but rounding is left of it. */
    private static final double VANISHED = 1e-12;

    private final List<Resistor> resistors = new ArrayList<>();
    private final List<Tie> ties = new ArrayList<>();
    private int points;

    private record Resistor(int one, int other, double ohms) {}

    private record Tie(int point, double volts, double ohms) {}

    /** A further point. */
    int point() {
        return points++;
    }

    int points() {
        return points;
    }

    /** A resistor between two points, above 0 ohm; what is endless is none. */
    void resistor(int one, int other, double ohms) {
        mustBeResistor(ohms);
        if (one != other && !Double.isInfinite(ohms)) {
            resistors.add(new Resistor(one, other, ohms));
        }
    }

    /** A resistor from a point to a fixed potential, above 0 ohm; what is endless is none. */
    void tie(int point, double volts, double ohms) {
        mustBeResistor(ohms);
        if (!Double.isInfinite(ohms)) {
            ties.add(new Tie(point, volts, ohms));
        }
    }

    private static void mustBeResistor(double ohms) {
        if (!(ohms > 0)) {
            throw new IllegalArgumentException("a resistor must be above 0 ohm: ohms=" + ohms);
        }
    }

    /** The network made ready to be solved, for as many currents as one likes. */
    Factored factored() {
        return new Factored();
    }

    /** What does not change with the currents. */
    final class Factored {
        private final double[][] lower = new double[points][];
        private final int[] first = new int[points];
        private final double[] diagonal = new double[points];

        private Factored() {
            for (int row = 0; row < points; row++) {
                first[row] = row;
            }
            for (Resistor resistor : resistors) {
                int high = Math.max(resistor.one, resistor.other);
                first[high] = Math.min(first[high], Math.min(resistor.one, resistor.other));
            }
            for (int row = 0; row < points; row++) {
                lower[row] = new double[row - first[row]];
            }
            fill();
            factor();
        }

        private void fill() {
            for (Resistor resistor : resistors) {
                int high = Math.max(resistor.one, resistor.other);
                int low = Math.min(resistor.one, resistor.other);
                lower[high][low - first[high]] -= 1 / resistor.ohms;
                diagonal[high] += 1 / resistor.ohms;
                diagonal[low] += 1 / resistor.ohms;
            }
            for (Tie tie : ties) {
                diagonal[tie.point] += 1 / tie.ohms;
            }
        }

        private void factor() {
            for (int row = 0; row < points; row++) {
                double[] own = lower[row];
                double whole = diagonal[row];
                for (int column = first[row]; column < row; column++) {
                    double sum = own[column - first[row]];
                    for (int k = Math.max(first[row], first[column]); k < column; k++) {
                        sum -= own[k - first[row]] * lower[column][k - first[column]];
                    }
                    own[column - first[row]] = sum;
                }
                for (int column = first[row]; column < row; column++) {
                    double product = own[column - first[row]];
                    own[column - first[row]] = diagonal[column] == 0 ? 0 : product / diagonal[column];
                    diagonal[row] -= product * own[column - first[row]];
                }
                if (diagonal[row] <= whole * VANISHED) {
                    diagonal[row] = 0;
                }
            }
        }

        /** The volts at every point with no current but what the fixed potentials drive. */
        double[] atRest() {
            return with(new double[points]);
        }

        /**
         * The volts at every point. A part that no resistor joins to a fixed potential has its last point taken for 0
         * V.
         *
         * @param amps into each point from outside, beside what the fixed potentials drive
         */
        double[] with(double[] amps) {
            double[] volts = amps.clone();
            for (Tie tie : ties) {
                volts[tie.point] += tie.volts / tie.ohms;
            }
            for (int row = 0; row < points; row++) {
                for (int column = first[row]; column < row; column++) {
                    volts[row] -= lower[row][column - first[row]] * volts[column];
                }
            }
            for (int row = 0; row < points; row++) {
                volts[row] = diagonal[row] == 0 ? 0 : volts[row] / diagonal[row];
            }
            for (int row = points - 1; row >= 0; row--) {
                for (int column = first[row]; column < row; column++) {
                    volts[column] -= lower[row][column - first[row]] * volts[row];
                }
            }
            return volts;
        }
    }
}
