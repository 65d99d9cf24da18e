package dropline.harness.starter;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * The preset a board's name in a spreadsheet most likely means.
 *
 * @param preset name of a preset board
 * @param certain whether a word in the name told
 */
record BoardGuess(String preset, boolean certain) {
    private static final List<Map.Entry<String, String>> WORDS = List.of(
            Map.entry("esp ?\\d+\\w*|radio|wifi|wi-fi", "32-bit radio"),
            Map.entry("stm32f[47]\\w*|samd51\\w*|teensy.*|cortex-m[47]|120 ?mhz", "32-bit 120 MHz"),
            Map.entry("stm32\\w*|samd\\w*|rp2040|pico|zero|32-bit|32 bit|arm|cortex-m[03]|uno r4", "32-bit 48 MHz"),
            Map.entry("(at)?mega ?(1280|2560)\\w*|mega", "8-bit four UARTs"),
            Map.entry("(at)?mega ?(328|168)\\w*|32u4|uno|nano|mini|micro|avr|8-bit|8 bit", "8-bit one UART"));

    static BoardGuess of(String board) {
        String lower = board.toLowerCase(Locale.ROOT);
        for (Map.Entry<String, String> word : WORDS) {
            if (Pattern.compile("(?<!\\w)(?:" + word.getKey() + ")(?!\\w)")
                    .matcher(lower)
                    .find()) {
                return new BoardGuess(word.getValue(), true);
            }
        }
        return new BoardGuess("8-bit one UART", false);
    }
}
