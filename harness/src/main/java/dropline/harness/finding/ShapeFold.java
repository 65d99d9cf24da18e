package dropline.harness.finding;

import static dropline.bus.trace.TraceSink.CONTROLLER;

/** Folds what drivers do against the frames they send: too soon, too late, for too long, at another speed. */
final class ShapeFold {
    /** A driver that stays on longer than this with nothing to say is held, not merely late; ns. */
    private static final long HELD_NANOS = 20_000_000L;

    private static final long TOLERANCE_NANOS = 100;

    /** Frames this much longer or shorter than described come from a clock that is off: 0.25 %. */
    private static final double OFF_SHARE = 0.0025;

    private static final double MILLION = 1e6;

    private final NodeEvidence[] nodes;
    private final Promise[] promises;
    private final Driver[] drivers;

    ShapeFold(NodeEvidence[] nodes, Promise[] promises) {
        this.nodes = nodes;
        this.promises = promises;
        drivers = new Driver[nodes.length + 1];
        for (int i = 0; i < drivers.length; i++) {
            drivers[i] = new Driver();
        }
    }

    boolean isSending(int talker) {
        return drivers[talker + 1].sending;
    }

    /** Whether another transmission touched this talker's frame, the last or the one on its way. */
    boolean isClashed(int talker) {
        return drivers[talker + 1].clashed;
    }

    void driverOn(long at, int talker) {
        Driver driver = drivers[talker + 1];
        if (driver.reasons++ > 0) {
            return;
        }
        driver.on = true;
        driver.onNanos = at;
        driver.busyNanos = 0;
        driver.frames = driver.sending ? 1 : 0;
        if (!driver.sending) {
            driver.clashed = false;
        } else if (talker != CONTROLLER && at - driver.startNanos > TOLERANCE_NANOS) {
            nodes[talker].lateEnable.add(at, at - driver.startNanos);
        }
    }

    void driverOff(long at, int talker) {
        Driver driver = drivers[talker + 1];
        if (driver.reasons > 0 && --driver.reasons > 0) {
            return;
        }
        if (talker != CONTROLLER && driver.on && !driver.sending) {
            release(at, talker, driver);
        }
        driver.on = false;
        driver.offNanos = at;
        driver.cut = driver.sending;
    }

    private void release(long at, int talker, Driver driver) {
        long idle = at - driver.onNanos - driver.busyNanos;
        long tail = at - driver.endNanos - promises[talker].tailNanos();
        if (idle > HELD_NANOS) {
            nodes[talker].held.add(driver.onNanos, idle);
        } else if (driver.frames > 0 && tail > TOLERANCE_NANOS) {
            nodes[talker].lateRelease.add(at, tail);
        }
    }

    void clash(int talker, int other) {
        drivers[talker + 1].clashed = true;
        drivers[other + 1].clashed = true;
    }

    void started(long at, int talker, int chars) {
        Driver driver = drivers[talker + 1];
        driver.sending = true;
        driver.startNanos = at;
        driver.chars = chars;
        driver.frames++;
        driver.cut = false;
        if (!driver.on) {
            driver.clashed = false;
        } else if (talker != CONTROLLER && driver.frames == 1) {
            long early = at - driver.onNanos - promises[talker].leadNanos();
            if (early > TOLERANCE_NANOS) {
                nodes[talker].earlyEnable.add(at, early);
            }
        }
    }

    void ended(long at, int talker) {
        Driver driver = drivers[talker + 1];
        driver.sending = false;
        driver.endNanos = at;
        driver.busyNanos += at - driver.startNanos;
        if (talker == CONTROLLER) {
            return;
        }
        NodeEvidence evidence = nodes[talker];
        if (driver.cut && at - driver.offNanos > TOLERANCE_NANOS) {
            evidence.earlyRelease.add(at, at - driver.offNanos);
        }
        evidence.frames++;
        double described = promises[talker].charNanos() * driver.chars;
        double shorter = described - (at - driver.startNanos);
        if (Math.abs(shorter) > described * OFF_SHARE) {
            evidence.fast.add(at, Math.round(shorter / (described - shorter) * MILLION));
        }
    }

    /** Nothing more comes: a driver that is still on never let go. */
    void finish(long at) {
        for (int node = 0; node < nodes.length; node++) {
            Driver driver = drivers[node + 1];
            if (driver.on && !driver.sending) {
                release(at, node, driver);
            }
        }
    }
}
