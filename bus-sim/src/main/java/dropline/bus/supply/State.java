package dropline.bus.supply;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Motion.Zeroing;

/** What a whole pit does at once, as far as its currents go. */
public enum State {
    /** Boards run; lamps are dark, displays blank, motors stand still. */
    IDLE("idle"),
    /** Displays show and every motor moves; lamps and backlight are dark. */
    IN_FLIGHT("in flight"),
    /** The same with every backlight zone full on. */
    AT_NIGHT("at night"),
    /** The same with every lamp lit. */
    LAMP_TEST("in a lamp test"),
    /** Its first moment, with what lamps take as they light. */
    LAMPS_LIGHTING("as the lamps of a test light"),
    /** All boards start together: displays come on, servos jump, motors that look for their zero do; lamps are dark. */
    COLD_START("at a cold start");

    private final String when;

    State(String when) {
        this.when = when;
    }

    /** In words: {@code in a lamp test}. */
    public String when() {
        return when;
    }

    /** Whether it lasts; else it is a moment. */
    public boolean lasts() {
        return this != LAMPS_LIGHTING && this != COLD_START;
    }

    /** What an indicator takes in it. */
    Draw of(Indicator indicator) {
        Draws draws = indicator.draws();
        Kind kind = indicator.kind();
        if (kind.moves()) {
            return motor(indicator, draws);
        }
        if (kind.refreshes()) {
            return this == IDLE ? draws.rest() : this == COLD_START ? draws.greatest() : draws.active();
        }
        boolean tested = this == LAMP_TEST || this == LAMPS_LIGHTING;
        if (kind == Kind.FLAG || !(tested || (this == AT_NIGHT && kind == Kind.BACKLIGHT_ZONE))) {
            return draws.rest();
        }
        return this == LAMPS_LIGHTING ? draws.greatest() : draws.active();
    }

    private Draw motor(Indicator indicator, Draws draws) {
        if (this == COLD_START) {
            boolean moves = indicator.kind() == Kind.SERVO || indicator.motion().zeroing() != Zeroing.NONE;
            return moves ? draws.greatest() : draws.rest();
        }
        return this == IDLE ? draws.rest() : draws.active();
    }
}
