package dropline.harness.wiring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

final class CardsTest {
    private final Pit pit = HutPit.pit();
    private final List<Card> cards = Cards.of(pit);

    @Test
    void everyNodeHasOneCard() {
        List<String> named = new ArrayList<>(cards.stream().map(Card::node).toList());
        List<String> all = Layout.of(pit).nodes().stream()
                .map(place -> place.node().name())
                .toList();

        assertEquals(all.size(), named.size());
        assertEquals(new HashSet<>(all), new HashSet<>(named));
    }

    @Test
    void cardSaysWhatOneLooksForBehindAPanel() {
        Card trim = card("trim");

        assertEquals(
                new Card(
                        "trim",
                        "front",
                        1,
                        "250000 baud 8N1",
                        "dropline",
                        "YES, its own 120 ohm",
                        true,
                        "YES, its own",
                        List.of(
                                new Card.Row("firmware", "trim <3>"),
                                new Card.Row("passport", "trim.yaml"),
                                new Card.Row("supply", "left 12 V"),
                                new Card.Row("draws", "more than 125 mA running"),
                                new Card.Row("connector", "5-way, keyed"),
                                new Card.Row("board", "small, red")),
                        "compass (on the bench), slip indicator (planned)"),
                trim);
    }

    @Test
    void terminatorIsYesNoOrToBeRemoved() {
        assertEquals("YES, 120 ohm", card("heat").terminator());
        assertEquals("NO: remove its own 120 ohm", card("oil").terminator());
        assertEquals("NO: remove its own", card("fuel").bias());
        assertEquals("no", card("pump-2").terminator());
        assertEquals("none: straight on USB", card("clipboard").terminator());
        assertEquals("roof, left", card("lamp").segment());
    }

    @Test
    void currentWithAGuessInItIsAbout() {
        // 40 mA of a preset's board, about 1 A, 200 mA and 15 mA of a preset's lamp, 20 mA measured
        assertTrue(card("heat").rows().contains(new Card.Row("draws", "about 1.275 A running")));
    }

    @Test
    void whatNobodySaidIsLeftEmptyToBeWrittenIn() {
        assertEquals(
                List.of("", "", "", "", ""),
                card("pump-1").rows().stream().map(Card.Row::words).toList());
    }

    @Test
    void pageHoldsEveryCardOnSheetsOfEightAndNothingFromOutside() {
        String html = Cards.html(pit);

        assertEquals(11, count(html, "<article class=\"card\">"));
        assertEquals(2, count(html, "<section class=\"sheet\">"));
        assertEquals(2, count(html, "running currents, not starting, stalled or peak ones. About: guessed"));
        assertEquals(2, count(html, "Fuse each supply branch close to its source."));
        assertTrue(html.contains("trim &lt;3&gt;"), "what a person wrote is text");
        assertFalse(html.contains("<script") || html.contains("http"), "no script, no network");
    }

    private Card card(String node) {
        return cards.stream().filter(one -> one.node().equals(node)).findFirst().orElseThrow();
    }

    private static int count(String text, String words) {
        return (int)
                Pattern.compile(Pattern.quote(words)).matcher(text).results().count();
    }
}
