package dropline.harness.finding;

import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.TraceSink;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.List;

/**
 * One simulated run and what was found in it, in both ways of looking.
 *
 * @param trace digest of the whole trace
 * @param controllerTrace hash of what the controller sees of it
 */
record Trial(long trace, long controllerTrace, List<Finding> all, List<Finding> controller) {

    static Trial run(long pitSeed, long seed, List<Fault> faults) {
        Pit pit = RandomPit.of(pitSeed);
        Layout layout = Layout.of(pit);
        SegmentEvidence all = new SegmentEvidence(pit, layout, 0, Tiers.ALL);
        SegmentEvidence controller = new SegmentEvidence(pit, layout, 0, Tiers.CONTROLLER);
        TraceHash hash = new TraceHash();
        TraceSink sink = each(all.sink(), controller.sink(), new ControllerOnly(hash.sink()));
        SegmentRun run = new SegmentRun(pit, 0, seed, faults, sink);
        long end = RandomPit.speech(pitSeed).runNanos();
        RandomFlight flight = new RandomFlight(pit, layout, seed, end);
        StateBlock block = new StateBlock();
        for (long at = 0; at < end; at += RandomFlight.STRETCH_NANOS) {
            flight.fill(block, at);
            run.offer(block);
            run.advanceTo(at + RandomFlight.STRETCH_NANOS);
        }
        run.end();
        return new Trial(
                run.digest(),
                hash.hash(),
                Findings.of(pit, layout, List.of(all)),
                Findings.of(pit, layout, List.of(controller)));
    }

    private static TraceSink each(TraceSink... sinks) {
        return (TraceSink) Proxy.newProxyInstance(
                TraceSink.class.getClassLoader(), new Class<?>[] {TraceSink.class}, (proxy, method, arguments) -> {
                    for (TraceSink sink : sinks) {
                        try {
                            method.invoke(sink, arguments);
                        } catch (InvocationTargetException e) {
                            throw e.getCause();
                        }
                    }
                    return null;
                });
    }
}
