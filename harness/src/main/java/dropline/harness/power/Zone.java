package dropline.harness.power;

/**
 * A backlight zone.
 *
 * @param name of its panel and itself
 * @param segment the segment it is lit over
 * @param signal the level it shows
 * @param volts what its lamps are fed with, V: its board's, or its supply's; NaN where that is not known
 * @param amps at full, A; NaN where nobody said
 * @param curve of brightness over level, in a word
 * @param bits of its dimmer
 * @param coarsest the largest step that can be seen, as a ratio of brightness: from one step to the next
 */
public record Zone(
        String name,
        String segment,
        String signal,
        double volts,
        double amps,
        String curve,
        int bits,
        double coarsest) {}
