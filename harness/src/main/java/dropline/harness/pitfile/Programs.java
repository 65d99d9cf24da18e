package dropline.harness.pitfile;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.device.Device;
import dropline.bus.node.EmulatedNode;
import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Program;
import dropline.bus.pit.Program.Attached;
import dropline.bus.pit.Program.Lead;
import dropline.bus.pit.Program.Place;
import dropline.bus.pit.Segment;
import dropline.harness.firmware.FirmwareFile;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The programs that nodes' boards run: whether they can be run, and what is told of them. */
final class Programs {
    /** In place of what hangs on an output. */
    private static final String NONE = "none";

    private final Parts parts;
    private final Report report;

    Programs(Parts parts, Report report) {
        this.parts = parts;
        this.report = report;
    }

    /** Checks what is written, before there is a pit. */
    void check() {
        for (Block node : parts.root().blocks(NodeKeys.NODES)) {
            node.block(ProgramKeys.FIRMWARE).ifPresent(firmware -> written(node, firmware));
        }
    }

    private void written(Block node, Block firmware) {
        if (!firmware.has(ProgramKeys.IMAGE)) {
            withoutImage(firmware);
            return;
        }
        Optional<Chip> chip = firmware.written(ProgramKeys.CHIP);
        if (chip.isEmpty()) {
            if (!firmware.has(ProgramKeys.CHIP)) {
                String fix = "write chip: atmega328p if that is what it was built for";
                report.at(
                        firmware.nameAt(),
                        "chip",
                        PitCode.MISSING_KEY,
                        ProgramKeys.CHIP.type().words(),
                        fix);
            }
            return;
        }
        firmware.written(ProgramKeys.IMAGE).ifPresent(raw -> {
            if (FirmwareFile.decode(raw, chip.get()) instanceof FirmwareFile.Wrong wrong) {
                wrong.problems().forEach(report::add);
            }
        });
        firmware.written(ProgramKeys.USART).ifPresent(usart -> {
            if (Arrays.stream(chip.get().usarts()).noneMatch(one -> one == usart)) {
                String expected = "a USART of the " + chip.get().word() + ": "
                        + Report.oneOf(Arrays.stream(chip.get().usarts())
                                .mapToObj(Integer::toString)
                                .toList());
                report.at(firmware.at(ProgramKeys.USART), "usart", PitCode.OUT_OF_RANGE, expected, null);
            }
        });
        firmware.written(ProgramKeys.DRIVER_ENABLE)
                .ifPresent(pin -> onChip(firmware, ProgramKeys.DRIVER_ENABLE, List.of(pin), chip.get()));
        for (Block lead : firmware.blocks(ProgramKeys.PINS)) {
            lead.written(ProgramKeys.PINS_AT).ifPresent(pins -> onChip(lead, ProgramKeys.PINS_AT, pins, chip.get()));
            if (!lead.has(ProgramKeys.PINS_AT)) {
                String words = ProgramKeys.PINS_AT.type().words();
                report.at(lead.nameAt(), "at", PitCode.MISSING_KEY, words, "write at: PD5");
            }
            part(node, lead.nameAt(), "pins");
        }
        for (Block device : firmware.blocks(ProgramKeys.DEVICES)) {
            device(node, device, chip.get());
        }
    }

    private void device(Block node, Block device, Chip chip) {
        for (Tree.Scalar shown : device.written(ProgramKeys.DEVICE_SHOWS).orElse(List.of())) {
            if (!shown.text().equals(NONE)) {
                part(node, shown, "shows");
            }
        }
        List<Pin> pins = device.written(ProgramKeys.DEVICE_PINS).orElse(List.of());
        onChip(device, ProgramKeys.DEVICE_PINS, pins, chip);
        Optional<Device.Kind> kind = device.written(ProgramKeys.DEVICE);
        boolean isUnread = device.has(ProgramKeys.DEVICE_PINS) && pins.isEmpty();
        if (kind.isPresent() && pins.size() != kind.get().pins() && !isUnread) {
            String expected = kind.get().pins() == 0
                    ? "no pins: it is on the two-wire bus"
                    : kind.get().pins() + " pins: " + ProgramKeys.DEVICE.doc();
            report.at(device.at(ProgramKeys.DEVICE_PINS), "at", PitCode.CONFLICT, expected, null);
        }
        if (kind.isPresent() && kind.get().usualAddress() == 0 && device.has(ProgramKeys.ADDRESS)) {
            String expected = "address: only for what is on the two-wire bus";
            report.at(device.at(ProgramKeys.ADDRESS), "address", PitCode.UNUSED_KEY, expected, "delete it");
        }
    }

    private void withoutImage(Block firmware) {
        for (Key<?> key : firmware.section().keys()) {
            if (firmware.has(key) && !key.equals(ProgramKeys.NAME)) {
                String expected = "image: beside it, since only a program that is run has a " + key.name();
                report.at(firmware.at(key), key.name(), PitCode.UNUSED_KEY, expected, "give the image, or delete it");
            }
        }
    }

    private void onChip(Block block, Key<?> key, List<Pin> pins, Chip chip) {
        for (Pin pin : pins) {
            if (chip.ports().indexOf(pin.port()) < 0) {
                String expected = "a pin of the " + chip.word() + ", whose ports are " + chip.ports();
                report.at(block.at(key), key.name(), PitCode.OUT_OF_RANGE, expected, null);
            }
        }
    }

    /** The parts of a node's panels by the names that pins may have. */
    private Map<String, List<Place>> named(Block node) {
        Map<String, List<Place>> named = new LinkedHashMap<>();
        for (Block panel : parts.panelsOn(node)) {
            List<Block> all = new ArrayList<>(panel.blocks(PanelKeys.INDICATORS));
            all.addAll(panel.blocks(PanelKeys.CONTROLS));
            for (Block part : all) {
                Place place = new Place(panel.name(), part.name());
                named.computeIfAbsent(part.name(), n -> new ArrayList<>()).add(place);
                named.computeIfAbsent(words(place), n -> new ArrayList<>()).add(place);
            }
        }
        return named;
    }

    private static String words(Place place) {
        return place.panel() + "/" + place.part();
    }

    private void part(Block node, Tree.Scalar name, String key) {
        Map<String, List<Place>> named = named(node);
        List<Place> found = named.getOrDefault(name.text(), List.of());
        if (found.isEmpty()) {
            String what = "an indicator or control on " + node.name();
            report.unknownName(name, key, what, named.keySet());
        } else if (found.size() > 1) {
            String expected = "one part: " + words(found.get(0)) + " or " + words(found.get(1));
            report.at(name, key, PitCode.DUPLICATE_NAME, expected, "write the panel's name before it");
        }
    }

    /** The program of a node whose file has no problems; null for one that is modelled. */
    @Nullable
    Program program(Block node) {
        Block firmware = node.blockOrEmpty(ProgramKeys.FIRMWARE);
        Optional<FirmwareFile.Raw> raw = firmware.written(ProgramKeys.IMAGE);
        if (raw.isEmpty()) {
            return null;
        }
        Chip chip = firmware.value(ProgramKeys.CHIP);
        return new Program(
                image(raw.get(), chip),
                chip,
                firmware.value(ProgramKeys.CLOCK),
                firmware.get(ProgramKeys.USART).orElse(chip.usarts()[0]),
                firmware.get(ProgramKeys.DRIVER_ENABLE).orElse(null),
                firmware.blocks(ProgramKeys.PINS).stream()
                        .map(lead -> lead(node, lead))
                        .toList(),
                firmware.blocks(ProgramKeys.DEVICES).stream()
                        .map(device -> attached(node, device))
                        .toList(),
                firmware.get(ProgramKeys.APPLIED).orElse(Program.NONE));
    }

    private static Image image(FirmwareFile.Raw raw, Chip chip) {
        if (FirmwareFile.decode(raw, chip) instanceof FirmwareFile.Understood understood) {
            return understood.image();
        }
        throw new AssertionError("an image must have been checked: " + raw.name());
    }

    private Lead lead(Block node, Block lead) {
        Place place = named(node).getOrDefault(lead.name(), List.of()).stream()
                .findFirst()
                .orElseThrow();
        boolean isControl = parts.panelsOn(node).stream()
                .filter(panel -> panel.name().equals(place.panel()))
                .flatMap(panel -> panel.blocks(PanelKeys.CONTROLS).stream())
                .anyMatch(control -> control.name().equals(place.part()));
        return new Lead(
                place.panel(),
                place.part(),
                lead.value(ProgramKeys.PINS_AT),
                lead.get(ProgramKeys.LOW).orElse(isControl));
    }

    private Place place(Block node, String name) {
        return named(node).getOrDefault(name, List.of()).stream().findFirst().orElse(Attached.NOTHING);
    }

    private Attached attached(Block node, Block device) {
        Device.Kind kind = device.value(ProgramKeys.DEVICE);
        return new Attached(
                kind,
                device.get(ProgramKeys.ADDRESS).orElse(kind.usualAddress()),
                device.get(ProgramKeys.DEVICE_PINS).orElse(List.of()),
                device.value(ProgramKeys.DEVICE_SHOWS).stream()
                        .map(name -> place(node, name.text()))
                        .toList(),
                device.get(ProgramKeys.LOW).orElse(kind == Device.Kind.PORT_EXPANDER));
    }

    /** Checks whether a node's panels can be seen and moved at its pins. */
    void check(Segment segment, Node node, Block written) {
        Program program = node.program();
        if (program == null) {
            return;
        }
        Block firmware = written.blockOrEmpty(ProgramKeys.FIRMWARE);
        if (segment.protocol() instanceof Sized) {
            String expected = "a protocol whose bytes are known, since a program is run that must understand them";
            report.at(firmware.at(ProgramKeys.IMAGE), "image", PitCode.CONFLICT, expected, "leave the image out");
        }
        for (Panel panel : node.panels()) {
            for (Indicator indicator : panel.indicators()) {
                indicator(firmware, program, panel, indicator);
            }
            for (Control control : panel.controls()) {
                control(firmware, program, panel, control);
            }
        }
    }

    private void indicator(Block firmware, Program program, Panel panel, Indicator indicator) {
        Lead lead = program.lead(panel.name(), indicator.name());
        int[] pins = EmulatedNode.pins(indicator.kind());
        String what = panel.name() + "/" + indicator.name();
        if (program.isOnDevice(panel.name(), indicator.name())) {
            if (lead != null) {
                String expected = "pins, or a device, that shows " + what + ", not both";
                report.at(at(firmware, lead), "pins", PitCode.CONFLICT, expected, "delete one of the two");
            }
        } else if (lead == null && program.appliedRegister() == Program.NONE) {
            String expected = pins[1] > 0
                    ? "the pins of " + what + ", a device that shows it, or applied:, by which its value is seen"
                    : "a device that shows " + what + ", or applied:, by which its value is seen";
            String fix = "write " + (pins[1] > 0 ? "pins: {" + indicator.name() + ": PD5}" : "applied: gpior0");
            report.at(firmware.nameAt(), "firmware", PitCode.MISSING_KEY, expected, fix);
        } else if (lead != null && (lead.pins().size() < pins[0] || lead.pins().size() > pins[1])) {
            String expected = pins[1] == 0
                    ? "no pins for " + what + ": of its kind the pins do not say what it shows"
                    : pins[0] == pins[1] ? "one pin for " + what : pins[0] + " to " + pins[1] + " pins for " + what;
            report.at(at(firmware, lead), "pins", PitCode.CONFLICT, expected, pins[1] == 0 ? "use applied:" : null);
        } else if (lead != null && indicator.signals().size() > 1) {
            String expected = "one signal on " + what + ", which one pin shows";
            report.at(at(firmware, lead), "pins", PitCode.CONFLICT, expected, "use applied: for it");
        }
    }

    private void control(Block firmware, Program program, Panel panel, Control control) {
        Lead lead = program.lead(panel.name(), control.name());
        int pins = EmulatedNode.pins(control);
        String what = panel.name() + "/" + control.name();
        if (pins == 0) {
            String expected = "no key matrix on a board whose program is run: hands on one are not modelled";
            report.at(firmware.nameAt(), "firmware", PitCode.CONFLICT, expected, "leave the image out");
        } else if (lead == null) {
            String fix = "write pins: {" + control.name() + ": PD5}";
            report.at(firmware.nameAt(), "pins", PitCode.MISSING_KEY, "the pins of " + what, fix);
        } else if (isWrong(control, lead, pins)) {
            String expected = (pins == 1 ? "one pin" : pins + " pins") + " for " + what;
            report.at(at(firmware, lead), "pins", PitCode.CONFLICT, expected, null);
        } else if (!control.kind().isContact() && !control.kind().counts()) {
            Pin pin = lead.pins().get(0);
            if (program.chip().analogChannel(pin.port(), pin.bit()) < 0) {
                String expected = "an analog pin of the " + program.chip().word() + " for " + what;
                report.at(at(firmware, lead), "pins", PitCode.CONFLICT, expected, null);
            }
        }
    }

    /** A toggle that is held may have one side only. */
    private static boolean isWrong(Control control, Lead lead, int pins) {
        int given = lead.pins().size();
        return given != pins && !(control.kind() == Control.Kind.HELD_TOGGLE && given == 1);
    }

    private static Tree at(Block firmware, Lead lead) {
        for (Block block : firmware.blocks(ProgramKeys.PINS)) {
            if (block.name().equals(lead.part()) || block.name().equals(lead.panel() + "/" + lead.part())) {
                return block.at(ProgramKeys.PINS_AT);
            }
        }
        return firmware.nameAt();
    }
}
