package dropline.bus.rule;

/** A rule that a room of formulas judges by; an enum's constants, as a rule. */
public interface Rule {
    /** Its name as a constant. */
    String name();

    /** What it is called, for people: {@code unit loads on the pair}. */
    String title();

    /** What its value and limit are measured in. */
    Unit unit();

    /** On which side of its limit a value is good. */
    Sense sense();

    /** The page or standard that states it; "common practice" or "from memory" where that is the truth. */
    String source();

    /** How much it weighs when it does not hold. */
    Weight weight();

    /** On which side of its limit a value is good; a value equal to the limit is. */
    enum Sense {
        AT_MOST,
        AT_LEAST
    }

    /** How much a rule weighs when it does not hold. */
    enum Weight {
        /** What breaks it is not expected to work everywhere and always. */
        LAW,
        /** What breaks it often works all the same: one is told. */
        GUIDANCE
    }
}
