package dropline.bus.copper;

/**
 * A stretch of cable between two stops that follow one another. A stop is a position in a segment's nodes, or
 * {@link dropline.bus.pit.Cable#CONTROLLER}.
 *
 * @param metres its length, m; NaN where nobody said
 */
public record Span(int from, int to, double metres) {}
