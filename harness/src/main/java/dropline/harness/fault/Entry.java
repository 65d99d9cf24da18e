package dropline.harness.fault;

import dropline.bus.fault.FaultKind;
import java.util.List;

/**
 * What the catalogue says of one kind of fault.
 *
 * @param what it is, in a sentence or two
 * @param see what a person would notice
 * @param sightings by what it can be seen at all
 * @param inject a fault's text that injects it into the demo pit
 * @param cautions what to mind when looking for it on a real pit
 */
public record Entry(
        FaultKind kind, String what, String see, List<Sighting> sightings, String inject, List<String> cautions) {

    /** One witness ({@code wire}, {@code controller}, {@code meter} or {@code eye}) and what it would tell. */
    public record Sighting(String witness, String words) {}

    public Entry {
        sightings = List.copyOf(sightings);
        cautions = List.copyOf(cautions);
        if (what.isBlank() || see.isBlank() || sightings.isEmpty() || inject.isBlank()) {
            throw new IllegalArgumentException("an entry must say everything: kind=" + kind);
        }
    }

    /** The usual amount in words; empty for a kind without one. */
    public String usualAmount() {
        return Usual.amountWords(kind);
    }

    /** How often it usually strikes, in words. */
    public String usualRate() {
        return Usual.rateWords(kind);
    }

    /** What it strikes, in words. */
    public String strikes() {
        return switch (kind) {
            case SILENT_HOST -> "the host";
            case BROWN_OUT -> "a segment: the nodes of its supply branch";
            case DUPLICATE_ADDRESS, ANSWERS_ANOTHER -> "a node, and another one whose address it answers to";
            case SLOW_ADAPTER -> "a segment with a USB adapter";
            case ENCODER_SKIPS -> "an encoder or a button";
            case SWITCH_FLICKERS -> "a toggle or a button";
            case NOISY_AXIS -> "an axis";
            case LOST_STEPS, LOST_ZERO, NEEDLE_SLIPPED, STICKING_NEEDLE -> "an indicator that moves";
            default ->
                switch (kind.strikes()) {
                    case INDICATOR -> "an indicator";
                    default -> Targets.sort(kind.strikes());
                };
        };
    }
}
