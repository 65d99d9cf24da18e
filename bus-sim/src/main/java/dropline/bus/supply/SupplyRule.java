package dropline.bus.supply;

import dropline.bus.rule.Rule;
import dropline.bus.rule.Unit;

/** What the supply side of a pit is judged by. Fuses, and what a wire may carry, are not among them. */
public enum SupplyRule implements Rule {
    BROWN_OUT("volts at a board", Unit.VOLTS, Sense.AT_LEAST, "the board's works-down-to", Weight.LAW),
    STARTING("current for a moment", Unit.AMPERES, Sense.AT_MOST, "the supply's rating", Weight.LAW),
    RUNNING("current that lasts", Unit.AMPERES, Sense.AT_MOST, "common practice, 80 % of the rating", Weight.GUIDANCE),
    DROP("volts lost on the way", Unit.SHARE, Sense.AT_MOST, "common practice, 5 % there and back", Weight.GUIDANCE),
    HEAT("heat in a regulator", Unit.WATTS, Sense.AT_MOST, "common practice, 1 W without a heat sink", Weight.GUIDANCE),
    BACK_FEED("USB and supply at once", Unit.NUMBER, Sense.AT_MOST, "common practice", Weight.LAW);

    /** Share of a rating that is used at most while a load lasts. */
    public static final double OF_RATING = 0.8;

    static final double MOST_DROP = 0.05;
    static final double MOST_WATTS = 1;

    private final String title;
    private final Unit unit;
    private final Sense sense;
    private final String source;
    private final Weight weight;

    SupplyRule(String title, Unit unit, Sense sense, String source, Weight weight) {
        this.title = title;
        this.unit = unit;
        this.sense = sense;
        this.source = source;
        this.weight = weight;
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public Unit unit() {
        return unit;
    }

    @Override
    public Sense sense() {
        return sense;
    }

    @Override
    public String source() {
        return source;
    }

    @Override
    public Weight weight() {
        return weight;
    }
}
