package dropline.harness.pitfile;

import dropline.bus.pit.Budget;
import dropline.bus.pit.Indicator;
import dropline.harness.yaml.Report;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The limits of each panel: its own, else the tightest of its indicators' kinds, else the pit's, else ours. */
final class Budgets {
    /** Level C and D transport delay or latency (14 CFR Part 60 App. A Table A2A 4.a.2, edition of 2014). */
    static final long STANDING_NANOS = 150 * Times.MILLI;

    static final String STANDING_SOURCE = "14 CFR Part 60 App. A Table A2A 4.a.2, for comparison";
    private static final String OWN_SOURCE = "stated in the pit file";

    private final Block pit;
    private final Map<Indicator.Kind, Block> kinds = new LinkedHashMap<>();

    Budgets(Block root) {
        this.pit = root.blockOrEmpty(PanelKeys.BUDGETS);
        for (Block block : pit.blocks(PanelKeys.KIND_LIMITS)) {
            PanelKeys.KIND
                    .type()
                    .read(block.nameAt(), block.name(), new Report())
                    .ifPresent(kind -> kinds.put(kind, block));
        }
    }

    /** The limits of one panel that shows with these kinds of indicator. */
    Budget of(Block panel, List<Indicator.Kind> shown) {
        Block own = panel.blockOrEmpty(PanelKeys.BUDGET);
        Optional<Block> kind = tightest(shown);
        Block judge = own.has(PanelKeys.UPDATE) || kind.isEmpty() ? own : kind.get();
        long update =
                judge.get(PanelKeys.UPDATE).or(() -> pit.get(PanelKeys.UPDATE)).orElse(STANDING_NANOS);
        long control =
                own.get(PanelKeys.CONTROL).or(() -> pit.get(PanelKeys.CONTROL)).orElse(STANDING_NANOS);
        return new Budget(update, control, source(judge));
    }

    private String source(Block judge) {
        if (judge.has(PanelKeys.UPDATE) || judge.has(PanelKeys.CONTROL)) {
            return judge.get(PanelKeys.SOURCE).orElse(OWN_SOURCE);
        }
        boolean stated = pit.has(PanelKeys.UPDATE) || pit.has(PanelKeys.CONTROL);
        return pit.get(PanelKeys.SOURCE).orElse(stated ? OWN_SOURCE : STANDING_SOURCE);
    }

    private Optional<Block> tightest(List<Indicator.Kind> shown) {
        Block tightest = null;
        long least = Long.MAX_VALUE;
        for (Map.Entry<Indicator.Kind, Block> entry : kinds.entrySet()) {
            long limit = entry.getValue().get(PanelKeys.UPDATE).orElse(Long.MAX_VALUE);
            if (shown.contains(entry.getKey()) && limit < least) {
                least = limit;
                tightest = entry.getValue();
            }
        }
        return Optional.ofNullable(tightest);
    }
}
