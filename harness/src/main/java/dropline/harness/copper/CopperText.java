package dropline.harness.copper;

import dropline.bus.copper.Copper;
import dropline.bus.copper.CopperRule;
import dropline.bus.copper.GroundVolts;
import dropline.bus.pit.Pit;
import dropline.bus.rule.Ruling;
import dropline.harness.ruling.RulingText;
import java.util.List;

/** What the rules of copper come to on a segment, with what to do where one does not hold. */
public final class CopperText {
    private CopperText() {}

    /** The rulings of a segment, its grounds lifted as its supplies have it. */
    public static List<Ruling> rulings(Pit pit, int segment) {
        return Copper.rule(pit, segment, GroundVolts.of(pit, segment));
    }

    /** A table, and what each ruling rests on. */
    public static String of(Pit pit, int segment) {
        List<Ruling> rulings = rulings(pit, segment);
        return RulingText.table(rulings) + RulingText.notes(rulings, CopperText::advice);
    }

    /** What to do about a ruling that does not hold or is not known, in a sentence. */
    public static String advice(Ruling ruling) {
        if (!(ruling.rule() instanceof CopperRule rule)) {
            throw new IllegalArgumentException("a rule of copper is needed: rule=" + ruling.rule());
        }
        return ruling.standing() == Ruling.Standing.UNKNOWN ? toKnow(rule) : toMend(rule);
    }

    private static String toKnow(CopperRule rule) {
        return switch (rule) {
            case UNIT_LOADS_WITH_BIAS ->
                "Write bias-resistors: none if all receivers are fail-safe; else take transceivers of 1/8 unit load.";
            case BRANCH ->
                "Write stub: under cable:, and transceiver: with its edge: for every node and the controller.";
            case LINE -> "Write step: under cable:, or after: on each node.";
            case EDGE -> "Write transceiver: with its edge: for every node and the controller.";
            case COMMON_WIRE -> "Write common: yes under cable: once it is there.";
            case ADDRESSES,
                    UNIT_LOADS,
                    REST_VOLTS,
                    DRIVEN_VOLTS,
                    TERMINATORS,
                    ENDS_TERMINATED,
                    TERMINATORS_ELSEWHERE,
                    TERMINATOR_MISMATCH,
                    BIAS_PLACES,
                    GROUND_DIFFERENCE -> "";
        };
    }

    private static String toMend(CopperRule rule) {
        return switch (rule) {
            case ADDRESSES -> "Put some of the boards on another segment.";
            case UNIT_LOADS, UNIT_LOADS_WITH_BIAS ->
                "Take transceivers of 1/4 or 1/8 unit load, or put some of the boards on another segment.";
            case REST_VOLTS ->
                "Take terminators off that should not be there, fit bias of 450 to 650 ohm at one place, or take"
                        + " transceivers with fail-safe receivers.";
            case DRIVEN_VOLTS -> "Take off terminators and bias beyond those that belong there, or use thicker wire.";
            case TERMINATORS, TERMINATORS_ELSEWHERE ->
                "Take off all but one at each end, modules' own included; then write terminator: none on those nodes.";
            case ENDS_TERMINATED ->
                "Fit one at each end. A short, slow cable often works without, but nobody can promise it.";
            case TERMINATOR_MISMATCH -> "Fit what the cable's maker gives as its impedance.";
            case BIAS_PLACES ->
                "Take off all but one, modules' own included; then write bias: none on those nodes' transceivers.";
            case BRANCH ->
                "Lead the cable itself from board to board, shorten the stub, or take transceivers with slower edges.";
            case LINE -> "Lower the baud rate, or shorten the cable.";
            case EDGE -> "Take transceivers with faster edges, or lower the baud rate.";
            case GROUND_DIFFERENCE ->
                "Give the boards a thicker or shorter return wire, or a supply nearer to them; else isolate the bus.";
            case COMMON_WIRE -> "Lead a third wire along the pair that joins the grounds of all boards.";
        };
    }
}
