package dropline.bus.copper;

import dropline.bus.copper.Pair.Branch;
import dropline.bus.pit.Wire;
import dropline.bus.rule.Ruling;
import java.util.ArrayList;
import java.util.List;

/** Lengths against edges and rate, and the grounds. */
final class CableRules {
    private static final double NANO = 1e-9;

    private final Pair pair;
    private final GroundVolts grounds;
    private final List<Long> edges;

    CableRules(Pair pair, GroundVolts grounds) {
        this.pair = pair;
        this.grounds = grounds;
        this.edges = pair.transceivers().stream()
                .map(stop -> pair.load(stop).edgeNanos())
                .toList();
    }

    List<Ruling> rulings() {
        List<Ruling> rulings = new ArrayList<>();
        rulings.add(branch());
        rulings.add(line());
        rulings.add(edge());
        rulings.add(groundDifference());
        commonWire(rulings);
        return rulings;
    }

    private Ruling branch() {
        List<Branch> branches = pair.branches();
        double longest = branches.stream().mapToDouble(Branch::metres).max().orElse(0);
        long known = edges.stream().filter(edge -> edge > 0).count();
        double fastest =
                edges.stream().filter(edge -> edge > 0).mapToLong(e -> e).min().orElse(0) * NANO;
        if (known == 0) {
            return Ruling.unknown(
                    CopperRule.BRANCH, pair.name(), Double.NaN, "nobody said how fast the transceivers' edges are");
        }
        double limit = StubRule.TENTH_OF_EDGE.metres(fastest);
        if (Double.isNaN(longest)) {
            return Ruling.unknown(CopperRule.BRANCH, pair.name(), limit, "nobody said how long every stub is");
        }
        if (known < edges.size() && longest <= limit) {
            return Ruling.unknown(
                    CopperRule.BRANCH,
                    pair.name(),
                    limit,
                    Said.metres(longest) + " at most; nobody said how fast the edges of "
                            + (edges.size() - known) + " of " + edges.size()
                            + " transceivers are, and the fastest counts");
        }
        return Ruling.of(
                CopperRule.BRANCH,
                pair.name(),
                longest,
                limit,
                "a tenth of the fastest edge, " + Said.number(fastest / NANO) + " ns, one way; other published rules"
                        + " for the same: " + Said.metres(StubRule.CAN_OPEN.metres(fastest)) + " (CiA 301), "
                        + Said.metres(StubRule.MODBUS.metres(fastest)) + " (Modbus, 3.4.3)");
    }

    private Ruling line() {
        int baud = pair.segment().baud();
        double limit = TrunkRule.LENGTH_TIMES_RATE.metres(baud);
        double metres = pair.metres();
        if (Double.isNaN(metres)) {
            return Ruling.unknown(CopperRule.LINE, pair.name(), limit, "nobody said how long the cable is");
        }
        double modbus = TrunkRule.MODBUS.metres(baud);
        return Ruling.of(
                CopperRule.LINE,
                pair.name(),
                metres,
                limit,
                "guidance for " + baud + " baud, not a law"
                        + (Double.isNaN(modbus)
                                ? ""
                                : "; Modbus (3.4.3) has " + Said.metres(modbus) + " up to 9600 baud"));
    }

    /** The slowest driver whose edge is known; what a longer one would do is nobody's guess. */
    private Ruling edge() {
        double limit = CopperRule.EDGE_SHARE_OF_A_BIT / pair.segment().baud();
        long unknown = edges.stream().filter(edge -> edge == 0).count();
        double slowest = edges.stream().mapToLong(edge -> edge).max().orElse(0) * NANO;
        if (unknown > 0 && slowest <= limit) {
            return Ruling.unknown(
                    CopperRule.EDGE,
                    pair.name(),
                    limit,
                    "nobody said how long the edges of " + unknown + " of " + edges.size() + " transceivers last");
        }
        return Ruling.of(
                CopperRule.EDGE,
                pair.name(),
                slowest,
                limit,
                "the pit file's edges are the shortest a driver makes; its longest may be longer: see its data sheet");
    }

    private Ruling groundDifference() {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int stop : pair.transceivers()) {
            lowest = Math.min(lowest, grounds.at(stop));
            highest = Math.max(highest, grounds.at(stop));
        }
        return Ruling.of(
                CopperRule.GROUND_DIFFERENCE,
                pair.name(),
                highest - lowest,
                CopperRule.MOST_GROUND_DIFFERENCE_VOLTS,
                grounds.basis() + "; drivers taken to keep their wires within 0 to 5 V of their own ground");
    }

    private void commonWire(List<Ruling> rulings) {
        Wire.Common common = pair.segment().cable().wire().common();
        rulings.add(
                common == Wire.Common.UNSTATED
                        ? Ruling.unknown(
                                CopperRule.COMMON_WIRE, pair.name(), 1, "nobody said whether there is a third wire")
                        : Ruling.of(
                                CopperRule.COMMON_WIRE,
                                pair.name(),
                                common == Wire.Common.YES ? 1 : 0,
                                1,
                                "as the pit file has it; tied to protective earth at one point"));
    }
}
