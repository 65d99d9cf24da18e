package dropline.scenarios.bench;

import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.bus.pit.Segment;
import dropline.bus.run.LaneRun;
import dropline.bus.trace.TraceSink;
import dropline.harness.firmware.FirmwareFile;
import dropline.harness.pitfile.PitFile;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.frames.DroplineFrame;
import dropline.protocol.frames.DroplineFrames;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How many times faster than a real board emulated ones run; beside simavr, where that is installed. */
final class FirmwareSpeed {
    private static final long HZ = 16_000_000;
    private static final long SECOND = 1_000_000_000L;
    private static final double BIT_NANOS = 4_000;
    private static final long STRETCH_NANOS = 10_000_000;
    private static final long POLL_NANOS = 2_000_000;
    private static final int RUNS = 3;

    private final Path images;
    private final PrintStream out;

    private FirmwareSpeed(Path images, PrintStream out) {
        this.images = images;
        this.out = out;
    }

    static void measure(Path home, PrintStream out) throws IOException, InterruptedException {
        new FirmwareSpeed(home.resolve("scenarios/firmware/images"), out).run();
    }

    private Microcontroller chip(String name) throws IOException {
        return image(name).on(Chip.ATMEGA328P, HZ, 0);
    }

    private Image image(String name) throws IOException {
        FirmwareFile.Result result = FirmwareFile.read(images.resolve(name), Chip.ATMEGA328P);
        if (result instanceof FirmwareFile.Understood understood) {
            return understood.image();
        }
        throw new IllegalStateException("the image must be right: " + result);
    }

    private void run() throws IOException, InterruptedException {
        for (int i = 0; i < RUNS; i++) {
            long cycles = tight();
            witness(cycles);
            tell("one lamp board, polled every 2 ms", ordinary(60 * SECOND));
            tell("a segment of 4 lamp boards, one asked about every 2 ms", segment(4, 20 * SECOND));
            tell("a segment of 32 lamp boards, one asked about every 2 ms", segment(32, 5 * SECOND));
        }
    }

    private void tell(String what, double times) {
        out.printf(Locale.ROOT, "%s: %.1f times real time%n", what, times);
    }

    /** Checks, until the program goes to sleep; the answer is how many cycles that were. */
    private long tight() throws IOException {
        Microcontroller chip = chip("crc.hex");
        long[] ended = new long[1];
        chip.port('B').watch((levels, changed, cycle) -> ended[0] = cycle);
        chip.reset(Microcontroller.POWER_ON);
        long begun = System.nanoTime();
        while (ended[0] == 0) {
            chip.cpu().run(chip.cpu().cycles() + HZ);
        }
        long took = System.nanoTime() - begun;
        tell("a check over 64 bytes again and again", (double) ended[0] / HZ * SECOND / took);
        return ended[0];
    }

    /** One board and whoever polls it. */
    private double ordinary(long simulatedNanos) throws IOException {
        Counterpart board = new Counterpart(
                chip("lamps.hex"),
                0,
                new Pin('D', 2),
                BIT_NANOS,
                CharacterFormat.EIGHT_N_ONE,
                (value, good, end) -> {});
        Bytes poll = DroplineFrames.encode(new DroplineFrame.Poll(7, 0, List.of()));
        long begun = System.nanoTime();
        for (long at = POLL_NANOS; at < simulatedNanos; at += POLL_NANOS) {
            board.advanceTo(at);
            board.say(poll, at);
        }
        return (double) simulatedNanos / (System.nanoTime() - begun);
    }

    /** A segment of nothing but emulated boards, each asked in turn, about one every 2 ms. */
    private double segment(int count, long simulatedNanos) throws IOException {
        LaneRun run = new LaneRun(pit(count), 0, 1, List.of(), segment -> new TraceSink() {});
        StateBlock nothing = new StateBlock();
        long begun = System.nanoTime();
        for (long at = STRETCH_NANOS; at <= simulatedNanos; at += STRETCH_NANOS) {
            run.offer(nothing);
            run.advanceTo(at);
        }
        return (double) simulatedNanos / (System.nanoTime() - begun);
    }

    private Pit pit(int count) throws IOException {
        StringBuilder text = new StringBuilder("""
                pit: Emulated boards
                hubs:
                  one: {kind: board, adapter: none}
                signals:
                  l0: {unit: on/off, range: 0..1, number: 0}
                segments:
                  s:
                    baud: 250000 baud
                    controller: {hub: one, time-out: 10 ms, gap: 1 ms}
                panels: {}
                nodes:
                """);
        for (int address = 1; address <= count; address++) {
            text.append("  board").append(address).append(": {segment: s, profile: 8-bit loop, address: ");
            text.append(address).append("}\n");
        }
        if (!(PitFile.parse("pit.yaml", text.toString()) instanceof PitFile.Understood understood)) {
            throw new IllegalStateException("the pit must be right: " + PitFile.parse("pit.yaml", text.toString()));
        }
        Segment segment = understood.pit().segments().get(0);
        List<Node> nodes = new ArrayList<>();
        for (Node node : segment.nodes()) {
            nodes.add(new Node(
                    node.name(),
                    node.address(),
                    node.weight(),
                    node.profile(),
                    node.panels(),
                    node.registers(),
                    node.fitting(),
                    program(node.address())));
        }
        return understood.pit().with(0, segment.with(nodes, segment.cable()));
    }

    /** The lamp board with another address: the only instruction in which two of its images differ loads it. */
    private Program program(int address) throws IOException {
        Image seven = image("lamps-at-7.hex");
        int[] bytes = bytes(seven);
        int[] eight = bytes(image("lamps-at-8.hex"));
        int differs = 0;
        while (bytes[differs] == eight[differs]) {
            differs++;
        }
        // LDI Rd, K: 1110 KKKK dddd KKKK
        bytes[differs] = bytes[differs] & 0xF0 | address & 0x0F;
        bytes[differs + 1] = bytes[differs + 1] & 0xF0 | address >> 4;
        Image.Stretch whole = new Image.Stretch(0, Bytes.of(bytes));
        return new Program(
                new Image("board " + address, List.of(whole), List.of(), List.of(), 0),
                Chip.ATMEGA328P,
                HZ,
                0,
                new Pin('D', 2),
                List.of(),
                List.of(),
                Program.NONE);
    }

    private static int[] bytes(Image image) {
        int[] bytes = new int
                [image.program().stream().mapToInt(Image.Stretch::end).max().orElse(0)];
        for (Image.Stretch stretch : image.program()) {
            for (int i = 0; i < stretch.bytes().length(); i++) {
                bytes[stretch.address() + i] = stretch.bytes().at(i);
            }
        }
        return bytes;
    }

    /** The same program in simavr with its defaults, which ends when a program sleeps for good. */
    private void witness(long cycles) throws IOException, InterruptedException {
        Path simavr = Path.of("/usr/bin/simavr");
        if (!Files.isExecutable(simavr)) {
            out.println("simavr is not installed: no comparison");
            return;
        }
        long begun = System.nanoTime();
        Process process = new ProcessBuilder(
                        simavr.toString(),
                        "-m",
                        "atmega328p",
                        "-f",
                        "16000000",
                        images.resolve("crc.hex").toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        int unused = process.waitFor();
        tell("the same in simavr, with its start", (double) cycles / HZ * SECOND / (System.nanoTime() - begun));
    }
}
