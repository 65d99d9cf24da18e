package dropline.scenarios.bench;

import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.harness.firmware.FirmwareFile;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.frames.DroplineFrame;
import dropline.protocol.frames.DroplineFrames;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How many times faster than a real board emulated ones run; beside simavr, where that is installed. */
final class FirmwareSpeed {
    private static final long HZ = 16_000_000;
    private static final long SECOND = 1_000_000_000L;
    private static final double BIT_NANOS = 4_000;
    private static final long CHARACTER_NANOS = 40_000;
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
        FirmwareFile.Result result = FirmwareFile.read(images.resolve(name), Chip.ATMEGA328P);
        if (result instanceof FirmwareFile.Understood understood) {
            Image image = understood.image();
            return image.on(Chip.ATMEGA328P, HZ, 0);
        }
        throw new IllegalStateException("the image must be right: " + result);
    }

    private void run() throws IOException, InterruptedException {
        for (int i = 0; i < RUNS; i++) {
            long cycles = tight();
            witness(cycles);
            tell("one lamp board, polled every 2 ms", ordinary(1, 60 * SECOND));
            tell("32 lamp boards in step, a character at a time, polled in turn every 2 ms", ordinary(32, 5 * SECOND));
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

    /** Boards at one pair: each hears the polls, and what the others say a character later. */
    private double ordinary(int count, long simulatedNanos) throws IOException {
        List<Counterpart> boards = new ArrayList<>();
        List<ArrayDeque<Integer>> said = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            ArrayDeque<Integer> own = new ArrayDeque<>();
            said.add(own);
            boards.add(new Counterpart(
                    chip("lamps.hex"),
                    0,
                    new Pin('D', 2),
                    BIT_NANOS,
                    CharacterFormat.EIGHT_N_ONE,
                    (value, good, end) -> own.add(value)));
        }
        Bytes[] polls = {poll(7), poll(8)};
        long begun = System.nanoTime();
        long next = POLL_NANOS;
        int turn = 0;
        for (long at = CHARACTER_NANOS; at < simulatedNanos; at += CHARACTER_NANOS) {
            for (Counterpart board : boards) {
                board.advanceTo(at);
            }
            for (int i = 0; i < count; i++) {
                for (Integer value = said.get(i).poll();
                        value != null;
                        value = said.get(i).poll()) {
                    for (int other = 0; other < count; other++) {
                        if (other != i) {
                            boards.get(other).say(Bytes.of(value), at);
                        }
                    }
                }
            }
            if (at >= next) {
                // all have the address 7: one in turn is asked for it, the others for an address that is nobody's
                for (int i = 0; i < count; i++) {
                    boards.get(i).say(polls[i == turn ? 0 : 1], at);
                }
                turn = (turn + 1) % count;
                next += POLL_NANOS;
            }
        }
        return (double) simulatedNanos / (System.nanoTime() - begun);
    }

    private static Bytes poll(int address) {
        return DroplineFrames.encode(new DroplineFrame.Poll(address, 0, List.of()));
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
