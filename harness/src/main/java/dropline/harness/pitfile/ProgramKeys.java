package dropline.harness.pitfile;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.device.Device;
import dropline.harness.firmware.FirmwareFile;
import dropline.harness.pitfile.Words.Choices;
import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The keys of the program that a node's board runs. */
final class ProgramKeys {
    static final Key<String> NAME =
            Key.optional("name", Words.text("text"), "what runs on it, for its card: a name, a version");
    static final Key<FirmwareFile.Raw> IMAGE = Key.optional(
            "image",
            new ImageAt(),
            "the file that is flashed, Intel HEX or ELF: it is run instruction by instruction in place of what the"
                    + " profile says; without it the node is modelled");
    static final Key<Chip> CHIP = Key.optional(
            "chip", Words.choice(chips()), "the chip that the image was built for; must be known where there is one");
    static final Key<Long> CLOCK = Key.standard(
            "clock", Numbers.measure(Measure.frequency(), 1_000_000, 20_000_000), "16 MHz", "the chip's clock");
    static final Key<Pin> DRIVER_ENABLE = Key.optional(
            "driver-enable",
            new PinAt(),
            "the pin that turns the transceiver's driver on, high; the transceiver does it by itself where left out");
    static final Key<Integer> USART =
            Key.optional("usart", Numbers.whole(0, 3), "the USART that leads to the pair; the chip's first one else");
    static final Key<Integer> APPLIED = Key.optional(
            "applied",
            Words.choice(
                    new Choices<Integer>().with("gpior0", 0).with("gpior1", 1).with("gpior2", 2)),
            "the general-purpose register to which the program writes the sequence number of a frame when it has put"
                    + " what that carried on its indicators: for those without pins");

    static final Key<List<Pin>> PINS_AT = Key.optional(
            "at",
            new PinsAt(),
            "the pin, or several, PD2 PD3: an encoder's two contacts, a selector's positions, a motor's phases");
    static final Key<Boolean> LOW = Key.optional(
            "active",
            Words.choice(new Choices<Boolean>().with("high", false).with("low", true)),
            "the level that means lit, or closed; high for indicators and low for controls where left out");
    static final Section PINS = Section.named(
                    "pins",
                    "what hangs on the chip's pins, by the name of an indicator or control of the node's panels, or by"
                            + " PANEL/NAME",
                    List.of(PINS_AT, LOW))
            .orJust(PINS_AT);

    static final Key<Device.Kind> DEVICE = Key.required(
            "kind",
            Words.choice(new Choices<Device.Kind>()
                    .with("OLED", Device.Kind.OLED)
                    .with("character LCD", Device.Kind.CHARACTER_LCD)
                    .with("character LCD by expander", Device.Kind.CHARACTER_LCD_EXPANDER)
                    .with("port expander", Device.Kind.PORT_EXPANDER)
                    .with("digit driver", Device.Kind.DIGIT_DRIVER)
                    .with("addressable LEDs", Device.Kind.ADDRESSABLE_LEDS)),
            "what it is: an SSD1306 at the two-wire bus; an HD44780 at six pins (register, enable, D4 to D7), or behind"
                    + " a PCF8574 at the two-wire bus; a PCF8574 with eight outputs; a MAX7219 at three pins (data,"
                    + " clock, load) or at the SPI; WS2812B at one pin");
    static final Key<Integer> ADDRESS = Key.optional(
            "address",
            new BusAddress(),
            "its address on the two-wire bus, without the read bit; that of most of its sort where left out");
    static final Key<List<Pin>> DEVICE_PINS =
            Key.optional("at", new PinsAt(), "its pins, in the order that its kind names them");
    static final Key<List<Tree.Scalar>> DEVICE_SHOWS = Key.required(
            "shows",
            Words.names("the name of an indicator of the node's panels, or a list of them"),
            "what it shows: an indicator is shown when what the device shows becomes another for the first time after"
                    + " its frame; of a port expander the lamp at each output in turn, none for an output without one");
    static final Section DEVICES = Section.named(
            "devices",
            "displays and drivers that the program talks to, by name: without them it waits for an answer that does"
                    + " not come",
            List.of(DEVICE, ADDRESS, DEVICE_PINS, DEVICE_SHOWS, LOW));

    static final Section FIRMWARE = Section.one(
                    "firmware",
                    "what runs on it: text for its card, or its keys, with the image that is flashed",
                    List.of(NAME, IMAGE, CHIP, CLOCK, DRIVER_ENABLE, USART, APPLIED),
                    PINS,
                    DEVICES)
            .orJust(NAME);

    private ProgramKeys() {}

    private static Choices<Chip> chips() {
        Choices<Chip> choices = new Choices<>();
        for (Chip chip : Chip.values()) {
            choices = choices.with(chip.word(), chip);
        }
        return choices;
    }

    /** The path of a file that is flashed, which is read; it counts from the folder of the file it is written in. */
    private static final class ImageAt extends Type.OfText<FirmwareFile.Raw> {
        ImageAt() {
            super("the path of an Intel HEX or ELF file, counted from the folder of this file");
        }

        @Override
        Optional<FirmwareFile.Raw> readText(Tree.Scalar text, String key, Report report) {
            try {
                Path path = Path.of(text.place().file())
                        .resolveSibling(text.text().replace('\\', '/'))
                        .normalize();
                return Optional.of(FirmwareFile.raw(path));
            } catch (InvalidPathException | IOException e) {
                report.at(text, key, PitCode.NO_SUCH_FILE, words(), "check the path");
                return Optional.empty();
            }
        }
    }

    /** A pin by its port and bit. */
    private static final class PinAt extends Type.OfText<Pin> {
        PinAt() {
            super("a pin, as in PD2");
        }

        @Override
        public Form form() {
            return new Form.Pattern("[Pp][A-La-l][0-7]");
        }

        @Override
        Optional<Pin> readText(Tree.Scalar text, String key, Report report) {
            Optional<Pin> pin = Pin.named(text.text());
            if (pin.isEmpty()) {
                report.at(text, key, PitCode.WRONG_TYPE, words(), "write its port and its bit: PD2");
            }
            return pin;
        }
    }

    /** An address of seven bits, those that are reserved left out. */
    private static final class BusAddress extends Type.OfText<Integer> {
        private static final int LEAST = 0x08;
        private static final int MOST = 0x77;

        BusAddress() {
            super("an address of 0x08..0x77");
        }

        @Override
        public Form form() {
            return new Form.Any(List.of(new Form.Pattern("0[xX][0-7][0-9a-fA-F]"), new Form.Whole(LEAST, MOST)));
        }

        @Override
        Optional<Integer> readText(Tree.Scalar text, String key, Report report) {
            try {
                int address = Integer.decode(text.text().strip());
                if (address >= LEAST && address <= MOST) {
                    return Optional.of(address);
                }
                report.at(text, key, PitCode.OUT_OF_RANGE, words(), "leave the read bit out: 0x3C, not 0x78");
            } catch (NumberFormatException e) {
                report.at(text, key, PitCode.WRONG_TYPE, words(), "write it as in 0x3C");
            }
            return Optional.empty();
        }
    }

    /** Pins, one after the other. */
    private static final class PinsAt extends Type.OfText<List<Pin>> {
        PinsAt() {
            super("a pin, as in PD2, or several: PD2 PD3");
        }

        @Override
        public Form form() {
            return new Form.Pattern("[Pp][A-La-l][0-7](\\s+[Pp][A-La-l][0-7])*");
        }

        @Override
        Optional<List<Pin>> readText(Tree.Scalar text, String key, Report report) {
            List<Pin> pins = new ArrayList<>();
            for (String name : text.text().strip().split("\\s+")) {
                Optional<Pin> pin = Pin.named(name);
                if (pin.isEmpty()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), "write port and bit of each: PD2 PD3");
                    return Optional.empty();
                }
                pins.add(pin.get());
            }
            return Optional.of(pins);
        }
    }
}
