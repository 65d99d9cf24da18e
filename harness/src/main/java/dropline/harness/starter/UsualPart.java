package dropline.harness.starter;

import java.util.Arrays;

/** The preset that stands in for a kind of part as long as nobody has said which part it is. */
enum UsualPart {
    LAMP("lamp", "LED lamp"),
    FILAMENT_LAMP("filament lamp", "12 V filament lamp"),
    LED_BAR("LED bar", "LED bar of 10"),
    FLAG("flag", "small flag"),
    DIGITS("digits", "7-segment driver"),
    CHARACTER_LCD("character LCD", "2x16 LCD on I2C"),
    VFD("VFD", "2x20 VFD"),
    OLED("OLED", "OLED on I2C at 400 kHz"),
    DRUM_COUNTER("drum counter", "drum counter"),
    GAUGE_STEPPER("gauge stepper", "small gauge stepper"),
    STEPPER("stepper", "geared 5 V stepper"),
    SERVO("servo", "hobby servo"),
    BACKLIGHT_ZONE("backlight zone", "dimmed backlight"),
    TOGGLE("toggle", "toggle switch"),
    THREE_WAY_TOGGLE("three-way toggle", "three-way switch"),
    HELD_TOGGLE("held toggle", "held switch"),
    BUTTON("button", "push button"),
    ENCODER("encoder", "detented encoder"),
    SELECTOR("selector", "rotary selector"),
    KEY_MATRIX("key matrix", "scanned key matrix"),
    AXIS("axis", "potentiometer"),
    LEVER("lever", "detented lever");

    private final String kind;
    private final String preset;

    UsualPart(String kind, String preset) {
        this.kind = kind;
        this.preset = preset;
    }

    /** The name of the preset for a kind. */
    static String presetFor(String kind) {
        return Arrays.stream(values())
                .filter(part -> part.kind.equals(kind))
                .map(part -> part.preset)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("a kind must have a usual part: kind=" + kind));
    }
}
