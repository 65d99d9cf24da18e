package dropline.harness.wiring;

import java.util.List;

/**
 * What stands on one card, in words.
 *
 * @param node the board's name
 * @param segment the segment's name, with its arm if it is on one
 * @param address its address
 * @param speed rate and character format
 * @param protocol how it is spoken to
 * @param terminator whether it has one, as an answer
 * @param isEnd whether it stands at an end of its pair
 * @param bias whether it holds the pair, as an answer
 * @param rows what else there is to know: a heading and its words, empty where nobody said
 * @param panels the panels it carries, as many as there is room for
 */
public record Card(
        String node,
        String segment,
        int address,
        String speed,
        String protocol,
        String terminator,
        boolean isEnd,
        String bias,
        List<Row> rows,
        String panels) {

    /** A heading and its words. */
    public record Row(String heading, String words) {}

    public Card {
        rows = List.copyOf(rows);
    }
}
