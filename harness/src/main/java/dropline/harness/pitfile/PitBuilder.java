package dropline.harness.pitfile;

import dropline.bus.pit.Budget;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Node.Register;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.harness.yaml.Report;
import java.util.List;
import java.util.Optional;

/** Makes a pit from a file without problems. */
final class PitBuilder {
    private static final long SERVO_FRAME_NANOS = 20 * Times.MILLI;

    private final Parts parts;
    private final BusBuilder bus;
    private final CableBuilder cables;
    private final Budgets budgets;
    private final Programs programs;

    PitBuilder(Parts parts) {
        this.parts = parts;
        this.bus = new BusBuilder(parts);
        this.cables = new CableBuilder(parts);
        this.budgets = new Budgets(parts.root());
        this.programs = new Programs(parts, new Report());
    }

    Pit pit() {
        Block root = parts.root();
        Optional<Pit.Load> load =
                root.block(Schema.LOAD).map(l -> new Pit.Load(l.value(Schema.EVERY), l.value(Schema.CHANGES)));
        return new Pit(
                root.value(Schema.NAME),
                root.blockOrEmpty(Schema.HOST).value(Schema.STATE_RATE),
                load.orElse(null),
                root.blocks(Schema.SIGNALS).stream().map(PitBuilder::signal).toList(),
                root.blocks(BusKeys.SEGMENTS).stream().map(this::segment).toList(),
                root.blocks(BusKeys.HUBS).stream().map(cables::hub).toList(),
                PowerBuilder.tree(root));
    }

    private static Signal signal(Block block) {
        Numbers.Span range = block.value(Schema.RANGE);
        return new Signal(
                block.name(),
                block.value(Schema.UNIT),
                range.low(),
                range.high(),
                block.value(Schema.RESOLUTION),
                block.value(Schema.WRAPS),
                block.get(Schema.COLUMN).orElse(block.name()),
                block.value(Schema.SCALE),
                block.value(Schema.OFFSET),
                block.value(Schema.NUMBER));
    }

    private Segment segment(Block block) {
        return new Segment(
                block.name(),
                Math.toIntExact(block.value(BusKeys.BAUD)),
                block.value(BusKeys.FORMAT),
                bus.protocol(block),
                bus.controller(block),
                parts.nodesOn(block).stream()
                        .map(node -> node(node, block.value(BusKeys.TOPOLOGY)))
                        .toList(),
                block.value(BusKeys.BIAS),
                cables.cable(block));
    }

    private Node node(Block block, Topology topology) {
        List<Register> registers = block.get(NodeKeys.REGISTERS).map(Registers.Map::lines).orElse(List.of()).stream()
                .map(line -> new Register(parts.signalIndex(line.signal().text()), line.address()))
                .toList();
        Profile profile = bus.profile(block);
        return new Node(
                block.name(),
                block.value(NodeKeys.ADDRESS),
                block.value(NodeKeys.WEIGHT),
                topology == Topology.DIRECT ? profile.straight() : profile,
                parts.panelsOn(block).stream().map(this::panel).toList(),
                registers,
                cables.fitting(block),
                programs.program(block));
    }

    private Panel panel(Block block) {
        List<Indicator> indicators =
                block.blocks(PanelKeys.INDICATORS).stream().map(this::indicator).toList();
        Budget budget =
                budgets.of(block, indicators.stream().map(Indicator::kind).toList());
        return new Panel(
                block.name(),
                block.value(PanelKeys.PLACE),
                block.value(PanelKeys.STATUS),
                indicators,
                block.blocks(PanelKeys.CONTROLS).stream()
                        .map(PitBuilder::control)
                        .toList(),
                budget,
                PowerBuilder.draws(block));
    }

    private Indicator indicator(Block block) {
        Indicator.Kind kind = block.value(PanelKeys.KIND);
        String first = block.value(PanelKeys.SHOWS).get(0).text();
        Numbers.Span range = parts.signal(first).orElseThrow().value(Schema.RANGE);
        return new Indicator(
                block.name(),
                kind,
                block.value(PanelKeys.SHOWS).stream()
                        .map(name -> parts.signalIndex(name.text()))
                        .toList(),
                block.value(PanelKeys.DELAY),
                block.get(PanelKeys.REFRESH_EVERY).orElse(kind == Indicator.Kind.SERVO ? SERVO_FRAME_NANOS : 0),
                block.get(PanelKeys.REFRESH_TAKES).orElse(0L),
                kind.refreshes() ? block.value(PanelKeys.REFRESH_BLOCKS) : Indicator.Blocks.NOTHING,
                KindBuilder.motion(block, kind, range.high() - range.low()),
                KindBuilder.glow(block, kind),
                PowerBuilder.draws(block, kind),
                PowerBuilder.dimming(block));
    }

    private static Control control(Block block) {
        Control.Kind kind = block.value(PanelKeys.CONTROL_KIND);
        return new Control(
                block.name(),
                kind,
                block.value(PanelKeys.CONTROL_NUMBER),
                block.value(PanelKeys.DEBOUNCE),
                block.value(PanelKeys.BOUNCE),
                block.value(PanelKeys.DEAD_BAND),
                KindBuilder.positions(block, kind),
                KindBuilder.matrix(block, kind),
                KindBuilder.detents(block, kind));
    }
}
