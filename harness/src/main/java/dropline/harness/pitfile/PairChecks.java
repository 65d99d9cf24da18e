package dropline.harness.pitfile;

import dropline.bus.pit.Cable.Topology;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Checks of a segment's copper: where resistors are said to be, and what no direct segment has. */
final class PairChecks {
    private final Parts parts;
    private final Report report;

    PairChecks(Parts parts, Report report) {
        this.parts = parts;
        this.report = report;
    }

    void check() {
        for (Block segment : parts.root().blocks(BusKeys.SEGMENTS)) {
            List<Section> written = Stream.of(PairKeys.CABLE, PairKeys.TERMINATORS, PairKeys.BIAS_RESISTORS)
                    .filter(section -> segment.block(section).isPresent())
                    .toList();
            if (segment.get(BusKeys.TOPOLOGY).equals(Optional.of(Topology.DIRECT))) {
                written.forEach(section -> unused(segment, section));
            } else {
                segment.block(PairKeys.TERMINATORS).ifPresent(block -> places(segment, block));
                segment.block(PairKeys.BIAS_RESISTORS).ifPresent(block -> {
                    places(segment, block);
                    bias(segment, block);
                });
            }
        }
    }

    private void unused(Block segment, Section section) {
        Tree.Scalar name = segment.block(section).orElseThrow().nameAt();
        String expected = "no " + section.name() + ": with topology direct, where there is no pair";
        report.at(name, section.name(), PitCode.UNUSED_KEY, expected, "delete " + section.name() + ":");
    }

    private void places(Block segment, Block resistors) {
        if (PairBuilder.areNone(resistors)) {
            return;
        }
        List<String> nodes = parts.nodesOn(segment).stream().map(Block::name).toList();
        Set<String> seen = new HashSet<>();
        for (Tree.Scalar name : resistors.written(PairKeys.AT).orElse(List.of())) {
            boolean known = nodes.contains(name.text()) || name.text().equals(CableChecks.CONTROLLER);
            if (!known && parts.node(name.text()).isPresent()) {
                String expected = "nodes of segment " + segment.name() + ": " + Report.oneOf(nodes);
                report.at(name, "at", PitCode.CONFLICT, expected, "delete it, or move the node to this segment");
            } else if (!known) {
                report.unknownName(name, "at", "a node", nodes);
            } else if (!seen.add(name.text())) {
                report.at(name, "at", PitCode.DUPLICATE_NAME, "each stop once", "delete one of the two");
            }
        }
    }

    private void bias(Block segment, Block resistors) {
        boolean none = PairBuilder.areNone(resistors);
        if (!none && segment.get(BusKeys.BIAS).equals(Optional.of(false))) {
            String expected = "bias-resistors: none, since bias is no ("
                    + segment.at(BusKeys.BIAS).line(resistors.nameAt()) + ")";
            String fix = "delete bias: no, or write bias-resistors: none";
            report.at(resistors.nameAt(), "bias-resistors", PitCode.CONFLICT, expected, fix);
        }
    }
}
