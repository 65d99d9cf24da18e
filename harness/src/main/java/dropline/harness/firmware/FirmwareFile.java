package dropline.harness.firmware;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.harness.problem.Problem;
import dropline.protocol.Bytes;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Reads a file that would be flashed. */
public final class FirmwareFile {
    /** The largest that is read: several times what fits any of the chips, as text. */
    private static final int MOST_BYTES = 16_000_000;

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
     * What a file holds, whatever chip it is for.
     *
     * @param name of the file
     */
    public record Raw(String name, Bytes bytes) {
        /** Its name without its folders. */
        public String shortName() {
            return Path.of(name).getFileName().toString();
        }
    }

    /**
     * Reads it, by what is in it and not by its name.
     *
     * @throws IOException if it cannot be read
     */
    public static Result read(Path file, Chip chip) throws IOException {
        return decode(raw(file), chip);
    }

    /**
     * Reads what a file holds, of one that is too large only the begin.
     *
     * @throws IOException if it cannot be read
     */
    public static Raw raw(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            return new Raw(file.toString(), Bytes.copyOf(bytes, 0, bytes.length));
        }
    }

    /** Makes a program for a chip of what a file holds. */
    public static Result decode(Raw raw, Chip chip) {
        Collected into = new Collected(raw.name(), chip);
        byte[] bytes = raw.bytes().toArray();
        if (bytes.length > MOST_BYTES) {
            into.wrong(0, "TOO_LARGE", "over " + MOST_BYTES + " bytes", "a program for the " + chip.word(), null);
            return new Wrong(into.problems());
        }
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
