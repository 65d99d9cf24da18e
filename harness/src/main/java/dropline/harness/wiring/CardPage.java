package dropline.harness.wiring;

import java.util.ArrayList;
import java.util.List;

/**
 * Cards on sheets of paper.
 *
 * @param pit the pit's name
 * @param sheets the cards of each sheet
 */
public record CardPage(String pit, List<List<Card>> sheets) {
    /** Two columns of four on A4. */
    private static final int ON_A_SHEET = 8;

    public CardPage {
        sheets = sheets.stream().map(List::copyOf).toList();
    }

    static CardPage of(String pit, List<Card> cards) {
        List<List<Card>> sheets = new ArrayList<>();
        for (int first = 0; first < cards.size(); first += ON_A_SHEET) {
            sheets.add(cards.subList(first, Math.min(first + ON_A_SHEET, cards.size())));
        }
        return new CardPage(pit, sheets);
    }

    /** What the currents on the cards are. */
    public String currents() {
        return Supplies.RUNNING + " About: guessed, all or in part.";
    }

    /** What stands above every sheet. */
    public List<String> cautions() {
        return Cautions.LINES;
    }
}
