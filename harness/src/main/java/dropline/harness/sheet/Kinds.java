package dropline.harness.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The words by which builders call indicators and controls in a spreadsheet, and the pit file's word for each. Longer
 * ones stand before shorter ones that they contain.
 */
final class Kinds {
    static final Kinds INDICATORS = new Kinds(List.of(
            Map.entry("filament lamp", "filament lamp|filament|incandescent|light bulb|bulb"),
            Map.entry("LED bar", "led bar|bar graph|bargraph|bar display"),
            Map.entry("backlight zone", "backlight zone|backlighting|backlight|back light|panel lighting|dimmer"),
            Map.entry("drum counter", "drum counter|drum|odometer|rolling digits"),
            Map.entry("gauge stepper", "gauge stepper|stepper gauge|gauge|needle|pointer|dial|meter"),
            Map.entry("stepper", "geared stepper|nema stepper|stepper motor|stepper|nema"),
            Map.entry("servo", "servo"),
            Map.entry("flag", "flag|barber pole"),
            Map.entry(
                    "digits",
                    "7-segment display|7 segment display|7-segment|7 segment|7-seg|seven segment|seven-segment|digits|"
                            + "digit display|numeric display|readout|led display"),
            Map.entry("VFD", "vfd|vacuum fluorescent"),
            Map.entry("OLED", "oled"),
            Map.entry("character LCD", "character lcd|lcd display|lcd|text display"),
            Map.entry("lamp", "annunciator|warning light|warning lamp|lamp|led|light")));

    static final Kinds CONTROLS = new Kinds(List.of(
            Map.entry(
                    "three-way toggle",
                    "three-way toggle|three-way switch|3-way toggle|3-way switch|3 position switch|"
                            + "3-position switch|on-off-on|3-way|three-way"),
            Map.entry(
                    "held toggle",
                    "held toggle|momentary toggle|momentary switch|spring-loaded switch|spring loaded switch"),
            Map.entry("key matrix", "key matrix|keypad|keyboard|matrix"),
            Map.entry("selector", "rotary switch|selector switch|selector"),
            Map.entry("encoder", "rotary encoder|encoder|knob"),
            Map.entry("button", "push-button|pushbutton|button|key"),
            Map.entry("lever", "lever|handle"),
            Map.entry("axis", "potentiometer|pot|axis|axes|slider|throttle"),
            Map.entry("toggle", "toggle switch|toggle|switch")));

    private final List<Map.Entry<String, String>> words;

    private Kinds(List<Map.Entry<String, String>> words) {
        this.words = List.copyOf(words);
    }

    /** A text taken apart: the kind that a word in it names, and the rest. */
    Optional<Part> in(String text) {
        String lower = " " + text.toLowerCase(Locale.ROOT) + " ";
        for (Map.Entry<String, String> kind : words) {
            for (String word : kind.getValue().split("\\|", -1)) {
                Matcher found = Pattern.compile(" (" + Pattern.quote(word) + "(?:e?s)?) ")
                        .matcher(lower);
                if (found.find()) {
                    int at = found.start();
                    int end = Math.min(text.length(), at + found.group(1).length());
                    String rest = text.substring(0, Math.min(at, text.length())) + " " + text.substring(end);
                    return Optional.of(new Part(rest.strip().replaceAll("\\s+", " "), kind.getKey()));
                }
            }
        }
        return Optional.empty();
    }

    /** Its kinds as the pit file spells them. */
    List<String> names() {
        return words.stream().map(Map.Entry::getKey).toList();
    }
}
