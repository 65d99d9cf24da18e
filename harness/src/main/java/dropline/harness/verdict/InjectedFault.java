package dropline.harness.verdict;

/**
 * A fault that a run was given.
 *
 * @param fault the whole of it as text, with everything filled in that was left out
 * @param kind its word in the catalogue
 * @param segment name of the segment it struck; empty for the host, which strikes all
 * @param node name of the node it struck; empty for none
 * @param part name of the indicator, as PANEL/INDICATOR, or of the control it struck; empty for neither
 * @param other name of the node whose address it answered to; empty for none
 * @param fromNanos when its span began, ns
 * @param untilNanos when its span ended, ns; the run's end at the latest
 * @param rateMeaning "none", "chance" (0..1) or "per second"
 * @param rate 0 for none, and for what strikes once
 * @param amountUnit "none", "ns", "baud", "ppm", "characters" or "steps" of the signal's resolution
 * @param amount 0 where there is none, or where the pit's own figure holds
 */
public record InjectedFault(
        String fault,
        String kind,
        String segment,
        String node,
        String part,
        String other,
        long fromNanos,
        long untilNanos,
        String rateMeaning,
        double rate,
        String amountUnit,
        long amount) {}
