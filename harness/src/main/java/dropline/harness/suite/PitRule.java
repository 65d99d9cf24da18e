package dropline.harness.suite;

import dropline.bus.pit.Pit;
import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.harness.copper.CopperText;
import dropline.harness.power.PowerStudy;
import dropline.harness.ruling.RulingText;
import dropline.harness.verdict.Outcome;
import java.util.ArrayList;
import java.util.List;

/** Rules that a pit must keep, whatever is played through it. */
public enum PitRule {
    /** Loads, volts, terminators, lengths and grounds of every pair. */
    COPPER("copper"),
    /** Volts at the boards, currents, heat and back-feed of every supply. */
    SUPPLY("supply");

    private final String key;

    PitRule(String key) {
        this.key = key;
    }

    /** As it is written under {@code holds}. */
    public String key() {
        return key;
    }

    /** What it comes to in a pit. What is guidance only does not fail. */
    public StepOutcome judge(Pit pit) {
        List<String> words = new ArrayList<>();
        Outcome outcome = Outcome.PASS;
        List<Ruling> rulings = rulings(pit);
        for (Ruling ruling : rulings) {
            Outcome one = outcome(ruling);
            outcome = outcome.and(one);
            if (one != Outcome.PASS) {
                words.add(ruling.rule().title() + ", " + ruling.where() + ": "
                        + (one == Outcome.UNDECIDED
                                ? "not known"
                                : RulingText.value(ruling) + ", " + RulingText.limit(ruling)));
            }
        }
        return new StepOutcome("rules of " + key, StepOutcome.of(outcome), rulings.size() + " rulings", words);
    }

    private List<Ruling> rulings(Pit pit) {
        if (this == SUPPLY) {
            return PowerStudy.of(pit).rulings();
        }
        List<Ruling> rulings = new ArrayList<>();
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            if (pit.segments().get(segment).isShared()) {
                rulings.addAll(CopperText.rulings(pit, segment));
            }
        }
        return rulings;
    }

    private static Outcome outcome(Ruling ruling) {
        if (ruling.rule().weight() == Rule.Weight.GUIDANCE) {
            return Outcome.PASS;
        }
        return switch (ruling.standing()) {
            case HOLDS -> Outcome.PASS;
            case BROKEN -> Outcome.FAIL;
            case UNKNOWN -> Outcome.UNDECIDED;
        };
    }
}
