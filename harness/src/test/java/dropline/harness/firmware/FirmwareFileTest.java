package dropline.harness.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.chip.Microcontroller;
import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class FirmwareFileTest {
    private static final String END = ":00000001FF\n";

    @TempDir
    private Path folder;

    private FirmwareFile.Result read(String text, Chip chip) throws IOException {
        return FirmwareFile.read(Files.writeString(folder.resolve("panel.hex"), text), chip);
    }

    private Image image(String text, Chip chip) throws IOException {
        if (read(text, chip) instanceof FirmwareFile.Understood understood) {
            return understood.image();
        }
        throw new AssertionError(read(text, chip));
    }

    private List<String> codes(String text, Chip chip) throws IOException {
        return read(text, chip) instanceof FirmwareFile.Wrong wrong
                ? wrong.problems().stream().map(Problem::code).toList()
                : List.of();
    }

    /** The example record of the Intel specification's own chapter on data records. */
    @Test
    void aDataRecordLiesWhereItSays() throws IOException {
        Image image = image(":10010000214601360121470136007EFE09D2190140\n" + END, Chip.ATMEGA328P);

        assertEquals(0x100, image.beginsAt());
        assertEquals(16, image.size());
        Microcontroller chip = image.on(Chip.ATMEGA328P, 16_000_000, 0);
        assertEquals(0x4621, chip.flash().word(0x80));
        assertEquals(0x0119, chip.flash().word(0x87));
        assertEquals(0xFFFF, chip.flash().word(0));
    }

    @Test
    void extendedAddressesMoveWhatFollows() throws IOException {
        Image linear = image(":020000040001F9\n:02000000ADDE73\n" + END, Chip.ATMEGA2560);
        Image segmented = image(":020000021000EC\n:02000000ADDE73\n" + END, Chip.ATMEGA2560);

        assertEquals(0x10000, linear.beginsAt());
        assertEquals(0x10000, segmented.beginsAt());
    }

    @Test
    void startAddressesAreUnderstoodAndNotUsed() throws IOException {
        Image image = image(":0400000300003800C1\n:04000005000000CD2A\n:02000000ADDE73\n" + END, Chip.ATMEGA328P);

        assertEquals(2, image.size());
    }

    @ParameterizedTest
    @CsvSource({
        "':02000000ADDE74', WRONG_CHECKSUM",
        "':02000000ADDE', WRONG_LENGTH",
        "':03000000ADDE72', WRONG_LENGTH",
        "':020000060000F8', UNKNOWN_RECORD",
        "'int main(void)', NO_RECORD",
        "':020000040001F9', EMPTY"
    })
    void whatIsWrongIsNamed(String line, String code) throws IOException {
        assertEquals(List.of(code), codes(line + "\n" + END, Chip.ATMEGA2560));
    }

    @Test
    void allProblemsAreToldAtOnceWithTheirLines() throws IOException {
        FirmwareFile.Result result =
                read(":02000000ADDE74\n:02000200ADDE71\nnonsense\n" + END + ":02000000ADDE73\n", Chip.ATMEGA328P);

        assertTrue(result instanceof FirmwareFile.Wrong);
        List<Problem> problems = ((FirmwareFile.Wrong) result).problems();
        assertEquals(List.of(1, 3, 5), problems.stream().map(Problem::line).toList());
        assertTrue(problems.get(0).text().contains("expected: 73"), problems.get(0)::text);
    }

    @Test
    void aProgramForALargerChipIsRefused() throws IOException {
        String text = ":020000040001F9\n:02000000ADDE73\n" + END;

        assertEquals(List.of("OUT_OF_RANGE"), codes(text, Chip.ATMEGA328P));
        assertEquals(List.of(), codes(text, Chip.ATMEGA2560));
    }

    @Test
    void aByteThatStandsTwiceIsRefused() throws IOException {
        assertEquals(List.of("DUPLICATE"), codes(":02000000ADDE73\n:02000100ADDE72\n" + END, Chip.ATMEGA328P));
    }

    @Test
    void aFileWithoutItsEndIsRefused() throws IOException {
        assertEquals(List.of("CUT_OFF"), codes(":02000000ADDE73\n", Chip.ATMEGA328P));
    }

    @Test
    void anElfFileThatIsCutOffOrForAnotherMachineIsRefused() throws IOException {
        byte[] elf = Files.readAllBytes(Path.of("../scenarios/firmware/images/lamps.elf"));
        Path cut = folder.resolve("cut.elf");
        Files.write(cut, Arrays.copyOf(elf, 200));
        byte[] other = elf.clone();
        other[18] = 3;
        Path foreign = Files.write(folder.resolve("foreign.elf"), other);

        assertEquals(
                "CUT_OFF",
                ((FirmwareFile.Wrong) FirmwareFile.read(cut, Chip.ATMEGA328P))
                        .problems()
                        .get(0)
                        .code());
        assertEquals(
                "WRONG_MACHINE",
                ((FirmwareFile.Wrong) FirmwareFile.read(foreign, Chip.ATMEGA328P))
                        .problems()
                        .get(0)
                        .code());
    }

    @Test
    void anElfFileNamesItsFunctionsAndTheEndOfItsVariables() throws IOException {
        FirmwareFile.Result result =
                FirmwareFile.read(Path.of("../scenarios/firmware/images/lamps.elf"), Chip.ATMEGA328P);
        Image image = ((FirmwareFile.Understood) result).image();

        assertTrue(
                image.functions().stream().anyMatch(function -> function.name().equals("main")));
        assertTrue(image.memoryEnd() > 0x100 && image.memoryEnd() < 0x300, () -> "end=" + image.memoryEnd());
    }

    /** Whatever is damaged, there is an image or problems, and nothing else. */
    @ParameterizedTest
    @ValueSource(strings = {"lamps.elf", "lamps.hex"})
    void aSpoiltFileIsUnderstoodOrRefused(String name) throws IOException {
        byte[] sound =
                Files.readAllBytes(Path.of("../scenarios/firmware/images").resolve(name));
        Random random = new Random(20261127);
        int refused = 0;
        for (int trial = 0; trial < 2_000; trial++) {
            byte[] spoilt = Arrays.copyOf(sound, random.nextInt(8) == 0 ? random.nextInt(sound.length) : sound.length);
            for (int i = 0; i <= random.nextInt(4) && spoilt.length > 0; i++) {
                spoilt[random.nextInt(Math.min(spoilt.length, i == 0 ? 120 : spoilt.length))] = (byte) random.nextInt();
            }
            FirmwareFile.Result result =
                    FirmwareFile.read(Files.write(folder.resolve("spoilt"), spoilt), Chip.ATMEGA328P);
            refused += result instanceof FirmwareFile.Wrong ? 1 : 0;
        }
        int times = refused;
        assertTrue(times > 200, () -> "refused=" + times);
    }
}
