package dropline.harness.pitfile;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.PollFloor;
import dropline.bus.plan.SegmentWire;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.NodeWire;
import dropline.protocol.custom.Custom;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.modbus.ModbusRtu;
import dropline.protocol.sized.Sized;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Checks of a pit that is otherwise whole: whether its nodes can be spoken to in their segment's protocol. */
final class FitChecks {
    private final Parts parts;
    private final Pit pit;
    private final Report report;

    FitChecks(Parts parts, Pit pit, Report report) {
        this.parts = parts;
        this.pit = pit;
        this.report = report;
    }

    void check() {
        for (Segment segment : pit.segments()) {
            Block block = parts.segment(segment.name()).orElseThrow();
            format(segment, block);
            for (Node node : segment.nodes()) {
                Block written = parts.node(node.name()).orElseThrow();
                if (segment.protocol() instanceof ModbusRtu) {
                    registers(segment, node, written);
                }
                fits(segment, node, written);
                new Programs(parts, report).check(segment, node, written);
            }
            if (segment.protocol() instanceof Custom custom) {
                new LayoutChecks(parts, pit, report).check(segment, custom);
            }
            if (report.isEmpty()) {
                broadcast(segment, block);
                timeOut(segment, block);
            }
        }
    }

    private void format(Segment segment, Block block) {
        if (segment.format().dataBits() != 8 && !(segment.protocol() instanceof Sized)) {
            String expected = "eight data bits, which " + segment.protocol().name() + " needs ("
                    + block.at(BusKeys.PROTOCOL).line(block.at(BusKeys.FORMAT)) + ")";
            report.at(block.at(BusKeys.FORMAT), "format", PitCode.CONFLICT, expected, "write format: 8N1 or 8E1");
        }
    }

    private void fits(Segment segment, Node node, Block written) {
        NodeWire wire = SegmentWire.of(pit, node);
        if (segment.protocol() instanceof DroplineFrames) {
            doesNotFit(written, DroplineFrames.checkFits(wire));
        } else if (segment.protocol() instanceof ModbusRtu && report.isEmpty()) {
            List<String> problems = ModbusRtu.check(wire);
            doesNotFit(written, problems.isEmpty() ? null : String.join("; ", problems));
        } else if (segment.protocol() instanceof Custom custom) {
            List<String> problems = custom.check(wire);
            doesNotFit(written, problems.isEmpty() ? null : String.join("; ", problems));
        } else if (segment.protocol() instanceof Sized sized
                && sized.maxSignalsPerFrame() == 0
                && !wire.signals().isEmpty()) {
            Block lengths = parts.segment(segment.name())
                    .flatMap(s -> s.block(BusKeys.SIZED))
                    .orElseThrow();
            String expected = "at least 1, since node " + node.name() + " shows signals ("
                    + written.nameAt().line(lengths.at(BusKeys.SIGNALS_PER_FRAME)) + ")";
            String found = lengths.has(BusKeys.SIGNALS_PER_FRAME)
                    ? lengths.at(BusKeys.SIGNALS_PER_FRAME).found()
                    : "0, which counts where it is left out";
            Tree at = lengths.at(BusKeys.SIGNALS_PER_FRAME);
            report.at(at, "signals-per-frame", PitCode.OUT_OF_RANGE, found, expected, "write signals-per-frame: 10");
        }
    }

    private void doesNotFit(Block node, @Nullable String problem) {
        if (problem != null) {
            String fix = "give it other numbers, or move some of its panels to another node";
            report.at(node.nameAt(), node.name(), PitCode.DOES_NOT_FIT, problem, null, fix);
        }
    }

    private void registers(Segment segment, Node node, Block written) {
        boolean broadcast = segment.controller().state() == StateDelivery.BROADCAST;
        if (broadcast && written.has(NodeKeys.REGISTERS)) {
            String expected =
                    "no registers: where state is broadcast, since then all nodes have the same: the signals' numbers";
            String fix = "delete registers:, or write state: addressed for segment " + segment.name();
            report.at(written.at(NodeKeys.REGISTERS), "registers", PitCode.UNUSED_KEY, expected, fix);
        }
        List<Integer> shown = SegmentWire.signals(pit, node);
        for (Registers.Line line : lines(written)) {
            if (!shown.contains(parts.signalIndex(line.signal().text()))) {
                String expected = "a signal that a panel on node " + node.name() + " shows";
                report.at(line.signal(), "registers", PitCode.UNUSED_KEY, expected, "delete the line");
            }
        }
        clashes(node, written, shown);
    }

    private void clashes(Node node, Block written, List<Integer> shown) {
        List<Integer> inOrder = shown.stream()
                .sorted(Comparator.comparingInt(s -> SegmentWire.number(pit, node, s)))
                .toList();
        for (int i = 1; i < inOrder.size(); i++) {
            int before = inOrder.get(i - 1);
            int signal = inOrder.get(i);
            int width = ModbusRtu.registers(pit.signals().get(before).valueBytes());
            int from = SegmentWire.number(pit, node, before);
            int register = SegmentWire.number(pit, node, signal);
            if (register < from + width) {
                String taken = pit.signals().get(before).name()
                        + (width == 1 ? " lies in " + from : " takes " + from + " and " + (from + 1));
                String name = pit.signals().get(signal).name();
                Tree at = lines(written).stream()
                        .filter(l -> l.signal().text().equals(name))
                        .map(Registers.Line::signal)
                        .findFirst()
                        .orElse(written.nameAt());
                report.at(
                        at,
                        name,
                        PitCode.REGISTER_CLASH,
                        "register " + register,
                        "a register of its own; " + taken,
                        "write " + name + ": " + (from + width) + " under registers: if that one is free");
            }
        }
    }

    private static List<Registers.Line> lines(Block node) {
        return node.written(NodeKeys.REGISTERS).map(Registers.Map::lines).orElse(List.of());
    }

    private void broadcast(Segment segment, Block block) {
        if (segment.protocol() instanceof ModbusRtu && segment.controller().state() == StateDelivery.BROADCAST) {
            NodeWire all = SegmentWire.all(pit, segment);
            List<String> problems = ModbusRtu.check(new NodeWire(1, all.signals(), List.of()));
            if (!problems.isEmpty()) {
                String fix = "give the signals other numbers, or write state: addressed";
                String found = String.join("; ", problems);
                report.at(block.nameAt(), block.name(), PitCode.DOES_NOT_FIT, found, null, fix);
            }
        }
    }

    private void timeOut(Segment segment, Block block) {
        long least = 0;
        String slowest = "";
        for (Node node : segment.nodes()) {
            long answer = PollFloor.shortestAnswerNanos(pit, segment, node);
            slowest = answer > least ? node.name() : slowest;
            least = Math.max(least, answer);
        }
        Optional<Block> controller = block.block(BusKeys.CONTROLLER);
        if (controller.isPresent() && segment.controller().timeOutNanos() < least) {
            long micros = (least + Times.MICRO - 1) / Times.MICRO;
            String found = controller.get().has(BusKeys.TIME_OUT)
                    ? controller.get().at(BusKeys.TIME_OUT).found()
                    : Measure.time().write(segment.controller().timeOutNanos()) + ", which counts where it is left out";
            String expected = "at least " + micros + " us, the soonest the reply of node " + slowest + " can end";
            Tree at = controller.get().at(BusKeys.TIME_OUT);
            report.at(at, "time-out", PitCode.OUT_OF_RANGE, found, expected, null);
        }
    }
}
