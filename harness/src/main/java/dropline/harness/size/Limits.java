package dropline.harness.size;

import dropline.bus.copper.Copper;
import dropline.bus.copper.GroundVolts;
import dropline.bus.pit.Pit;
import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.bus.supply.Supplies;
import dropline.bus.supply.SupplyRule;
import java.util.List;

/** The rules beside time. */
public enum Limits implements Limit {
    /** Loads, volts, resistors and lengths of the segment's pairs. */
    COPPER {
        @Override
        public List<Ruling> of(Pit pit, int segment) {
            return Copper.rule(pit, segment, GroundVolts.of(pit, segment)).stream()
                    .filter(ruling -> ruling.rule().weight() == Rule.Weight.LAW)
                    .toList();
        }
    },
    /** The supplies that feed boards of the segment; a fifth of what they are rated for stays free. */
    SUPPLY {
        @Override
        public List<Ruling> of(Pit pit, int segment) {
            return Supplies.rule(pit, segment).stream()
                    .filter(ruling -> ruling.rule().weight() == Rule.Weight.LAW || ruling.rule() == SupplyRule.RUNNING)
                    .toList();
        }
    }
}
