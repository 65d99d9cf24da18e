package dropline.harness.firmware;

import dropline.bus.avr.chip.Chip;
import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Reads a file that would be flashed. */
public final class FirmwareFile {
    /** The largest that is read: several times what fits any of the chips, as text. */
    private static final long MOST_BYTES = 16_000_000;

    private FirmwareFile() {}

    /** What came of it. */
    public sealed interface Result {}

    /** A program that fits the chip. */
    public record Understood(Image image) implements Result {}

    /** All that is wrong. */
    public record Wrong(List<Problem> problems) implements Result {
        public Wrong {
            problems = List.copyOf(problems);
        }
    }

    /**
     * Reads it, by what is in it and not by its name.
     *
     * @throws IOException if it cannot be read
     */
    public static Result read(Path file, Chip chip) throws IOException {
        String name = file.toString();
        Collected into = new Collected(name, chip);
        if (Files.size(file) > MOST_BYTES) {
            into.wrong(0, "TOO_LARGE", Files.size(file) + " bytes", "a program for the " + chip.word(), null);
            return new Wrong(into.problems());
        }
        byte[] bytes = Files.readAllBytes(file);
        if (Elf.is(bytes)) {
            Elf.read(bytes, into);
        } else {
            IntelHex.read(new String(bytes, StandardCharsets.ISO_8859_1).lines().toList(), into);
        }
        if (!into.isWrong() && into.isEmpty()) {
            into.wrong(0, "EMPTY", null, "a program", "build the file anew: it holds none");
        }
        return into.isWrong() ? new Wrong(into.problems()) : new Understood(into.image());
    }
}
