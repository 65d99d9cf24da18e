package dropline.harness.suite;

import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What is written under {@code holds}, of a suite or of one of its runs: what a run does not say, its suite may. */
final class HoldsKeys {
    /** Nothing is written. */
    static final HoldsKeys NOTHING_SAID = new HoldsKeys(Map.of(), Map.of(), Map.of());

    private final Map<String, Boolean> wants;
    private final Map<String, Long> nanos;
    private final Map<String, Tree> values;

    private HoldsKeys(Map<String, Boolean> wants, Map<String, Long> nanos, Map<String, Tree> values) {
        this.wants = wants;
        this.nanos = nanos;
        this.values = values;
    }

    /** What a suite has under {@code holds}: its runs may say otherwise, of its pit only it can. */
    static HoldsKeys ofSuite(Group suite, Report report) {
        return of(suite, NOTHING_SAID, true, report);
    }

    /** What a run has under {@code holds}; what it leaves open is as in {@code common}. */
    static HoldsKeys ofRun(Group run, HoldsKeys common, Report report) {
        return of(run, common, false, report);
    }

    private static HoldsKeys of(Group group, HoldsKeys common, boolean ofPit, Report report) {
        Optional<Tree> holds = group.get("holds");
        if (holds.isEmpty()) {
            return common.asSaidElsewhere();
        }
        if (!(holds.get() instanceof Tree.Mapping mapping)) {
            String keys = "keys: budgets: yes, controls: yes, cycle: 50 ms";
            report.at(holds.get(), "holds", KeyCode.WRONG_TYPE, keys, null);
            return common.asSaidElsewhere();
        }
        Group keys =
                new Group(mapping, ofPit ? SuiteKeys.SUITE_HOLDS : SuiteKeys.HOLDS, "holds", SuiteFile.PAGE, report);
        HoldsKeys said = new HoldsKeys(
                new LinkedHashMap<>(common.wants), new LinkedHashMap<>(common.nanos), new LinkedHashMap<>());
        said.want(keys, "budgets");
        said.want(keys, "controls");
        for (String time : new String[] {"cycle", "known", "recovery", "silence"}) {
            new RunKeys(keys, report).nanos(time, 1, Within.ANY - 1).ifPresent(length -> {
                said.nanos.put(time, length);
                said.values.put(time, keys.get(time).orElseThrow());
            });
        }
        if (ofPit) {
            said.want(keys, "copper");
            said.want(keys, "supply");
        }
        keys.nothingElse();
        return said;
    }

    private HoldsKeys asSaidElsewhere() {
        return new HoldsKeys(wants, nanos, Map.of());
    }

    private void want(Group keys, String key) {
        keys.choice(key, SuiteKeys.WORDS).ifPresent(wanted -> {
            wants.put(key, wanted);
            values.put(key, keys.get(key).orElseThrow());
        });
    }

    /** Whether something is wanted that nobody is held to unless they say so. */
    boolean wants(String key) {
        return wants.getOrDefault(key, false);
    }

    /** Where this very group says something; empty where it does not, or only its suite does. */
    Optional<Tree> where(String key) {
        return Optional.ofNullable(values.get(key));
    }

    /** Budgets are for a healthy pit; a fault may well make a panel late, or leave it dark. */
    Holds withDefaults(boolean healthy) {
        return new Holds(
                wants.getOrDefault("budgets", healthy),
                wants.getOrDefault("controls", true),
                within("cycle"),
                new Within(within("known"), within("recovery"), within("silence")));
    }

    private long within(String key) {
        return nanos.getOrDefault(key, Within.ANY);
    }
}
