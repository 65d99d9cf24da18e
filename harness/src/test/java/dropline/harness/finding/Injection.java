package dropline.harness.finding;

import static dropline.harness.finding.RandomPit.MICRO;
import static dropline.harness.finding.RandomPit.MILLI;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.fault.FaultKind.Timing;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.finding.Finding.Subject;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/** A fault for a pit, drawn from a seed, and what a finding about it must be about. */
record Injection(Fault fault, Subject subject, int part) {

    static Injection of(FaultKind kind, Pit pit, Layout layout, RandomPit.Speech speech, long seed) {
        Random random = new Random(seed);
        Strikes strikes = kind.strikes();
        int part =
                switch (strikes) {
                    case INDICATOR -> pick(indicators(kind, layout), random);
                    case CONTROL -> pick(controls(kind, layout), random);
                    default -> -1;
                };
        int node =
                switch (strikes) {
                    case NODE, NODE_AND_OTHER -> pick(nodes(kind, pit, layout), random);
                    case INDICATOR -> layout.slots().get(part).node();
                    case CONTROL -> layout.controls().get(part).node();
                    case SEGMENT, HOST -> -1;
                };
        int other = strikes == Strikes.NODE_AND_OTHER ? pick(others(layout, node), random) : -1;
        long from = from(kind, random);
        long until = kind == FaultKind.STUCK_DRIVER && random.nextBoolean() ? from + 500 * MILLI : Fault.TO_THE_END;
        Fault fault = new Fault(
                kind,
                strikes == Strikes.HOST ? -1 : 0,
                node,
                part,
                other,
                from,
                until,
                rate(kind, random),
                amount(kind, speech, random));
        return switch (strikes) {
            case NODE, NODE_AND_OTHER -> new Injection(fault, Subject.NODE, node);
            case SEGMENT -> new Injection(fault, Subject.SEGMENT, 0);
            case INDICATOR -> new Injection(fault, Subject.INDICATOR, part);
            case CONTROL -> new Injection(fault, Subject.CONTROL, part);
            case HOST -> new Injection(fault, Subject.HOST, -1);
        };
    }

    /** A needle that slips at the very start took its zero in the wrong place: the same, and not drawn. */
    private static long from(FaultKind kind, Random random) {
        boolean start = random.nextInt(4) == 0 && kind != FaultKind.NEEDLE_SLIPPED;
        return kind == FaultKind.LOST_ZERO || start ? 0 : (400 + random.nextInt(600)) * MILLI;
    }

    private static double rate(FaultKind kind, Random random) {
        if (kind.timing() == Timing.CHANCE) {
            return kind == FaultKind.COMMON_WIRE_LIFTED
                    ? 0.03 + 0.2 * random.nextDouble()
                    : 0.15 + 0.45 * random.nextDouble();
        }
        return switch (kind) {
            case BABBLING_NODE, BLACKOUT, NOISE_BURST, SWITCH_FLICKERS, NOISY_AXIS -> 3 + random.nextInt(6);
            case LOOP_STALL -> 1 + random.nextInt(2);
            default -> 0;
        };
    }

    private static long amount(FaultKind kind, RandomPit.Speech speech, Random random) {
        long character = speech.charNanos();
        return switch (kind) {
            case DRIVER_ENABLED_LATE, DRIVER_RELEASED_EARLY -> character * (3 + random.nextInt(17)) / 10;
            case DRIVER_ENABLED_EARLY -> 200 * MICRO + character * (1 + random.nextInt(3));
            case DRIVER_RELEASED_LATE -> 100 * MICRO + character * (2 + random.nextInt(20));
            case REPLY_TOO_SOON -> random.nextInt(8) * MICRO;
            case BABBLING_NODE -> 5 + random.nextInt(30);
            case WRONG_BAUD -> speech.charNanos() > 500_000 ? 9_600 : 57_600;
            case CLOCK_OFF -> (random.nextBoolean() ? 1 : -1) * (10_000L + random.nextInt(60_000));
            case BLACKOUT -> 2 * MILLI + character * (8 + random.nextInt(20));
            case RING_OVERRUN -> 4 + random.nextInt(6);
            case LOOP_STALL -> (80 + random.nextInt(250)) * MILLI;
            case NOISE_BURST -> (2 + random.nextInt(10)) * MILLI + 5 * character;
            case SLOW_ADAPTER -> 16 * MILLI;
            case BROWN_OUT -> (200 + random.nextInt(600)) * MILLI;
            case RESET -> random.nextBoolean() ? 0 : (200 + random.nextInt(800)) * MILLI;
            case LOST_STEPS, STICKING_NEEDLE -> 2 + random.nextInt(8);
            case LOST_ZERO, NEEDLE_SLIPPED -> 5 + random.nextInt(40);
            default -> 0;
        };
    }

    /** Frames lost in buffers, and loops that stand still, are normal where the pit file says so: not drawn there. */
    private static List<Integer> nodes(FaultKind kind, Pit pit, Layout layout) {
        boolean normal = kind == FaultKind.BLACKOUT || kind == FaultKind.RING_OVERRUN || kind == FaultKind.LOOP_STALL;
        List<Integer> all = new ArrayList<>();
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < layout.nodes().size(); i++) {
            all.add(i);
            if (!Promise.of(pit, pit.segments().get(0), layout.nodes().get(i).node())
                    .losesFrames()) {
                found.add(i);
            }
        }
        return normal && !found.isEmpty() ? found : all;
    }

    private static List<Integer> others(Layout layout, int node) {
        return IntStream.range(0, layout.nodes().size())
                .filter(other -> other != node)
                .boxed()
                .toList();
    }

    private static List<Integer> indicators(FaultKind kind, Layout layout) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < layout.slots().size(); i++) {
            Layout.Slot slot = layout.slots().get(i);
            boolean first = i == 0 || !layout.slots().get(i - 1).indicator().equals(slot.indicator());
            if (first && kind.canStrike(slot.indicator().kind())) {
                found.add(i);
            }
        }
        return found;
    }

    private static List<Integer> controls(FaultKind kind, Layout layout) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < layout.controls().size(); i++) {
            boolean suits = kind.canStrike(layout.controls().get(i).control().kind());
            if (suits) {
                found.add(i);
            }
        }
        return found;
    }

    private static int pick(List<Integer> from, Random random) {
        return from.get(random.nextInt(from.size()));
    }
}
