package dropline.harness.pitfile;

import dropline.bus.pit.Dimming;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Gauge;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Inlet.Converter;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Run;
import dropline.bus.pit.SupplyTree.Supply;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.List;

/** Makes supplies, converters and currents from groups without problems. */
final class PowerBuilder {
    private static final double MILLI = 1e-3;
    private static final double MICRO = 1e-6;

    private PowerBuilder() {}

    /** Runs come in the order of the tree, each branch to its end. */
    static SupplyTree tree(Block root) {
        List<Block> blocks = root.blocks(PowerKeys.SUPPLIES);
        List<Supply> supplies = blocks.stream().map(PowerBuilder::supply).toList();
        List<Run> runs = new ArrayList<>();
        for (int s = 0; s < blocks.size(); s++) {
            add(blocks.get(s), blocks.get(s).name(), s, supplies.size(), runs);
        }
        long hostOn = root.blockOrEmpty(Schema.HOST).get(Schema.STARTS_AFTER).orElse(SupplyTree.NONE.hostOnNanos());
        return new SupplyTree(supplies, runs, hostOn);
    }

    private static void add(Block supply, String start, int point, int supplies, List<Run> runs) {
        for (Block run : supply.blocks(PowerKeys.RUNS)) {
            String from = run.written(PowerKeys.FROM).map(Tree.Scalar::text).orElse(supply.name());
            if (from.equals(start)) {
                runs.add(run(run, point));
                add(supply, run.name(), supplies + runs.size() - 1, supplies, runs);
            }
        }
    }

    private static Supply supply(Block block) {
        return new Supply(
                block.name(),
                block.value(PowerKeys.VOLTS) * MILLI,
                block.get(PowerKeys.RATING).orElse(0L) * MICRO,
                block.value(PowerKeys.LOCATION));
    }

    private static Run run(Block block, int from) {
        Gauge gauge = block.value(PowerKeys.WIRE);
        return new Run(
                block.name(),
                from,
                new Gauge(gauge.name(), gauge.squareMillimetres(), block.value(PowerKeys.STRANDED)),
                block.value(PowerKeys.LENGTH) * MILLI,
                block.get(PowerKeys.JOINTS).orElse(0L) * MILLI);
    }

    static Inlet inlet(Block node, Block board) {
        Converter converter = board.value(PowerKeys.CONVERTER);
        return new Inlet(
                converter,
                board.value(PowerKeys.BOARD_VOLTS) * MILLI,
                converter == Converter.SWITCHING ? board.value(PowerKeys.EFFICIENCY) : 1,
                board.get(PowerKeys.WORKS_DOWN_TO).orElse(0L) * MILLI,
                node.value(PowerKeys.USB),
                node.value(PowerKeys.ISOLATED));
    }

    /** What a whole panel takes, if it is stated. */
    static Draws draws(Block panel) {
        return Draws.always(draw(panel, PanelKeys.DRAWS), panel.value(PowerKeys.FED_BY));
    }

    static Draws draws(Block indicator, Indicator.Kind kind) {
        Draw active = draw(indicator, PanelKeys.DRAWS);
        Draw rest = draw(indicator, PowerKeys.REST_DRAWS);
        boolean restsLikeActive = kind.refreshes() || kind.moves();
        Draw usual = restsLikeActive || !active.isKnown() ? active : new Draw(0, active.guessed());
        return new Draws(
                active,
                rest.isKnown() ? rest : usual,
                draw(indicator, PowerKeys.START_DRAWS),
                indicator.get(PowerKeys.START_LASTS).orElse(0L),
                indicator.value(PowerKeys.FED_BY));
    }

    static Dimming dimming(Block indicator) {
        return new Dimming(indicator.value(PowerKeys.CURVE), indicator.value(PowerKeys.BITS));
    }

    /** A current as written in a group. A preset's is a guess about a part that nobody has looked at. */
    static Draw draw(Block block, Key<Long> key) {
        Origin origin = block.origin(key);
        return block.get(key)
                .map(microamps -> new Draw(microamps, origin == Origin.GUESSED || origin == Origin.PRESET))
                .orElse(Draw.UNKNOWN);
    }
}
