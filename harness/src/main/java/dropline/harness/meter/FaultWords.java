package dropline.harness.meter;

import dropline.bus.copper.CopperFault;
import dropline.bus.copper.Span;
import dropline.bus.rule.Unit;
import dropline.harness.ruling.Amounts;
import java.util.Comparator;
import java.util.List;

/** Copper faults as clauses: {@code the terminator at oil is missing}. */
final class FaultWords {
    private final MeteredPair metered;

    FaultWords(MeteredPair metered) {
        this.metered = metered;
    }

    /** Faults of one kind as an example of it: what may be anywhere along the cable is halfway. */
    String example(List<CopperFault> faults) {
        return switch (faults.get(0).kind()) {
            case BAD_JOINT ->
                "one wire has a joint of " + Amounts.of(faults.get(0).ohms(), Unit.OHMS) + " halfway along";
            case OPEN_WIRE -> "one wire is broken halfway along";
            default -> of(faults);
        };
    }

    /** Faults of one kind, any of which it may be. */
    String of(List<CopperFault> faults) {
        return switch (faults.get(0).kind()) {
            case NOTHING -> "all is as it should be";
            case TERMINATOR_MISSING -> "the terminator at " + places(faults) + " is missing";
            case TERMINATOR_EXTRA -> "there is a terminator too many";
            case TERMINATOR_ON_EVERY_MODULE -> "every board's module carries a terminator";
            case NO_TERMINATOR -> "there is no terminator at all";
            case BIAS_MISSING -> "the bias at " + places(faults) + " is missing, or its supply is off";
            case SWAPPED -> "D1 and D0 are exchanged where the meter is";
            case BIAS_DOUBLED -> "the bias is there twice";
            case BAD_JOINT -> "a joint of " + ohms(faults) + stretch(faults) + " hardly conducts";
            case OPEN_WIRE -> "a wire is broken" + stretch(faults);
            case SHORTED -> "D1 and D0 touch";
        };
    }

    private String places(List<CopperFault> faults) {
        List<String> names = faults.stream()
                .map(fault -> metered.stop(fault.at()))
                .distinct()
                .toList();
        return String.join(" or at ", names);
    }

    private static String ohms(List<CopperFault> faults) {
        Comparator<CopperFault> byOhms = Comparator.comparingDouble(CopperFault::ohms);
        double least = faults.stream().min(byOhms).orElseThrow().ohms();
        double most = faults.stream().max(byOhms).orElseThrow().ohms();
        return "about " + (least == most ? "" : Amounts.of(least, Unit.OHMS) + " to ") + Amounts.of(most, Unit.OHMS);
    }

    /** From the first stretch of cable it may be in to the last. */
    private String stretch(List<CopperFault> faults) {
        List<Span> spans = metered.pair().spans();
        List<Span> meant = spans.stream()
                .filter(span ->
                        faults.stream().anyMatch(fault -> fault.at() == span.from() && fault.beyond() == span.to()))
                .toList();
        Span last = meant.get(meant.size() - 1);
        String between = metered.stop(meant.get(0).from()) + " and " + metered.stop(last.to());
        return " in " + wire(faults) + (meant.size() == 1 ? " between " : " somewhere between ") + between;
    }

    private static String wire(List<CopperFault> faults) {
        boolean inD1 = faults.stream().anyMatch(fault -> !fault.inD0());
        boolean inD0 = faults.stream().anyMatch(CopperFault::inD0);
        return inD1 && inD0 ? "D1 or D0" : inD0 ? "D0" : "D1";
    }
}
