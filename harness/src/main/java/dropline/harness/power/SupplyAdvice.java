package dropline.harness.power;

import dropline.bus.rule.Ruling;
import dropline.bus.supply.SupplyRule;

/** What to do about a rule of supply that does not hold, or that cannot be judged. */
final class SupplyAdvice {
    private SupplyAdvice() {}

    static String of(Ruling ruling) {
        if (!(ruling.rule() instanceof SupplyRule rule)) {
            return "";
        }
        return ruling.standing() == Ruling.Standing.UNKNOWN ? "State it, or measure it." : broken(rule);
    }

    private static String broken(SupplyRule rule) {
        return switch (rule) {
            case BROWN_OUT ->
                "Use thicker or shorter wire, feed the far end on a run of its own, or move boards to"
                        + " another supply.";
            case STARTING -> "Let boards start one after the other, each by its address, or use a stronger supply.";
            case RUNNING -> "Use a stronger supply or a second one: leave a fifth free, one more console always comes.";
            case DROP -> "Use thicker or shorter wire, or move the supply nearer.";
            case HEAT -> "Use a switching converter, fewer volts, or feed its parts straight from the supply.";
            case BACK_FEED -> "Isolate USB, cut the 5 V wire of its lead, or take one of the two off.";
        };
    }
}
