package dropline.scenarios.demo;

/** Two wing tanks. What the engines burn leaves the tanks; with crossfeed open both engines draw on the fuller one. */
final class Fuel {
    private double left = 352;
    private double right = 344;
    private double used;

    void step(double dt, double leftFlow, double rightFlow, boolean crossfeed) {
        double leftBurn = leftFlow * dt / 3600;
        double rightBurn = rightFlow * dt / 3600;
        used += leftBurn + rightBurn;
        if (crossfeed) {
            double fromLeft = left >= right ? leftBurn + rightBurn : 0;
            left -= fromLeft;
            right -= leftBurn + rightBurn - fromLeft;
        } else {
            left -= leftBurn;
            right -= rightBurn;
        }
    }

    /** Kilograms. */
    double left() {
        return left;
    }

    double right() {
        return right;
    }

    double total() {
        return left + right;
    }

    double used() {
        return used;
    }
}
