package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Microcontroller;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every instruction in 1,024 states of all registers and flags, half a million cases for each chip: registers, flags,
 * memory, way taken and cycles, against what Debian's simavr 1.6 made of the same program (oracle/golden.sh).
 */
final class EveryInstructionTest {
    private static final long STEP_CYCLES = 1_000_000;

    @ParameterizedTest
    @EnumSource(names = {"ATMEGA328P", "ATMEGA2560"})
    void comesOutAsAnIndependentEmulatorHasIt(Chip chip) throws IOException {
        Path golden = Programs.FOLDER.resolve("oracle").resolve(chip.word() + ".txt");

        assertEquals(Files.readAllLines(golden), printed(chip, "oracle-" + chip.word() + ".hex"));
    }

    /** Sorting, fractions, printing and long numbers as a compiler makes them, from -O0 to -O3: results and cycles. */
    @ParameterizedTest
    @EnumSource(names = {"ATMEGA328P", "ATMEGA2560"})
    void wholeProgramsTakeTheSameCycles(Chip chip) throws IOException {
        List<String> lines = new ArrayList<>();
        for (int level = 0; level < 4; level++) {
            lines.addAll(printed(chip, "checkpoints-" + chip.word() + "-o" + level + ".hex"));
        }

        assertEquals(Files.readAllLines(Programs.FOLDER.resolve("oracle/checkpoints-" + chip.word() + ".txt")), lines);
    }

    /** What a program prints until it prints a point on a line of its own. */
    private static List<String> printed(Chip chip, String image) throws IOException {
        Microcontroller board = Programs.image(chip, image).on(chip, Programs.HZ, 0);
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        board.usart(0).tell((bits, length, start, bitCycles) -> {
            char next = (char) (bits >> 1 & 0xFF);
            if (next == '\n') {
                lines.add(line.toString());
                line.setLength(0);
            } else {
                line.append(next);
            }
        });
        board.reset(Microcontroller.POWER_ON);
        while (lines.isEmpty() || !lines.get(lines.size() - 1).equals(".")) {
            board.cpu().run(board.cpu().cycles() + STEP_CYCLES);
        }
        return lines.subList(0, lines.size() - 1);
    }
}
