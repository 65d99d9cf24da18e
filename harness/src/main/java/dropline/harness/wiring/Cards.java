package dropline.harness.wiring;

import dropline.bus.copper.Pair;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Fitting;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.List;

/** A card for the back of each board, as one HTML page for A4 that needs no network and no script. */
public final class Cards {
    /** Panels that have room on a card. */
    private static final int MOST_PANELS = 5;

    private Cards() {}

    /** The whole file. */
    public static String html(Pit pit) {
        StringOutput html = new StringOutput(1 << 15);
        TemplateEngine.createPrecompiled(ContentType.Html).render("cards.jte", CardPage.of(pit.name(), of(pit)), html);
        return html.toString();
    }

    /** One for each node, in the order on the cable. */
    static List<Card> of(Pit pit) {
        List<Card> cards = new ArrayList<>();
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            Segment described = pit.segments().get(segment);
            List<Pair> pairs = Pair.of(pit, segment);
            for (Cable.Arm arm : described.cable().arms()) {
                for (int stop : arm.stops()) {
                    if (stop != Cable.CONTROLLER) {
                        cards.add(card(described, pairs, arm, stop));
                    }
                }
            }
        }
        return List.copyOf(cards);
    }

    private static Card card(Segment segment, List<Pair> pairs, Cable.Arm arm, int stop) {
        Node node = segment.nodes().get(stop);
        Pair pair = pairs.stream()
                .filter(one -> one.stops().contains(stop))
                .findFirst()
                .orElse(null);
        return new Card(
                node.name(),
                segment.name() + (arm.name().isEmpty() ? "" : ", " + arm.name()),
                node.address(),
                Names.speed(segment),
                segment.protocol().name(),
                pair == null ? "none: straight on USB" : Fit.terminator(pair, stop),
                pair != null && pair.isEnd(stop),
                pair == null ? "none" : Fit.bias(pair, stop),
                rows(node),
                panels(node));
    }

    /** What is not known is left empty, to be written in by hand. */
    private static List<Card.Row> rows(Node node) {
        Fitting fitting = node.fitting();
        String module = fitting.pairLoad().name();
        List<Card.Row> rows = new ArrayList<>();
        rows.add(new Card.Row("firmware", fitting.firmware()));
        rows.add(new Card.Row("passport", fitting.passport()));
        rows.add(new Card.Row("supply", fitting.supply()));
        rows.add(new Card.Row("draws", Supplies.draws(node)));
        rows.add(new Card.Row("connector", fitting.connector()));
        String board = fitting.board();
        if (!board.isEmpty() || !module.isEmpty()) {
            rows.add(new Card.Row("board", board + (board.isEmpty() || module.isEmpty() ? "" : ", ") + module));
        }
        return rows;
    }

    private static String panels(Node node) {
        List<String> names = Names.panels(node);
        if (names.isEmpty()) {
            return "no panel";
        }
        String first = String.join(", ", names.subList(0, Math.min(MOST_PANELS, names.size())));
        return names.size() <= MOST_PANELS ? first : first + " and " + (names.size() - MOST_PANELS) + " more";
    }
}
