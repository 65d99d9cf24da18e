package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.scenarios.peer.Peer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Debian's avrdude writes a program into an emulated board and reads it back, over a pseudo-terminal, by a boot loader
 * that nobody here wrote (arduino-core-avr).
 */
final class ProgrammerTest {
    private static final Path LOADER =
            Path.of("/usr/share/arduino/hardware/arduino/avr/bootloaders/atmega/ATmegaBOOT_168_atmega328.hex");
    private static final int BAUD = 57_600;
    private static final long MILLI = 1_000_000;
    private static final long START_NANOS = 100 * MILLI;
    private static final int PATIENCE_MILLIS = 20_000;

    /** A board whose serial line is what socat has on its standard streams. */
    private static final class Served {
        private final Process socat;
        private final Counterpart board;
        private final InputStream in;
        private final OutputStream out;
        private final AtomicBoolean isOver = new AtomicBoolean();
        private boolean isStarted;

        Served(Process socat) throws IOException {
            this.socat = socat;
            in = socat.getInputStream();
            out = socat.getOutputStream();
            Image loader = Programs.image(Chip.ATMEGA328P, LOADER);
            board = new Counterpart(
                    loader.on(Chip.ATMEGA328P, Programs.HZ, loader.beginsAt()),
                    0,
                    null,
                    1e9 / BAUD,
                    CharacterFormat.EIGHT_N_ONE,
                    (value, good, end) -> say(value));
        }

        private void say(int value) {
            try {
                out.write(value);
                out.flush();
            } catch (IOException gone) {
                throw new AssertionError(gone);
            }
        }

        /** A millisecond of the board for each that passes; opening a port would restart it, so the first byte does. */
        void serve() throws IOException, InterruptedException {
            while (!isOver.get() && !socat.waitFor(1, TimeUnit.MILLISECONDS)) {
                byte[] came = in.readNBytes(in.available());
                if (came.length > 0 && !isStarted) {
                    isStarted = true;
                    board.board().restart(board.board().reachedNanos());
                    board.advanceTo(board.board().reachedNanos() + START_NANOS);
                }
                if (came.length > 0) {
                    board.say(Bytes.copyOf(came, 0, came.length), board.board().reachedNanos());
                    // what was said takes its time on the line, and what is said next follows it
                    board.advanceTo(board.board().reachedNanos() + came.length * 10L * (long) (1e9 / BAUD));
                }
                if (isStarted) {
                    board.advanceTo(board.board().reachedNanos() + MILLI);
                }
            }
        }
    }

    @Test
    void aProgramIsWrittenAndReadBack(@TempDir Path folder) throws Exception {
        new Peer("avrdude").mustBeHere();
        new Peer("socat").mustBeHere();
        if (!Files.exists(LOADER)) {
            if ("required".equals(System.getProperty("dropline.peers"))) {
                fail("arduino-core-avr is not installed");
            }
            abort("arduino-core-avr is not installed, so no boot loader runs here");
        }
        Path port = folder.resolve("port");
        Process socat = new ProcessBuilder("socat", "pty,raw,echo=0,link=" + port, "stdio")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        ExecutorService aside = Executors.newSingleThreadExecutor();
        try {
            Served served = new Served(socat);
            for (int i = 0; i < PATIENCE_MILLIS && !Files.exists(port, LinkOption.NOFOLLOW_LINKS); i++) {
                socat.waitFor(1, TimeUnit.MILLISECONDS);
            }
            Future<?> serving = aside.submit(() -> {
                served.serve();
                return 0;
            });
            Path program = Programs.FOLDER.resolve("images/lamps.hex").toAbsolutePath();
            new Peer("avrdude")
                    .says(
                            folder,
                            "-q",
                            "-c",
                            "arduino",
                            "-p",
                            "m328p",
                            "-P",
                            port.toString(),
                            "-b",
                            Integer.toString(BAUD),
                            "-D",
                            "-U",
                            "flash:w:" + program + ":i");
            served.isOver.set(true);
            serving.get(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);

            Image lamps = Programs.image(Chip.ATMEGA328P, "lamps.hex");
            int compared = 0;
            for (Image.Stretch stretch : lamps.program()) {
                for (int i = 0; i + 1 < stretch.bytes().length(); i += 2) {
                    int word = stretch.bytes().at(i) | stretch.bytes().at(i + 1) << 8;
                    assertEquals(word, served.board.board().chip().flash().word((stretch.address() + i) / 2));
                    compared++;
                }
            }
            assertTrue(compared > 500);
        } finally {
            socat.destroyForcibly();
            aside.shutdownNow();
        }
    }
}
