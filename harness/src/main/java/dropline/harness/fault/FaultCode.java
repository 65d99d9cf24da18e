package dropline.harness.fault;

/** What can be wrong with the text of a fault. */
public enum FaultCode {
    EMPTY_FAULT("nothing was written", ""),
    UNCLOSED_QUOTE("a single quote has no partner", "dead-node 'oil board"),
    UNKNOWN_FAULT("there is no such kind of fault", "dead-nod oil-board"),
    MISSING_TARGET("it does not say what is struck", "dead-node at 60s"),
    UNKNOWN_NAME("nothing in the pit has this name", "dead-node oil-bord"),
    AMBIGUOUS_NAME("the name fits several things in the pit", "needle-slipped 'Artificial horizon'"),
    WRONG_TARGET("this kind of fault cannot strike that", "dead-node front"),
    UNQUOTED_NAME("a name with a space stands without quotes", "needle-slipped Vertical speed/needle"),
    MISSING_KEY("a part that must be there is missing", "duplicate-address oil-board"),
    UNUSED_KEY("a part has no meaning here", "dead-node oil-board rate 20%"),
    DUPLICATE_KEY("a part stands twice", "dead-node oil-board at 60s at 90s"),
    MISSING_VALUE("nothing stands after a part's word", "dead-node oil-board at"),
    WRONG_TYPE("a value of another kind is needed", "dead-node oil-board at soon"),
    MISSING_UNIT("a quantity has no unit", "noise-burst front by 3"),
    WRONG_UNIT("a quantity has another unit than is needed", "noise-burst front by 3 kbaud"),
    OUT_OF_RANGE("a value is too small or too large", "noise-burst front rate -2/s"),
    AFTER_END("it begins when the run is over", "dead-node oil-board at 900s");

    private final String words;
    private final String example;

    FaultCode(String words, String example) {
        this.words = words;
        this.example = example;
    }

    /** What is wrong, in words. */
    public String words() {
        return words;
    }

    /** A text for the demo pit, in a run of 600 s, that is wrong in this way. */
    public String example() {
        return example;
    }
}
