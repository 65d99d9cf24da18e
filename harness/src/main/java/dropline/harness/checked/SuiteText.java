package dropline.harness.checked;

import dropline.harness.baseline.Checkup;
import dropline.harness.baseline.Deviation;
import dropline.harness.report.Figures;
import dropline.harness.report.Paragraphs;
import dropline.harness.report.TextTable;
import dropline.harness.suite.Breach;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.RunOutcome.Judged;
import dropline.harness.suite.StepOutcome;
import dropline.harness.suite.StepOutcome.Standing;
import dropline.harness.verdict.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What became of a suite, as plain text: a sentence, then a line for each run and seed. */
public final class SuiteText {
    private static final int MOST_NAMED = 3;

    private static final int MOST_BROKEN = 12;

    private final Checkup checkup;
    private final List<RunOutcome> runs;
    private final List<StepOutcome> steps;
    private final StringBuilder text = new StringBuilder();

    private SuiteText(Checkup checkup) {
        this.checkup = checkup;
        runs = checkup.runs();
        steps = checkup.steps();
    }

    /** The whole text, ending with an end of line. */
    public static String of(Checkup checkup) {
        return new SuiteText(checkup).whole();
    }

    /** The verdict in a sentence. */
    public static String headline(Checkup checkup) {
        return new SuiteText(checkup).headline();
    }

    /** What the figures of every run rest on, a sentence each. */
    static List<String> restsOn(Checkup checkup) {
        return new SuiteText(checkup).restsOn();
    }

    private String whole() {
        Paragraphs paragraphs = new Paragraphs(text);
        paragraphs.add("", headline());
        if (!runs.isEmpty()) {
            text.append('\n').append(table().text());
        }
        if (!steps.isEmpty()) {
            text.append('\n').append(steps().text());
        }
        broken(paragraphs);
        text.append("\nWhat the figures rest on\n");
        restsOn().forEach(sentence -> paragraphs.add("  - ", sentence));
        return text.append(BaselineText.of(checkup.standings())).toString();
    }

    /** Of each run in which more than one thing broke, all or the first. */
    private void broken(Paragraphs paragraphs) {
        for (RunOutcome run : runs) {
            List<String> broke = broken(run);
            if (broke.size() > 1) {
                paragraphs.add("\n", "What broke in " + run.run() + " (seed " + run.seed() + ")");
                broke.stream().limit(MOST_BROKEN).forEach(words -> paragraphs.add("  - ", words));
                if (broke.size() > MOST_BROKEN) {
                    paragraphs.add("  - ", "and " + (broke.size() - MOST_BROKEN) + " more; --json has them all");
                }
            }
        }
    }

    private List<String> restsOn() {
        List<String> sentences = new ArrayList<>(caveatsOfAll());
        sentences.addAll(checkup.restsOn().sentences());
        if (checkup.restsOn().guessed() > 0) {
            sentences.add("Guesses were taken as written; dropline replay tries them at half and at double.");
        }
        return sentences;
    }

    private String headline() {
        List<String> broken = those(Outcome.FAIL);
        List<String> idle = those(Outcome.UNDECIDED);
        List<String> brokenSteps = those(Standing.FAIL);
        List<String> openSteps = those(Standing.UNDECIDED);
        List<String> parts = new ArrayList<>();
        if (runs.size() > 1 || (runs.size() == 1 && broken.isEmpty() && idle.isEmpty())) {
            parts.add(hold());
        }
        long held = those(Standing.PASS).size();
        if (runs.isEmpty() && held > 0) {
            parts.add(held == 1 ? "one step holds" : held + " steps hold");
        }
        broken.addAll(brokenSteps);
        if (!broken.isEmpty()) {
            parts.add(joined(broken, " and ") + (broken.size() == 1 ? " does not hold" : " do not hold"));
        }
        if (!idle.isEmpty()) {
            parts.add("nothing was checked in " + joined(idle, " and ") + ", and that is no success");
        }
        if (!openSteps.isEmpty()) {
            parts.add(joined(openSteps, " and ") + (openSteps.size() == 1 ? " is" : " are") + " undecided");
        }
        long notRun = those(Standing.NOT_RUN).size();
        if (notRun > 0) {
            parts.add(notRun + " live " + (notRun == 1 ? "step was" : "steps were") + " not run");
        }
        long bad = checkup.standings().deviations().stream()
                .filter(Deviation::isBad)
                .count();
        if (bad > 0) {
            parts.add(bad + (bad == 1 ? " figure is" : " figures are") + " worse or gone since the runs were accepted");
        } else if (!checkup.standings().isWell()) {
            parts.add("not everything can be compared with the accepted runs");
        }
        String sentence = String.join("; ", parts);
        return checkup.verdict() + ". " + Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) + ".";
    }

    /** How many of the runs hold. */
    private String hold() {
        long hold = runs.stream().filter(run -> run.outcome() == Outcome.PASS).count();
        if (runs.size() == 1) {
            return "the one run holds";
        }
        if (hold == runs.size()) {
            return "all " + hold + " runs hold";
        }
        return (hold == 0 ? "none" : hold) + " of " + runs.size() + " runs " + (hold <= 1 ? "holds" : "hold");
    }

    private List<String> those(Standing standing) {
        return steps.stream()
                .filter(step -> step.standing() == standing)
                .map(StepOutcome::step)
                .toList();
    }

    private TextTable steps() {
        TextTable table = new TextTable("verdict", "step", "checked", "what it says");
        for (StepOutcome step : steps) {
            table.row(
                    word(step.standing()),
                    step.step(),
                    step.checked(),
                    step.words().isEmpty() ? "-" : joined(step.words(), "; and "));
        }
        return table;
    }

    /** A standing in a word. */
    static String word(Standing standing) {
        return standing == Standing.NOT_RUN ? "not run" : Figures.word(Outcome.valueOf(standing.name()));
    }

    /** The runs of this outcome, each once, with its seeds. */
    private List<String> those(Outcome outcome) {
        Map<String, List<String>> seeds = new LinkedHashMap<>();
        for (RunOutcome run : runs) {
            if (run.outcome() == outcome) {
                seeds.computeIfAbsent(run.run(), name -> new ArrayList<>()).add(Long.toString(run.seed()));
            }
        }
        List<String> those = new ArrayList<>();
        seeds.forEach((run, with) ->
                those.add(run + (with.size() == 1 ? " (seed " : " (seeds ") + String.join(", ", with) + ")"));
        return those;
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
            List<String> broke = broken(run);
            table.row(
                    Figures.word(run.outcome()),
                    run.run(),
                    Long.toString(run.seed()),
                    run.digest(),
                    words(run),
                    broke.isEmpty() ? "-" : broke.size() == 1 ? broke.get(0) : broke.size() + " things, see below");
        }
        return table;
    }

    /** What broke in a run. */
    static List<String> broken(RunOutcome run) {
        return run.breaches().stream().map(SuiteText::words).toList();
    }

    /** What was checked in a run. */
    static String words(RunOutcome run) {
        Judged judged = run.judged();
        List<String> words = new ArrayList<>();
        if (judged.panels() > 0) {
            words.add(Figures.plural(judged.panels(), "panel"));
        }
        if (judged.controls() > 0) {
            words.add(Figures.plural(judged.controls(), "control"));
        }
        if (judged.boards() > 0) {
            words.add("controls of " + Figures.plural(judged.boards(), "board"));
        }
        if (judged.segments() > 0) {
            words.add("polls of " + Figures.plural(judged.segments(), "segment"));
        }
        if (run.turns() > 1) {
            words.add(run.turns() + " faults in turn");
        }
        return words.isEmpty() ? "nothing" : String.join(", ", words);
    }

    private static String words(Breach breach) {
        return said(breach) + (breach.after().isEmpty() ? "" : " (" + breach.after() + ")");
    }

    private static String said(Breach breach) {
        String limit = ", limit " + Figures.time(breach.limit());
        String value =
                breach.value() == Breach.NEVER ? "" : breach.name() + " took " + Figures.time(breach.value()) + limit;
        boolean never = breach.value() == Breach.NEVER;
        return switch (breach.rule()) {
            case UPDATE, CONTROL -> value;
            case SHOWN -> breach.name() + " did not show every change";
            case LOST -> breach.name() + " lost " + Figures.plural(breach.value(), "step");
            case CYCLE -> "a round of polls on " + value;
            case KNOWN ->
                "the controls of " + breach.name()
                        + (never
                                ? " were not known at the end"
                                : " were not known for " + Figures.time(breach.value()) + limit);
            case RECOVERY ->
                breach.name()
                        + (never
                                ? " was not right again at the end"
                                : " was right again after " + Figures.time(breach.value()) + limit);
            case SILENCE ->
                breach.name()
                        + (never
                                ? " did not show what the host said last"
                                : " showed what the host said last after " + Figures.time(breach.value()) + limit);
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
