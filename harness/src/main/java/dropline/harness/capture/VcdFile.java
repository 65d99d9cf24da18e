package dropline.harness.capture;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;

/**
 * What stood on the pairs as a VCD file (IEEE 1364-2005, clause 18), a scope for each segment. Single-bit wires only,
 * since common readers pass over vectors in silence. Time counts from the begin of the stretch.
 */
public final class VcdFile implements CaptureSink {
    private final Writer out;
    private final Stretch stretch;
    private final Resolution resolution;
    private final List<Talkers> talkers = new ArrayList<>();
    private final List<PairLevels> levels = new ArrayList<>();
    private final List<List<String>> codes = new ArrayList<>();
    private final PriorityQueue<Change> waiting = new PriorityQueue<>();
    private long changes;
    private long written;
    private long stamped;
    private long taken;

    private VcdFile(Writer out, Pit pit, List<Fault> faults, Stretch stretch, Resolution resolution) {
        this.out = out;
        this.stretch = stretch;
        this.resolution = resolution;
        int wire = 0;
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            Talkers of = new Talkers(pit, segment);
            PairLevels made = new PairLevels(of, faults);
            List<String> mine = new ArrayList<>();
            for (int i = 0; i < made.wires(); i++) {
                mine.add(VcdNames.code(wire++));
            }
            talkers.add(of);
            levels.add(made);
            codes.add(mine);
        }
    }

    /** Creates the file and writes what stands above the changes. */
    public static VcdFile create(
            Path file, Pit pit, String run, List<Fault> faults, Stretch stretch, Resolution resolution)
            throws IOException {
        BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
        VcdFile vcd = new VcdFile(out, pit, faults, stretch, resolution);
        try {
            vcd.head(pit, run);
        } catch (IOException failed) {
            out.close();
            throw failed;
        }
        return vcd;
    }

    /** Value changes written so far. */
    public long written() {
        return written;
    }

    @Override
    public void take(int segment, List<SentFrame> frames, List<DriverChange> drivers) {
        for (DriverChange change : drivers) {
            add(
                    change.atNanos(),
                    segment,
                    change.talker(),
                    change.on() ? Change.What.DRIVER_ON : Change.What.DRIVER_OFF);
        }
        Talkers of = talkers.get(segment);
        for (SentFrame frame : frames) {
            BitEdges.of(
                    frame,
                    of.format(),
                    of.clock(frame.talker()),
                    (at, level) -> add(at, segment, frame.talker(), level == 0 ? Change.What.ZERO : Change.What.ONE));
        }
    }

    @Override
    public void reached(long horizonNanos) throws IOException {
        // A step is written when no change can fall into it any more.
        long now = horizonNanos == Long.MAX_VALUE
                ? Long.MAX_VALUE
                : resolution.steps(Math.max(0, horizonNanos - stretch.fromNanos()));
        while (!waiting.isEmpty() && step(waiting.element()) < now) {
            long step = step(waiting.element());
            while (!waiting.isEmpty() && step(waiting.element()) == step) {
                Change change = waiting.remove();
                levels.get(change.segment()).take(change);
            }
            write(step);
        }
    }

    @Override
    public void close() throws IOException {
        try (out) {
            out.flush();
        }
    }

    private void add(long atNanos, int segment, int talker, Change.What what) {
        waiting.add(new Change(atNanos, taken++, segment, talker, what));
    }

    private long step(Change change) {
        return resolution.steps(Math.max(0, change.atNanos() - stretch.fromNanos()));
    }

    private void write(long step) throws IOException {
        StringBuilder text = new StringBuilder();
        changes = 0;
        for (int segment = 0; segment < levels.size(); segment++) {
            List<String> mine = codes.get(segment);
            levels.get(segment).update((wire, level) -> {
                text.append(level).append(mine.get(wire)).append('\n');
                changes++;
            });
        }
        if (changes > 0) {
            if (step != stamped) {
                out.write("#" + step + "\n");
                stamped = step;
            }
            out.append(text);
            written += changes;
        }
    }

    private void head(Pit pit, String run) throws IOException {
        out.write("$version Dropline $end\n");
        out.write("$comment\n  " + words(pit.name()) + ", " + words(run) + "; 0 is "
                + stretch.fromNanos() + " ns after the start of the run.\n"
                + "  Frames that begin in the stretch are whole; one under way at its begin is left out.\n$end\n");
        out.write("$timescale " + resolution.timescale() + " $end\n");
        VcdNames scopes = new VcdNames();
        VcdNames wires = new VcdNames();
        for (int segment = 0; segment < talkers.size(); segment++) {
            Talkers of = talkers.get(segment);
            out.write("$scope module " + scopes.unique(of.segment().name()) + " $end\n");
            List<String> names = wireNames(of, wires);
            for (int wire = 0; wire < names.size(); wire++) {
                out.write("$var wire 1 " + codes.get(segment).get(wire) + " " + names.get(wire) + " $end\n");
            }
            out.write("$upscope $end\n");
        }
        out.write("$enddefinitions $end\n#0\n$dumpvars\n");
        for (int segment = 0; segment < levels.size(); segment++) {
            for (int wire = 0; wire < levels.get(segment).wires(); wire++) {
                out.write(levels.get(segment).known(wire) + codes.get(segment).get(wire) + "\n");
            }
        }
        out.write("$end\n");
    }

    /** Some readers pass over scopes: where there are several, a wire's name begins with its segment's. */
    private List<String> wireNames(Talkers of, VcdNames names) {
        String prefix = talkers.size() == 1 ? "" : of.segment().name() + "_";
        List<String> found = new ArrayList<>();
        for (String wire : List.of("pair", "from_controller", "from_nodes")) {
            found.add(names.unique(prefix + wire));
        }
        for (int talker : of.indices()) {
            found.add(names.unique(prefix + of.name(talker) + "_enable"));
        }
        return found;
    }

    /** Text that cannot end a comment. */
    private static String words(String name) {
        return name.replace('$', ' ').replace('\n', ' ');
    }
}
