package dropline.harness.starter;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.harness.yaml.YamlText;
import java.util.List;
import java.util.Optional;

/** A first suite for a pit and its first flight: the flight as it is, and again with a board silent for a while. */
final class FirstSuite {
    private static final String HEAD = """
            # What must hold, however often the pit is changed. Run it after every change:
            #
            #   dropline check suite.yaml
            #
            # Every key is in docs/suite-file.md; kinds of fault to try, in docs/faults.md.

            suite: First checks
            pit: PIT

            runs:
              # Every panel and control within its budget, and no move of a control lost, whichever way the dice fall.
              first flight:
                recording: FLIGHT
                seeds: [1, 2, 3]
            """;

    private static final String SILENT = """

              # A board that says nothing for a while. Its own panels stand still, so budgets are not asked for here;
              # but no move of a control may be lost, and waiting for an answer must not hold up the others: they
              # are still asked in turn.
              a silent board:
                recording: FLIGHT
                faults: [FAULT]
                holds: {controls: yes, cycle: 100 ms}
            """;

    private FirstSuite() {}

    static String of(Pit pit) {
        String silent = struck(pit)
                .map(name -> "dead-node '" + name.replace("'", "''") + "' at 20s for 5s")
                .map(fault -> SILENT.replace("FLIGHT", Starter.FLIGHT).replace("FAULT", YamlText.scalar(fault)))
                .orElse("");
        return HEAD.replace("PIT", Starter.PIT).replace("FLIGHT", Starter.FLIGHT) + silent;
    }

    /** Rather a board that nobody turns or presses anything on: while it is dead, moves made there would be lost. */
    private static Optional<String> struck(Pit pit) {
        List<Node> nodes =
                Layout.of(pit).nodes().stream().map(Layout.NodePlace::node).toList();
        return nodes.stream()
                .filter(node -> node.panels().stream()
                        .allMatch(panel -> panel.controls().isEmpty()))
                .findFirst()
                .or(() -> nodes.stream().findFirst())
                .map(Node::name);
    }
}
