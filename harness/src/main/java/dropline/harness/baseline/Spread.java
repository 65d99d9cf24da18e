package dropline.harness.baseline;

import java.util.List;

/**
 * Several values of one figure.
 *
 * @param mean of them
 * @param deviation the standard deviation of a single one, estimated from them (n - 1 in the denominator)
 * @param count how many, at least 1
 */
public record Spread(double mean, double deviation, int count) {

    static Spread of(List<Double> values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        double mean = sum / values.size();
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        double deviation = values.size() < 2 ? 0 : StrictMath.sqrt(squares / (values.size() - 1));
        return new Spread(mean, deviation, values.size());
    }
}
