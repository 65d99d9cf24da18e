package dropline.harness.pitfile;

import dropline.bus.chance.Distribution;
import dropline.bus.clock.UartClock;
import dropline.harness.pitfile.BusKeys.Speech;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.CharacterFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Checks of adapters, hubs, profiles, segments and nodes. */
final class BusChecks {
    private final Parts parts;
    private final Report report;

    BusChecks(Parts parts, Report report) {
        this.parts = parts;
        this.report = report;
    }

    void check() {
        Block root = parts.root();
        root.blocks(BusKeys.SEGMENTS).forEach(this::segment);
        root.blocks(NodeKeys.NODES).forEach(this::node);
    }

    private void segment(Block segment) {
        segment.block(BusKeys.CONTROLLER).ifPresent(this::controller);
        layout(segment);
        boolean sized =
                segment.get(BusKeys.PROTOCOL).filter(p -> p == Speech.SIZED).isPresent();
        Optional<Block> lengths = segment.block(BusKeys.SIZED);
        if (sized && lengths.isEmpty()) {
            String expected = "sized: with at least request and reply, since protocol is sized ("
                    + segment.at(BusKeys.PROTOCOL).line(segment.nameAt()) + ")";
            report.at(
                    segment.nameAt(), "sized", PitCode.MISSING_KEY, segment.name() + " without sized", expected, null);
        } else if (!sized && lengths.isPresent()) {
            String expected = "no sized: unless protocol is sized";
            String fix = "write protocol: sized, or delete sized:";
            report.at(lengths.get().nameAt(), "sized", PitCode.UNUSED_KEY, expected, fix);
        }
        List<Block> nodes = parts.nodesOn(segment);
        if (nodes.isEmpty() && everyNodeIsPlaced()) {
            String expected = "at least one node with segment: " + segment.name();
            report.at(segment.nameAt(), segment.name(), PitCode.EMPTY_SEGMENT, "no node", expected, null);
        }
        addresses(segment, nodes);
    }

    private void layout(Block segment) {
        boolean custom =
                segment.get(BusKeys.PROTOCOL).filter(p -> p == Speech.CUSTOM).isPresent();
        if (custom && !segment.has(BusKeys.LAYOUT)) {
            String expected = "layout: the path of a layout file, since protocol is custom ("
                    + segment.at(BusKeys.PROTOCOL).line(segment.nameAt()) + ")";
            String found = segment.name() + " without layout";
            report.at(segment.nameAt(), "layout", PitCode.MISSING_KEY, found, expected, "see docs/custom-protocols.md");
        } else if (!custom && segment.has(BusKeys.LAYOUT)) {
            String fix = "write protocol: custom, or delete layout:";
            report.at(
                    segment.at(BusKeys.LAYOUT),
                    "layout",
                    PitCode.UNUSED_KEY,
                    "no layout: unless protocol is custom",
                    fix);
        }
    }

    /** Whether every node names a segment there is; if not, that is the problem rather than an empty segment. */
    private boolean everyNodeIsPlaced() {
        return parts.root().blocks(NodeKeys.NODES).stream()
                .allMatch(n -> n.written(NodeKeys.NODE_SEGMENT)
                        .flatMap(s -> parts.segment(s.text()))
                        .isPresent());
    }

    private void controller(Block controller) {
        Optional<Tree.Scalar> hub = controller.written(BusKeys.CONTROLLER_HUB);
        Optional<Block> adapter = controller.block(BusKeys.ADAPTER);
        boolean hasHub = controller.has(BusKeys.CONTROLLER_HUB);
        if (hasHub && adapter.isPresent()) {
            String fix = "delete one; the hub's own adapter stands under hubs:";
            report.at(adapter.get().nameAt(), "adapter", PitCode.CONFLICT, "hub or adapter, not both", fix);
        } else if (!hasHub && adapter.isEmpty()) {
            String expected = "hub: the name of a hub, or adapter: where the host polls";
            report.at(
                    controller.nameAt(),
                    "hub",
                    PitCode.MISSING_KEY,
                    "controller without hub or adapter",
                    expected,
                    null);
        }
        if (hub.isPresent() && parts.hub(hub.get().text()).isEmpty()) {
            report.unknownName(hub.get(), "hub", "a hub", parts.hubNames());
        }
    }

    private void addresses(Block segment, List<Block> nodes) {
        Map<Integer, Block> taken = new LinkedHashMap<>();
        for (Block node : nodes) {
            Optional<Integer> address = node.written(NodeKeys.ADDRESS);
            Block earlier = address.isEmpty() ? null : taken.putIfAbsent(address.get(), node);
            if (earlier != null) {
                String expected = "an address that no other node on segment " + segment.name() + " has";
                String fix = "give one of them another address; " + earlier.name() + " in "
                        + earlier.at(NodeKeys.ADDRESS).line(node.at(NodeKeys.ADDRESS)) + " has it too";
                report.at(node.at(NodeKeys.ADDRESS), "address", PitCode.ADDRESS_CLASH, expected, fix);
            }
        }
    }

    private void profile(Block profile) {
        for (Block task : profile.blocks(BusKeys.TASKS)) {
            Optional<Long> every = task.written(BusKeys.TASK_EVERY);
            Optional<Long> takes = task.written(BusKeys.TASK_TAKES);
            if (every.isPresent() && takes.isPresent() && every.get() < takes.get()) {
                String expected = "at most every, so that it is over before the next ("
                        + task.at(BusKeys.TASK_EVERY).line(task.at(BusKeys.TASK_TAKES)) + ")";
                report.at(task.at(BusKeys.TASK_TAKES), "takes", PitCode.OUT_OF_RANGE, expected, null);
            }
        }
        boolean clock = profile.has(BusKeys.CLOCK);
        boolean ticks = profile.has(BusKeys.TICKS_PER_BIT);
        if (clock != ticks) {
            Key<?> there = clock ? BusKeys.CLOCK : BusKeys.TICKS_PER_BIT;
            Key<?> missing = clock ? BusKeys.TICKS_PER_BIT : BusKeys.CLOCK;
            String expected = missing.name() + ": " + missing.type().words() + ", since " + there.name() + " is there";
            report.at(profile.at(there), missing.name(), PitCode.MISSING_KEY, expected, null);
        }
    }

    private void node(Block node) {
        Optional<Tree.Scalar> name = node.written(NodeKeys.NODE_SEGMENT);
        Optional<Block> segment = name.flatMap(s -> parts.segment(s.text()));
        if (name.isPresent() && segment.isEmpty()) {
            report.unknownName(name.get(), "segment", "a segment", parts.segmentNames());
        }
        registers(node, segment);
        Optional<Block> profile = node.block(BusKeys.PROFILE);
        if (profile.isEmpty()) {
            return;
        }
        profile(profile.get());
        boolean gap = profile.get().has(BusKeys.REPLY_GAP);
        if (!gap && profile.get().isWhole()) {
            String expected =
                    BusKeys.REPLY_GAP.name() + ": " + BusKeys.REPLY_GAP.type().words();
            String fix = "measure it, or name a preset such as 8-bit loop";
            report.at(
                    profile.get().nameAt(),
                    "reply-gap",
                    PitCode.MISSING_KEY,
                    "a profile without reply-gap",
                    expected,
                    fix);
        } else if (gap && segment.isPresent() && isOwn(profile.get().at(BusKeys.REPLY_GAP))) {
            replyGap(profile.get(), segment.get());
        }
    }

    private static boolean isOwn(Tree written) {
        return !written.place().file().equals(Presets.FILE);
    }

    /** A gap shorter than a character leaves the controller no silence in which to let go of the pair. */
    private void replyGap(Block profile, Block segment) {
        Optional<Distribution> gap = profile.written(BusKeys.REPLY_GAP);
        Optional<Long> baud = segment.written(BusKeys.BAUD);
        Optional<CharacterFormat> format = segment.get(BusKeys.FORMAT);
        if (gap.isEmpty() || baud.isEmpty() || format.isEmpty()) {
            return;
        }
        int rate = Math.toIntExact(baud.get());
        long character = UartClock.exact(rate).charsNanos(format.get(), 1);
        if (gap.get().baseNanos() < character) {
            long micros = (character + Times.MICRO - 1) / Times.MICRO;
            String expected = "at least " + micros + " us, one character at " + rate + " baud ("
                    + segment.at(BusKeys.BAUD).line(profile.at(BusKeys.REPLY_GAP)) + ")";
            String fix = "write reply-gap: " + Measure.time().write(roundUp(micros) * Times.MICRO)
                    + ", or raise the baud rate";
            report.at(profile.at(BusKeys.REPLY_GAP), "reply-gap", PitCode.OUT_OF_RANGE, expected, fix);
        }
    }

    /** The next of 1, 2, 5, 10, 20, 50, ... so that what we suggest is a round figure with some slack. */
    private static long roundUp(long micros) {
        long decade = 1;
        while (decade * 10 < micros) {
            decade *= 10;
        }
        return micros <= 2 * decade ? 2 * decade : micros <= 5 * decade ? 5 * decade : 10 * decade;
    }

    private void registers(Block node, Optional<Block> segment) {
        boolean modbus = segment.flatMap(s -> s.get(BusKeys.PROTOCOL))
                .filter(p -> p == Speech.MODBUS_RTU)
                .isPresent();
        if (node.has(NodeKeys.REGISTERS) && segment.isPresent() && !modbus) {
            String expected = "no registers: unless the segment's protocol is modbus-rtu";
            String fix = "delete registers:, or write protocol: modbus-rtu for segment "
                    + segment.get().name();
            report.at(node.at(NodeKeys.REGISTERS), "registers", PitCode.UNUSED_KEY, expected, fix);
        }
        for (Registers.Line line :
                node.written(NodeKeys.REGISTERS).map(Registers.Map::lines).orElse(List.of())) {
            if (parts.signal(line.signal().text()).isEmpty()) {
                report.unknownName(line.signal(), "registers", "a signal", parts.signalNames());
            }
        }
    }
}
