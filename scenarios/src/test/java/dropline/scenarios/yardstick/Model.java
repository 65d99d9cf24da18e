package dropline.scenarios.yardstick;

/** A way to simulate the reference bus. */
@FunctionalInterface
interface Model {
    Result run(long seconds);
}
