package dropline.harness.suite;

import dropline.harness.pitfile.Lengths;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/** Values of a run's keys: lengths of time, seeds, texts of faults. */
final class RunKeys {
    private static final String LENGTH = "a length of time with its unit, such as 90 s, 2m30s or 50 ms";
    private static final String SEEDS = "whole numbers, such as [1, 2, 3]";
    private static final String FAULTS = "texts such as [\"dead-node NODE at 20s for 5s\"]; dropline faults lists them";
    private static final Pattern WHOLE = Pattern.compile("-?[0-9]{1,18}");

    private final Group group;
    private final Report report;

    RunKeys(Group group, Report report) {
        this.group = group;
        this.report = report;
    }

    /** A length of time, ns; empty where there is none, or none that is understood. */
    Optional<Long> nanos(String key, long least, long most) {
        Optional<Tree.Scalar> text = group.text(key, LENGTH);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        OptionalLong nanos = text.get().text().equals("0")
                ? OptionalLong.of(0)
                : Lengths.nanos(text.get().text());
        if (nanos.isEmpty()) {
            group.problem(text.get(), key, KeyCode.WRONG_TYPE, LENGTH, null);
            return Optional.empty();
        }
        if (nanos.getAsLong() < least || nanos.getAsLong() > most) {
            boolean tooShort = nanos.getAsLong() < least;
            String range = tooShort ? "longer than nothing" : "at most " + most / 1_000_000_000L + " s";
            group.problem(text.get(), key, KeyCode.OUT_OF_RANGE, range, null);
            return Optional.empty();
        }
        return Optional.of(nanos.getAsLong());
    }

    /** The seeds; 1 where none is given. */
    List<Long> seeds() {
        List<Long> seeds = new ArrayList<>();
        for (Tree.Scalar text : texts("seeds", SEEDS)) {
            if (!WHOLE.matcher(text.text()).matches()) {
                report.at(text, "seeds", KeyCode.WRONG_TYPE, SEEDS, null);
            } else if (seeds.contains(Long.parseLong(text.text()))) {
                String fix = "delete it: the same seed gives the same run";
                report.at(text, "seeds", SuiteCode.DUPLICATE_SEED, "each seed once", fix);
            } else {
                seeds.add(Long.parseLong(text.text()));
            }
        }
        return seeds.isEmpty() ? List.of(1L) : seeds;
    }

    /** The texts of the faults, each at its place. */
    List<Tree.Scalar> faults() {
        return texts(StatedFault.KEY, FAULTS);
    }

    /** A list of texts, or a single one. */
    private List<Tree.Scalar> texts(String key, String expected) {
        Optional<Tree> value = group.get(key);
        if (value.isEmpty()) {
            return List.of();
        }
        List<Tree> items = value.get() instanceof Tree.Sequence list ? list.items() : List.of(value.get());
        List<Tree.Scalar> texts = new ArrayList<>();
        for (Tree item : items) {
            if (item instanceof Tree.Scalar text && !text.isNothing()) {
                texts.add(text);
            } else {
                report.at(item, key, KeyCode.WRONG_TYPE, expected, null);
            }
        }
        if (items.isEmpty()) {
            report.at(value.get(), key, KeyCode.WRONG_TYPE, expected, "delete the key, or write one into the list");
        }
        return texts;
    }
}
