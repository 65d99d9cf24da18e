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
            Map.entry("esp ?\\d|esp32|radio|wifi|wi-fi", "32-bit radio"),
            Map.entry("2560|1280|mega(?!\\d)", "8-bit four UARTs"),
            Map.entry("328|168|32u4|uno|nano|mini|micro|avr|atmega|8-bit|8 bit", "8-bit one UART"),
            Map.entry("stm32f4|f4\\d\\d|samd51|teensy|m4|m7|120 ?mhz", "32-bit 120 MHz"),
            Map.entry("stm32|samd|m0|m3|rp2040|pico|zero|32-bit|32 bit|arm", "32-bit 48 MHz"));

    static BoardGuess of(String board) {
        String lower = board.toLowerCase(Locale.ROOT);
        for (Map.Entry<String, String> word : WORDS) {
            if (Pattern.compile(word.getKey()).matcher(lower).find()) {
                return new BoardGuess(word.getValue(), true);
            }
        }
        return new BoardGuess("8-bit one UART", false);
    }
}
