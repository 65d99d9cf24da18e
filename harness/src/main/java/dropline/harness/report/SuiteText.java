package dropline.harness.report;

import dropline.harness.suite.Breach;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.RunOutcome.Judged;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.RestsOn;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What became of a suite, as plain text: a sentence, then a line for each run and seed. */
public final class SuiteText {
    private static final int MOST_NAMED = 3;

    private final List<RunOutcome> runs;
    private final StringBuilder text = new StringBuilder();

    private SuiteText(List<RunOutcome> runs) {
        this.runs = runs;
    }

    /**
     * The whole text, ending with an end of line.
     *
     * @param runs every run with every seed, in the order of the suite
     * @param restsOn where the pit's figures come from
     */
    public static String of(List<RunOutcome> runs, RestsOn restsOn) {
        return new SuiteText(runs).whole(restsOn);
    }

    private String whole(RestsOn restsOn) {
        Paragraphs paragraphs = new Paragraphs(text);
        paragraphs.add("", headline());
        text.append('\n').append(table().text());
        text.append("\nWhat the figures rest on\n");
        caveatsOfAll().forEach(caveat -> paragraphs.add("  - ", caveat));
        restsOn.sentences().forEach(sentence -> paragraphs.add("  - ", sentence));
        if (restsOn.guessed() > 0) {
            paragraphs.add("  - ", "Guesses were taken as written; dropline replay tries them at half and at double.");
        }
        return text.toString();
    }

    private String headline() {
        List<String> broken = those(Outcome.FAIL);
        List<String> idle = those(Outcome.UNDECIDED);
        if (broken.isEmpty() && idle.isEmpty()) {
            return "PASS. " + (runs.size() == 1 ? "The one run holds." : "All " + runs.size() + " runs hold.");
        }
        List<String> parts = new ArrayList<>();
        if (runs.size() > 1) {
            long hold =
                    runs.stream().filter(run -> run.outcome() == Outcome.PASS).count();
            parts.add((hold == 0 ? "None" : hold) + " of " + runs.size() + " runs " + (hold <= 1 ? "holds" : "hold"));
        }
        if (!broken.isEmpty()) {
            parts.add(joined(broken, " and ") + (broken.size() == 1 ? " does not hold" : " do not hold"));
        }
        if (!idle.isEmpty()) {
            String nothing = parts.isEmpty() ? "Nothing" : "nothing";
            parts.add(nothing + " was checked in " + joined(idle, " and ") + ", and that is no success");
        }
        return (broken.isEmpty() ? "UNDECIDED. " : "FAIL. ") + String.join("; ", parts) + ".";
    }

    /** The runs of this outcome, each once, with its seeds. */
    private List<String> those(Outcome outcome) {
        Map<String, List<String>> seeds = new LinkedHashMap<>();
        for (RunOutcome run : runs) {
            if (run.outcome() == outcome) {
                seeds.computeIfAbsent(run.run(), name -> new ArrayList<>()).add(Long.toString(run.seed()));
            }
        }
        return seeds.entrySet().stream()
                .map(run -> run.getKey() + (run.getValue().size() == 1 ? " (seed " : " (seeds ")
                        + String.join(", ", run.getValue()) + ")")
                .toList();
    }

    private static String joined(List<String> names, String last) {
        if (names.size() == 1) {
            return names.get(0);
        }
        int shown = names.size() <= MOST_NAMED ? names.size() - 1 : MOST_NAMED;
        String end = names.size() <= MOST_NAMED ? names.get(shown) : names.size() - shown + " more";
        return String.join(", ", names.subList(0, shown)) + last + end;
    }

    private TextTable table() {
        TextTable table = new TextTable("verdict", "run", ">seed", "digest", "checked", "what broke");
        for (RunOutcome run : runs) {
            List<String> broke = run.breaches().stream().map(SuiteText::words).toList();
            table.row(
                    Figures.word(run.outcome()),
                    run.run(),
                    Long.toString(run.seed()),
                    run.digest(),
                    words(run.judged()),
                    broke.isEmpty() ? "-" : joined(broke, "; and "));
        }
        return table;
    }

    /** What broke in a run, on one line. */
    static String broken(RunOutcome run) {
        return String.join("; ", run.breaches().stream().map(SuiteText::words).toList());
    }

    private static String words(Judged judged) {
        List<String> words = new ArrayList<>();
        if (judged.panels() > 0) {
            words.add(Figures.plural(judged.panels(), "panel"));
        }
        if (judged.controls() > 0) {
            words.add(Figures.plural(judged.controls(), "control"));
        }
        if (judged.segments() > 0) {
            words.add("polls of " + Figures.plural(judged.segments(), "segment"));
        }
        return words.isEmpty() ? "nothing" : String.join(", ", words);
    }

    private static String words(Breach breach) {
        String took = Figures.time(breach.value());
        String value = breach.name() + " took " + took + ", limit " + Figures.time(breach.limit());
        return switch (breach.rule()) {
            case UPDATE, CONTROL -> value;
            case SHOWN -> breach.name() + " did not show every change";
            case LOST -> breach.name() + " lost " + Figures.plural(breach.value(), "step");
            case CYCLE -> "a round of polls on " + value;
        };
    }

    /** What the figures of every run rest on; what only some rest on is said while they run. */
    private Set<String> caveatsOfAll() {
        Set<String> common = new LinkedHashSet<>();
        runs.forEach(run -> common.addAll(run.caveats()));
        runs.forEach(run -> common.retainAll(run.caveats()));
        return common;
    }
}
