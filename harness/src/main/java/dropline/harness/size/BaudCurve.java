package dropline.harness.size;

import dropline.bus.clock.BaudStanding;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a segment grows at one baud rate.
 *
 * @param baud bits a second
 * @param more further panels it takes; -1 where not even those there are keep their budgets
 * @param knee from so many on, each costs much more than those before; -1 where there is no such bend
 * @param withoutAdapter how many it would take if the USB stage cost nothing
 * @param beyond what misses its budget with one more; null where every free address was used
 * @param points latency against panels, ascending
 * @param misfits nodes whose UART is off at this rate
 */
public record BaudCurve(
        int baud,
        int more,
        int knee,
        int withoutAdapter,
        @Nullable Tight beyond,
        List<Point> points,
        List<Misfit> misfits) {
    public BaudCurve {
        points = List.copyOf(points);
        misfits = List.copyOf(misfits);
    }

    /**
     * The tightest panel or control with so many more, nothing being wrong.
     *
     * @param more further panels
     * @param name of the one nearest its budget
     * @param p99Nanos 99 of 100 of its times, ns
     * @param worstNanos its longest, ns
     * @param limitNanos its budget, ns
     * @param loses whether it loses changes
     */
    public record Point(int more, String name, long p99Nanos, long worstNanos, long limitNanos, boolean loses) {
        /** Its longest time as a share of its budget. */
        public double share() {
            return (double) worstNanos / limitNanos;
        }

        /** 99 of 100 of its times as a share of its budget. */
        public double p99Share() {
            return (double) p99Nanos / limitNanos;
        }
    }

    /**
     * A node whose UART is off.
     *
     * @param node its name
     * @param error actual bits a second over the wanted ones, less 1
     * @param standing how bad that is
     */
    public record Misfit(String node, double error, BaudStanding standing) {}
}
