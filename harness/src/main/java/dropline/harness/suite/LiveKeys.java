package dropline.harness.suite;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.suite.LiveStep.Asked;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Reads one step under {@code live}. */
final class LiveKeys {
    private static final String CHANGED = "changed";
    private static final String NODES = "names of boards, such as [oil-board], or changed";
    private static final List<String> KINDS = List.of("roll-call", "drive", "bench");

    private final Group group;
    private final Report report;
    private final Function<Tree.Scalar, Optional<Path>> recording;

    /** @param recording finds a recording by its path as the suite writes it, or reports that there is none */
    LiveKeys(Tree.Mapping step, Report report, Function<Tree.Scalar, Optional<Path>> recording) {
        this.group = new Group(step, SuiteKeys.STEP, "a live step", SuiteFile.PAGE, report);
        this.report = report;
        this.recording = recording;
    }

    /** The step; without a pit it is only looked at. */
    Optional<LiveStep> read(String name, Optional<Pit> pit) {
        List<String> kinds = KINDS.stream().filter(group::has).toList();
        if (kinds.size() != 1) {
            String found = kinds.isEmpty() ? "none of them" : String.join(" and ", kinds);
            report.at(group.place(), name, KeyCode.MISSING_KEY, found, "one of roll-call, drive, bench", null);
        }
        Optional<Asked> asked = kinds.size() == 1 ? asked(kinds.get(0), pit) : Optional.empty();
        Optional<Tree.Scalar> port = group.text("port", "a serial port, such as COM7");
        Optional<Tree.Scalar> server = group.text("tcp", "a server, such as 127.0.0.1:41510");
        if (port.isPresent() == server.isPresent()) {
            String fix = port.isPresent() ? "delete one of the two" : "write port: COM7; dropline ports lists them";
            String found = port.isPresent() ? "both" : "neither";
            report.at(group.place(), "port", KeyCode.MISSING_KEY, found, "a port: or a tcp:", fix);
        }
        group.nothingElse();
        return asked.map(what -> new LiveStep(
                name,
                what,
                port.map(Tree.Scalar::text).orElse(""),
                server.map(Tree.Scalar::text).orElse("")));
    }

    private Optional<Asked> asked(String kind, Optional<Pit> pit) {
        if (kind.equals("bench")) {
            return nodes(pit).map(LiveStep.Bench::new);
        }
        Optional<String> segment = group.text(kind, "the name of a segment")
                .filter(text -> isKnown(text, kind, "a segment", pit.stream().flatMap(LiveKeys::segments)))
                .map(Tree.Scalar::text);
        if (kind.equals("roll-call")) {
            return segment.map(LiveStep.RollCall::new);
        }
        Optional<Path> file =
                group.needText("recording", "the path of a recording").flatMap(recording);
        Optional<String> to = new RunKeys(group, report)
                .nanos("to", 1, Long.MAX_VALUE)
                .flatMap(nanos -> group.text("to", "").map(Tree.Scalar::text));
        return segment.isEmpty() || file.isEmpty()
                ? Optional.empty()
                : Optional.of(new LiveStep.Drive(segment.get(), file.get().toString(), to));
    }

    private static Stream<String> segments(Pit pit) {
        return pit.segments().stream().map(Segment::name);
    }

    private static Stream<String> nodes(Pit pit) {
        return pit.segments().stream()
                .flatMap(segment -> segment.nodes().stream().map(node -> node.name()));
    }

    /** The names of boards; none for those that changed. */
    private Optional<List<String>> nodes(Optional<Pit> pit) {
        Tree value = group.get("bench").orElseThrow();
        if (value instanceof Tree.Scalar text && text.text().equals(CHANGED)) {
            return Optional.of(List.of());
        }
        List<Tree> items = value instanceof Tree.Sequence list ? list.items() : List.of(value);
        List<String> names = new ArrayList<>();
        for (Tree item : items) {
            if (!(item instanceof Tree.Scalar text) || text.isNothing()) {
                report.at(item, "bench", KeyCode.WRONG_TYPE, NODES, null);
            } else if (isKnown(text, "bench", "a board", pit.stream().flatMap(LiveKeys::nodes))) {
                names.add(text.text());
            }
        }
        if (items.isEmpty()) {
            report.at(value, "bench", KeyCode.WRONG_TYPE, NODES, null);
        }
        return names.isEmpty() ? Optional.empty() : Optional.of(names);
    }

    /** Whether a name is one of these; where there are none, nobody knows. */
    private boolean isKnown(Tree.Scalar text, String key, String what, Stream<String> known) {
        List<String> names = known.toList();
        if (names.isEmpty() || names.contains(text.text())) {
            return true;
        }
        report.unknownName(text, key, what, names);
        return false;
    }
}
