package dropline.scenarios.firmware;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.bus.pit.Segment;
import dropline.harness.bench.BenchResult;
import dropline.harness.bench.Examination;
import dropline.harness.bench.Inside;
import dropline.harness.bench.Subject;
import dropline.harness.bench.Thoroughness;
import dropline.harness.firmware.FirmwareFile;
import dropline.harness.link.BoardLink;
import dropline.harness.pitfile.PitFile;
import dropline.harness.verdict.Outcome;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;

/** The programs beside this module's scenarios, and boards that run them. */
final class Programs {
    static final Path FOLDER = Path.of("firmware");
    static final long HZ = 16_000_000;
    private static final Pin DRIVER_ENABLE = new Pin('D', 2);

    private Programs() {}

    static Image image(Chip chip, Path file) throws IOException {
        FirmwareFile.Result result = FirmwareFile.read(file, chip);
        if (result instanceof FirmwareFile.Understood understood) {
            return understood.image();
        }
        throw new AssertionError(result);
    }

    static Image image(Chip chip, String name) throws IOException {
        return image(chip, FOLDER.resolve("images").resolve(name));
    }

    /** A pit with nothing but one lamp board of address 7, which speaks Dropline frames. */
    static Subject lamps(int baud) {
        return board(baud, "8N1", "dropline", "broadcast");
    }

    /** One that speaks Modbus RTU, at its usual rate and format. */
    static Subject registers() {
        return board(19_200, "8E1", "modbus-rtu", "addressed");
    }

    /** One that speaks lines of text, by their description beside the other worked layouts. */
    static Subject lines() {
        Path layout = Path.of("layouts/lines.yaml").toAbsolutePath();
        return board(250_000, "8N1", "custom\n    layout: '" + layout.toString().replace("'", "''") + "'", "broadcast");
    }

    private static Subject board(int baud, String format, String protocol, String state) {
        String text = """
                pit: A board on the bench
                host: {state-rate: as recorded}
                hubs:
                  bench: {kind: board, adapter: none}
                budgets: {update: 150 ms, control: 150 ms, source: not asked for on a bench}
                signals:
                  value: {unit: on/off, range: 0..1, number: 1}
                segments:
                  bench:
                    baud: %d baud
                    format: %s
                    protocol: %s
                    controller: {hub: bench, state: %s, time-out: 50 ms, gap: 4 ms}
                nodes:
                  board: {segment: bench, address: 7, profile: 8-bit loop}
                panels:
                  panel:
                    node: board
                    indicators:
                      lamp: {kind: lamp, shows: value}
                """.formatted(baud, format, protocol, state);
        if (PitFile.parse("board", text) instanceof PitFile.Understood understood) {
            return new Subject(understood.pit(), 0, 0);
        }
        throw new AssertionError(PitFile.parse("board", text));
    }

    static BoardLink link(Subject subject, Image image) {
        var on = subject.pit().segments().get(0);
        return new BoardLink(image.on(Chip.ATMEGA328P, HZ, 0), 0, DRIVER_ENABLE, on.baud(), on.format());
    }

    static BenchResult examined(String name, int baud) throws IOException {
        return examined(name, lamps(baud));
    }

    static BenchResult examined(String name, Subject subject) throws IOException {
        return examined(FOLDER.resolve("images").resolve(name), subject);
    }

    static BenchResult examined(Path file, Subject subject) throws IOException {
        Image image = image(Chip.ATMEGA328P, file);
        try (BoardLink link = link(subject, image)) {
            Inside inside = new Inside(link.counterpart(), image);
            return new Examination(subject, link, 0, Thoroughness.QUICK, null, inside).run(share -> {});
        }
    }

    /** A node of a pit, on the first segment, with the program that the pit names for it. */
    static BenchResult examined(Pit pit, String name) throws IOException {
        List<Node> nodes = pit.segments().get(0).nodes();
        int index = nodes.stream().map(Node::name).toList().indexOf(name);
        Program program = Objects.requireNonNull(nodes.get(index).program());
        Microcontroller chip = program.powered();
        program.devices().forEach(device -> device.tie(chip, (levels, cycle) -> {}));
        Segment on = pit.segments().get(0);
        try (BoardLink link = new BoardLink(chip, program.usart(), program.driverEnable(), on.baud(), on.format())) {
            Inside inside = new Inside(link.counterpart(), program.image());
            Subject subject = new Subject(pit, 0, index);
            return new Examination(subject, link, 0, Thoroughness.QUICK, null, inside).run(share -> {});
        }
    }

    static TreeSet<String> failed(BenchResult result) {
        List<String> names = result.items().stream()
                .filter(item -> item.outcome() == Outcome.FAIL)
                .map(item -> item.name())
                .toList();
        return new TreeSet<>(names);
    }
}
