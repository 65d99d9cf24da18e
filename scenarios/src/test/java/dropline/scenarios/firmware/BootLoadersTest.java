package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.abort;

import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Programs that nobody here wrote: the boot loaders of Debian's arduino-core-avr 1.8.7, which speak STK500 version 1
 * (Atmel application note AVR061), that of the ATmega2560 version 2 (AVR068). The rebuilt "optiboot" files beside them
 * are longer than the boot section that they are for.
 */
final class BootLoadersTest {
    private static final Path FOLDER = Path.of("/usr/share/arduino/hardware/arduino/avr/bootloaders");
    private static final int SYNC = 0x30;
    private static final int END = 0x20;
    private static final int IN_SYNC = 0x14;
    private static final int OK = 0x10;
    private static final int READ_SIGNATURE = 0x75;
    private static final int LOAD_ADDRESS = 0x55;
    private static final int READ_PAGE = 0x74;

    private final List<Integer> said = new ArrayList<>();

    private Counterpart board(Chip chip, String name, int baud) throws IOException {
        if (!Files.exists(FOLDER)) {
            if ("required".equals(System.getProperty("dropline.peers"))) {
                throw new AssertionError("arduino-core-avr is not installed");
            }
            abort("arduino-core-avr is not installed, so no program of others runs here");
        }
        Image image = Programs.image(chip, FOLDER.resolve(name));
        Counterpart board = new Counterpart(
                image.on(chip, Programs.HZ, image.beginsAt()),
                0,
                null,
                1e9 / baud,
                CharacterFormat.EIGHT_N_ONE,
                (value, good, end) -> said.add(value));
        board.advanceTo(1_000_000);
        board.board().restart(1_000_000);
        board.advanceTo(200_000_000);
        return board;
    }

    private List<Integer> ask(Counterpart board, int... bytes) {
        said.clear();
        board.say(Bytes.of(bytes), board.board().reachedNanos());
        board.advanceTo(board.board().reachedNanos() + 80_000_000);
        return List.copyOf(said);
    }

    @ParameterizedTest
    @CsvSource({
        "ATMEGA328P, atmega/ATmegaBOOT_168_atmega328.hex, 57600, 1E950F",
        "ATMEGA168, atmega/ATmegaBOOT_168_diecimila.hex, 19200, 1E9406",
        "ATMEGA1280, atmega/ATmegaBOOT_168_atmega1280.hex, 57600, 1E9703"
    })
    void answerSyncSignatureAndRead(Chip chip, String name, int baud, String signature) throws IOException {
        Counterpart board = board(chip, name, baud);
        int whole = Integer.parseInt(signature, 16);

        assertEquals(List.of(IN_SYNC, OK), ask(board, SYNC, END));
        assertEquals(
                List.of(IN_SYNC, whole >> 16, whole >> 8 & 0xFF, whole & 0xFF, OK), ask(board, READ_SIGNATURE, END));
        int word = 0x3E00 / 2;
        assertEquals(List.of(IN_SYNC, OK), ask(board, LOAD_ADDRESS, word & 0xFF, word >> 8, END));
        List<Integer> page = ask(board, READ_PAGE, 0, 8, 'F', END);
        assertEquals(10, page.size());
        assertEquals(board.board().chip().flash().word(word) & 0xFF, page.get(1));
        assertEquals(board.board().chip().flash().word(word + 3) >> 8, page.get(8));
    }

    @Test
    void writeAPageIntoProgramMemory() throws IOException {
        Counterpart board = board(Chip.ATMEGA328P, "atmega/ATmegaBOOT_168_atmega328.hex", 57_600);
        int[] program = new int[5 + 128];
        program[0] = 0x64;
        program[2] = 128;
        program[3] = 'F';
        for (int i = 0; i < 128; i++) {
            program[4 + i] = i * 7 & 0xFF;
        }
        program[132] = END;
        assertEquals(List.of(IN_SYNC, OK), ask(board, SYNC, END));
        assertEquals(List.of(IN_SYNC, OK), ask(board, LOAD_ADDRESS, 0x80, 0x00, END));

        assertEquals(List.of(IN_SYNC, OK), ask(board, program));

        assertEquals(7 << 8, board.board().chip().flash().word(0x80));
        assertEquals(
                (127 * 7 & 0xFF) << 8 | 126 * 7 & 0xFF,
                board.board().chip().flash().word(0x80 + 63));
    }

    @Test
    void ofThe2560SignsOn() throws IOException {
        Counterpart board = board(Chip.ATMEGA2560, "stk500v2/stk500boot_v2_mega2560.hex", 115_200);

        List<Integer> answer = ask(board, 0x1B, 1, 0, 1, 0x0E, 1, 0x1B ^ 1 ^ 1 ^ 0x0E ^ 1);

        assertEquals(List.of(0x1B, 1, 0, 11, 0x0E, 1, 0, 8), answer.subList(0, 8));
        StringBuilder name = new StringBuilder();
        answer.subList(8, 16).forEach(one -> name.append((char) one.intValue()));
        assertEquals("AVRISP_2", name.toString());
    }
}
