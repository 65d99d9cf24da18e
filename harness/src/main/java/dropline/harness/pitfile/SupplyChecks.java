package dropline.harness.pitfile;

import dropline.bus.pit.Inlet.Converter;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Checks of supplies and their runs, of what hangs on them, and of currents that need one another. */
final class SupplyChecks {
    private final Parts parts;
    private final Report report;
    private final Map<String, Block> points = new LinkedHashMap<>();

    SupplyChecks(Parts parts, Report report) {
        this.parts = parts;
        this.report = report;
    }

    void check() {
        List<Block> supplies = parts.root().blocks(PowerKeys.SUPPLIES);
        for (Block supply : supplies) {
            named(supply);
            supply.blocks(PowerKeys.RUNS).forEach(this::named);
        }
        supplies.forEach(this::runs);
        for (Block node : parts.root().blocks(NodeKeys.NODES)) {
            node.written(NodeKeys.SUPPLY).ifPresent(name -> {
                if (!points.isEmpty() && !points.containsKey(name.text())) {
                    report.unknownName(name, "supply", "a supply or one of its runs", points.keySet());
                }
            });
            board(node.blockOrEmpty(NodeKeys.BOARD));
        }
        for (Block panel : parts.root().blocks(PanelKeys.PANELS)) {
            panel.blocks(PanelKeys.INDICATORS).forEach(this::indicator);
        }
    }

    private void named(Block point) {
        Block namesake = points.putIfAbsent(point.name(), point);
        if (namesake != null) {
            String fix = "give one of them another name; the first is in "
                    + namesake.nameAt().line(point.nameAt());
            String expected = "a name that no other supply or run has";
            report.at(point.nameAt(), point.name(), PitCode.DUPLICATE_NAME, expected, fix);
        }
    }

    private void runs(Block supply) {
        Map<String, Block> runs = new LinkedHashMap<>();
        supply.blocks(PowerKeys.RUNS).forEach(run -> runs.put(run.name(), run));
        Set<String> starts = new LinkedHashSet<>(runs.keySet());
        starts.add(supply.name());
        for (Block run : runs.values()) {
            Optional<Tree.Scalar> from = run.written(PowerKeys.FROM);
            if (from.isPresent() && !starts.contains(from.get().text())) {
                report.unknownName(from.get(), "from", "a run of " + supply.name(), starts);
            } else if (from.isPresent() && isCircular(run, runs)) {
                String expected = "runs that begin at the supply; this one leads back to itself";
                report.at(from.get(), "from", PitCode.CIRCULAR, expected, "write from: " + supply.name());
            }
        }
    }

    private static boolean isCircular(Block run, Map<String, Block> runs) {
        Block at = run;
        for (int step = 0; step < runs.size(); step++) {
            Block before =
                    runs.get(at.written(PowerKeys.FROM).map(Tree.Scalar::text).orElse(""));
            if (before == null) {
                return false;
            }
            if (before == run) {
                return true;
            }
            at = before;
        }
        return false;
    }

    private void board(Block board) {
        Converter converter = board.get(PowerKeys.CONVERTER).orElse(Converter.NONE);
        if (converter != Converter.SWITCHING) {
            unused(board, PowerKeys.EFFICIENCY, "converter: switching");
        }
        if (converter == Converter.NONE) {
            unused(board, PowerKeys.BOARD_VOLTS, "converter: linear or converter: switching");
        }
    }

    private void unused(Block block, Key<?> key, String with) {
        if (block.has(key)) {
            String expected = key.name() + " only with " + with;
            report.at(block.at(key), key.name(), PitCode.UNUSED_KEY, expected, "delete it, or write " + with);
        }
    }

    private void indicator(Block indicator) {
        for (Key<Long> more : List.of(PowerKeys.REST_DRAWS, PowerKeys.START_DRAWS)) {
            if (indicator.has(more) && !indicator.has(PanelKeys.DRAWS)) {
                KindUses.needs(indicator, PanelKeys.DRAWS, "beside " + more.name(), report);
            }
        }
        boolean draws = indicator.has(PowerKeys.START_DRAWS);
        if (draws != indicator.has(PowerKeys.START_LASTS)) {
            Key<Long> missing = draws ? PowerKeys.START_LASTS : PowerKeys.START_DRAWS;
            Key<Long> written = draws ? PowerKeys.START_DRAWS : PowerKeys.START_LASTS;
            KindUses.needs(indicator, missing, "beside " + written.name(), report);
        }
    }
}
