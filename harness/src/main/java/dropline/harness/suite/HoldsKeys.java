package dropline.harness.suite;

import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.Map;
import java.util.Optional;

/** What is written under {@code holds}, of a suite or of one of its runs: what a run does not say, its suite may. */
record HoldsKeys(Optional<Boolean> budgets, Optional<Boolean> controls, Optional<Long> cycleNanos) {
    static final HoldsKeys NOTHING_SAID = new HoldsKeys(Optional.empty(), Optional.empty(), Optional.empty());

    private static final Map<String, Boolean> WORDS = Map.of("yes", true, "true", true, "no", false, "false", false);

    /** What {@code group} has under {@code holds}; what it leaves open is as in {@code common}. */
    static HoldsKeys of(Group group, HoldsKeys common, Report report) {
        Optional<Tree> holds = group.get("holds");
        if (holds.isEmpty()) {
            return common;
        }
        if (!(holds.get() instanceof Tree.Mapping mapping)) {
            String keys = "keys: budgets: yes, controls: yes, cycle: 50 ms";
            report.at(holds.get(), "holds", KeyCode.WRONG_TYPE, keys, null);
            return common;
        }
        Group keys = new Group(mapping, "holds", SuiteFile.PAGE, report);
        Optional<Boolean> budgets = keys.choice("budgets", WORDS);
        Optional<Boolean> controls = keys.choice("controls", WORDS);
        Optional<Long> cycle = new RunKeys(keys, report).nanos("cycle", 1, Holds.ANY - 1);
        keys.nothingElse();
        return new HoldsKeys(budgets.or(common::budgets), controls.or(common::controls), cycle.or(common::cycleNanos));
    }

    /** Budgets are for a healthy pit; a fault may well make a panel late, or leave it dark. */
    Holds withDefaults(boolean healthy) {
        return new Holds(budgets.orElse(healthy), controls.orElse(true), cycleNanos.orElse(Holds.ANY));
    }
}
