package dropline.harness.fault;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.verdict.InjectedFault;
import java.util.List;

/** Says of the faults that a run was given what they were, for its results. */
public final class Injection {
    private Injection() {}

    /** In the order given; {@code endNanos} is when the run ended. */
    public static List<InjectedFault> of(List<Fault> faults, Pit pit, long endNanos) {
        Layout layout = Layout.of(pit);
        FaultText texts = new FaultText(pit, layout);
        return faults.stream()
                .map(fault -> of(fault, pit, layout, texts, endNanos))
                .toList();
    }

    private static InjectedFault of(Fault fault, Pit pit, Layout layout, FaultText texts, long endNanos) {
        FaultKind kind = fault.kind();
        boolean part = fault.part() >= 0;
        return new InjectedFault(
                texts.of(fault),
                kind.word(),
                fault.segment() < 0 ? "" : pit.segments().get(fault.segment()).name(),
                fault.node() < 0 ? "" : layout.nodes().get(fault.node()).node().name(),
                part ? texts.target(fault) : "",
                texts.other(fault),
                fault.fromNanos(),
                Math.min(fault.untilNanos(), endNanos),
                switch (kind.timing()) {
                    case STEADY -> "none";
                    case CHANCE -> "chance";
                    case EVENT -> "per second";
                },
                fault.rate(),
                unit(kind),
                fault.amount());
    }

    private static String unit(FaultKind kind) {
        return switch (kind.unit()) {
            case NONE -> "none";
            case TIME -> "ns";
            case BAUD -> "baud";
            case PARTS_PER_MILLION -> "ppm";
            case CHARACTERS -> "characters";
            case STEPS -> "steps";
        };
    }
}
