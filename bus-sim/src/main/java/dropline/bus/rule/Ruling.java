package dropline.bus.rule;

/**
 * What a rule came to somewhere in a pit.
 *
 * @param rule the rule
 * @param where what it was judged of: a segment, a node, a supply; for people
 * @param standing whether it holds
 * @param value the figure that was judged, in {@link Rule#unit()}; NaN where it is not known
 * @param limit what it was judged against, in the same unit; NaN where that hangs on what is not known
 * @param basis what the value rests on, for people: a model, an assumption, or what is not known
 */
public record Ruling(Rule rule, String where, Standing standing, double value, double limit, String basis) {

    /** Whether a rule holds. */
    public enum Standing {
        HOLDS,
        BROKEN,
        /** Something it needs is not known. */
        UNKNOWN
    }

    public Ruling {
        boolean known = standing != Standing.UNKNOWN;
        if (Double.isNaN(value) == known || (Double.isNaN(limit) && known)) {
            throw new IllegalArgumentException("value and limit are numbers where a rule was judged: rule="
                    + rule.title() + " value=" + value + " limit=" + limit + " standing=" + standing);
        }
    }

    /** Judges a value. */
    public static Ruling of(Rule rule, String where, double value, double limit, String basis) {
        boolean holds = rule.sense() == Rule.Sense.AT_MOST ? value <= limit : value >= limit;
        return new Ruling(rule, where, holds ? Standing.HOLDS : Standing.BROKEN, value, limit, basis);
    }

    /** Says what is missing to judge. */
    public static Ruling unknown(Rule rule, String where, double limit, String missing) {
        return new Ruling(rule, where, Standing.UNKNOWN, Double.NaN, limit, missing);
    }

    /** What is left to the limit, in the rule's unit: negative by how much it is missed; NaN where not known. */
    public double margin() {
        return rule.sense() == Rule.Sense.AT_MOST ? limit - value : value - limit;
    }
}
