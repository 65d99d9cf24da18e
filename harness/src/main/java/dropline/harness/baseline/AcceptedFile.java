package dropline.harness.baseline;

import dropline.harness.problem.Problem;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.TextFile;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import dropline.harness.yaml.YamlText;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Accepted runs as a text file, a line for each segment, board, panel and control; made to be read in a diff. */
public final class AcceptedFile {
    private static final String PAGE = "docs/baselines.md";
    private static final String VALUE = "a mean and a spread, such as 11.3120 ms +- 0.0210 or 12 +- 0.5";
    private static final Pattern TIME = Pattern.compile("(-?\\d+\\.\\d+) ms \\+- (\\d+\\.\\d+)");
    private static final Pattern COUNT = Pattern.compile("(\\d+(?:\\.\\d+)?) \\+- (\\d+(?:\\.\\d+)?)");
    private static final double NANOS_PER_MILLI = 1e6;

    private final Report report = new Report();
    private int seeds;

    private AcceptedFile() {}

    /** What became of a file. */
    public sealed interface Result {}

    /** Accepted runs. */
    public record Understood(Accepted accepted) implements Result {}

    /** A file that holds none, with what is wrong with it. */
    public record Wrong(List<Problem> problems) implements Result {
        public Wrong {
            problems = List.copyOf(problems);
        }
    }

    /** Where a suite's accepted runs are kept: beside it. */
    public static Path beside(Path suite) {
        return suite.resolveSibling(stem(suite) + ".accepted.yaml");
    }

    /** Where the pit file is kept as it was then, with all it includes in one. */
    public static Path pitBeside(Path suite) {
        return suite.resolveSibling(stem(suite) + ".accepted-pit.yaml");
    }

    private static String stem(Path suite) {
        return String.valueOf(suite.getFileName()).replaceFirst("\\.ya?ml$", "");
    }

    // --- written

    /** The text of the file. */
    public static String text(Accepted accepted) {
        StringBuilder text = new StringBuilder();
        text.append(
                "# Written by 'dropline check --accept'; later checks compare with it. Each figure is the mean of the"
                        + " runs,\n# then the spread of a single one. What it means: " + PAGE + "\n");
        text.append("accepted: ").append(YamlText.scalar(accepted.suite())).append('\n');
        text.append("dropline: ")
                .append(YamlText.scalar(accepted.droplineVersion()))
                .append('\n');
        text.append("seeds: ").append(accepted.seeds()).append("\nruns:\n");
        accepted.runs().forEach((name, run) -> run(text, name, run));
        return text.toString();
    }

    private static void run(StringBuilder text, String name, AcceptedRun run) {
        text.append("  ").append(YamlText.scalar(name)).append(":\n");
        text.append("    played: ").append(YamlText.scalar(run.played())).append('\n');
        text.append("    content: \"").append(run.content()).append("\"\n");
        text.append("    seed: ").append(run.seed()).append('\n');
        text.append("    digest: \"").append(run.digest()).append("\"\n");
        Subject.Kind kind = null;
        for (Map.Entry<Subject, Map<Figure, Spread>> entry : run.figures().entrySet()) {
            if (entry.getKey().kind() != kind) {
                kind = entry.getKey().kind();
                text.append("    ").append(kind.group()).append(":\n");
            }
            text.append("      ").append(YamlText.scalar(entry.getKey().name())).append(": {");
            text.append(String.join(
                    ", ",
                    entry.getValue().entrySet().stream()
                            .map(figure -> figure.getKey().key() + ": " + value(figure.getKey(), figure.getValue()))
                            .toList()));
            text.append("}\n");
        }
    }

    private static String value(Figure figure, Spread spread) {
        return figure.isTime()
                ? String.format(
                        Locale.ROOT,
                        "%.4f ms +- %.4f",
                        spread.mean() / NANOS_PER_MILLI,
                        spread.deviation() / NANOS_PER_MILLI)
                : count(spread.mean()) + " +- " + count(spread.deviation());
    }

    private static String count(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.2f", value);
    }

    // --- read

    /** Reads one. */
    public static Result read(Path path) {
        AcceptedFile file = new AcceptedFile();
        Optional<String> text = TextFile.read(path, "a file of accepted runs", file.report);
        Optional<Tree> tree = text.flatMap(read -> TreeReader.read(path.toString(), read, file.report));
        Optional<Accepted> accepted = tree.flatMap(file::accepted);
        return accepted.isPresent() && file.report.isEmpty()
                ? new Understood(accepted.get())
                : new Wrong(file.report.list());
    }

    private Optional<Accepted> accepted(Tree tree) {
        if (!(tree instanceof Tree.Mapping mapping)) {
            report.at(tree, "", KeyCode.WRONG_TYPE, "keys: accepted, dropline, seeds, runs", null);
            return Optional.empty();
        }
        Group root = new Group(mapping, "accepted runs", PAGE, report);
        Optional<String> suite = root.needText("accepted", "the suite's name").map(Tree.Scalar::text);
        Optional<String> version = root.needText("dropline", "a version").map(Tree.Scalar::text);
        seeds = (int) whole(root, "seeds");
        Map<String, AcceptedRun> runs = new LinkedHashMap<>();
        root.need("runs", "the runs")
                .ifPresent(all -> entries(all, "runs")
                        .forEach(entry ->
                                run(entry).ifPresent(run -> runs.put(entry.key().text(), run))));
        root.nothingElse();
        return suite.isEmpty() || version.isEmpty()
                ? Optional.empty()
                : Optional.of(new Accepted(suite.get(), version.get(), Math.max(1, seeds), runs));
    }

    private long whole(Group group, String key) {
        Optional<Tree.Scalar> text = group.needText(key, "a whole number");
        if (text.isPresent() && !text.get().text().matches("-?\\d{1,18}")) {
            report.at(text.get(), key, KeyCode.WRONG_TYPE, "a whole number", null);
            return 0;
        }
        return text.map(found -> Long.parseLong(found.text())).orElse(0L);
    }

    private List<Tree.Entry> entries(Tree tree, String key) {
        if (tree instanceof Tree.Mapping mapping) {
            return mapping.once().entries();
        }
        report.at(tree, key, KeyCode.WRONG_TYPE, "names, each with its figures", null);
        return List.of();
    }

    private Optional<AcceptedRun> run(Tree.Entry entry) {
        if (!(entry.value() instanceof Tree.Mapping mapping)) {
            report.at(entry.value(), entry.key().text(), KeyCode.WRONG_TYPE, "keys of a run", null);
            return Optional.empty();
        }
        Group group = new Group(mapping, "an accepted run", PAGE, report);
        String played = group.needText("played", "what was played")
                .map(Tree.Scalar::text)
                .orElse("");
        String content = group.needText("content", "hexadecimal digits")
                .map(Tree.Scalar::text)
                .orElse("");
        String digest = group.needText("digest", "hexadecimal digits")
                .map(Tree.Scalar::text)
                .orElse("");
        long seed = whole(group, "seed");
        Map<Subject, Map<Figure, Spread>> figures = new TreeMap<>();
        for (Subject.Kind kind : Subject.Kind.values()) {
            group.get(kind.group())
                    .ifPresent(all -> entries(all, kind.group())
                            .forEach(one ->
                                    figures.put(new Subject(kind, one.key().text()), figures(one))));
        }
        group.nothingElse();
        return Optional.of(new AcceptedRun(played, content, seed, digest, figures));
    }

    private Map<Figure, Spread> figures(Tree.Entry entry) {
        Map<Figure, Spread> figures = new EnumMap<>(Figure.class);
        if (!(entry.value() instanceof Tree.Mapping mapping)) {
            report.at(entry.value(), entry.key().text(), KeyCode.WRONG_TYPE, "figures in braces", null);
            return figures;
        }
        Group group = new Group(mapping, "a line of figures", PAGE, report);
        for (Figure figure : Figure.values()) {
            group.text(figure.key(), VALUE)
                    .flatMap(text -> spread(figure, text))
                    .ifPresent(spread -> figures.put(figure, spread));
        }
        group.nothingElse();
        return figures;
    }

    private Optional<Spread> spread(Figure figure, Tree.Scalar text) {
        Matcher matcher = (figure.isTime() ? TIME : COUNT).matcher(text.text());
        if (!matcher.matches()) {
            report.at(text, figure.key(), KeyCode.WRONG_TYPE, VALUE, "accept the suite anew: dropline check --accept");
            return Optional.empty();
        }
        double unit = figure.isTime() ? NANOS_PER_MILLI : 1;
        return Optional.of(new Spread(
                Double.parseDouble(matcher.group(1)) * unit, Double.parseDouble(matcher.group(2)) * unit, seeds));
    }
}
