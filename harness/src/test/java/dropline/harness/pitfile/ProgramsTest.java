package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.device.Device;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The program of a node in a pit file. */
final class ProgramsTest {
    private static final String NODE_A = "a: {segment: left, address: 1, profile: 8-bit loop}";

    @TempDir
    private Path folder;

    /** A program of one word: it stays where it is. */
    @BeforeEach
    void image() throws IOException {
        Files.writeString(folder.resolve("stays.hex"), ":02000000FFCF30\n:00000001FF\n");
        Files.writeString(folder.resolve("wrong.hex"), "nothing of the kind\nnor here\n");
    }

    private String text(String firmware) {
        return PitText.with(NODE_A, "a: {segment: left, address: 1, profile: 8-bit loop, firmware: " + firmware + "}");
    }

    private PitFile.Result parsed(String text) {
        return PitFile.parse(folder.resolve("pit.yaml").toString(), text);
    }

    private Node board(String firmware) {
        if (parsed(text(firmware)) instanceof PitFile.Understood understood) {
            return understood.pit().segments().get(0).nodes().get(0);
        }
        throw new AssertionError(parsed(text(firmware)));
    }

    @Test
    void textAloneIsForTheCard() {
        Node board = board("lamps 1.4");

        assertNull(board.program());
        assertEquals("lamps 1.4", board.fitting().firmware());
    }

    @Test
    void anImageIsRun() {
        Node board = board("{image: stays.hex, chip: ATMEGA2560, clock: 8 MHz, usart: 1, driver-enable: PH4,"
                        .replace("ATMEGA2560", "atmega2560")
                + " pins: {card: PA0 PA1 PA2 PA3, compass/knob: {at: PB0 PB1, active: high}}}");
        Program program = board.program();

        assertNotNull(program);
        assertEquals(Chip.ATMEGA2560, program.chip());
        assertEquals(8_000_000, program.hz());
        assertEquals(1, program.usart());
        assertEquals(new Pin('H', 4), program.driverEnable());
        assertEquals(0xCFFF, program.powered().flash().word(0));
        assertEquals(
                List.of(
                        new Program.Lead(
                                "compass",
                                "card",
                                List.of(new Pin('A', 0), new Pin('A', 1), new Pin('A', 2), new Pin('A', 3)),
                                false),
                        new Program.Lead("compass", "knob", List.of(new Pin('B', 0), new Pin('B', 1)), false)),
                program.leads());
        assertEquals("stays.hex", board.fitting().firmware());
    }

    @Test
    void aDeviceHasItsUsualAddressOrAnother() {
        Program program = board("{image: stays.hex, chip: atmega328p, pins: {knob: PC0 PC1},"
                        + " devices: {d: {kind: OLED, shows: card}, e: {kind: port expander, address: 0x21, shows:"
                        + " [none]}}}")
                .program();

        assertNotNull(program);
        assertEquals(0x3C, program.devices().get(0).address());
        assertEquals(Device.Kind.OLED, program.devices().get(0).kind());
        assertEquals(0x21, program.devices().get(1).address());
        assertTrue(program.devices().get(1).isLow());
        assertTrue(program.isOnDevice("compass", "card"));
    }

    @Test
    void aPitIsModelledWhereItMustBe() {
        String text = text("{image: stays.hex, chip: atmega328p, applied: gpior0, pins: {knob: PC0 PC1}}");
        if (!(parsed(text) instanceof PitFile.Understood understood)) {
            throw new AssertionError(parsed(text));
        }
        Pit pit = understood.pit();

        assertNotNull(pit.segments().get(0).nodes().get(0).program());
        assertNull(pit.modelled().segments().get(0).nodes().get(0).program());
        assertEquals(pit.modelled(), pit.modelled().modelled());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{image: gone.hex, chip: atmega328p} | image NO_SUCH_FILE",
                "{image: stays.hex} | chip MISSING_KEY",
                "{image: stays.hex, chip: atmega} | chip WRONG_TYPE",
                "{chip: atmega328p} | chip UNUSED_KEY",
                "{image: wrong.hex, chip: atmega328p} | '' NO_RECORD",
                "{image: stays.hex, chip: atmega328p, usart: 1, applied: gpior0, pins: {knob: PC0 PC1}}"
                        + " | usart OUT_OF_RANGE",
                "{image: stays.hex, chip: atmega328p, driver-enable: PL1} | driver-enable OUT_OF_RANGE",
                "{image: stays.hex, chip: atmega328p, driver-enable: D2} | driver-enable WRONG_TYPE",
                "{image: stays.hex, chip: atmega328p, applied: gpior0, pins: {nob: PC0 PC1}} | pins UNKNOWN_NAME",
                "{image: stays.hex, chip: atmega328p, applied: gpior0, pins: {knob: PC0 C1}} | at WRONG_TYPE",
                "{image: stays.hex, chip: atmega328p, applied: gpior0, pins: {knob: PC0}} | pins CONFLICT",
                "{image: stays.hex, chip: atmega328p, applied: gpior0} | pins MISSING_KEY",
                "{image: stays.hex, chip: atmega328p, pins: {knob: PC0 PC1}} | firmware MISSING_KEY",
                "{image: stays.hex, chip: atmega328p, pins: {knob: PC0 PC1}, devices: {d: {kind: OLED, address: 0x78,"
                        + " shows: card}}} | address OUT_OF_RANGE",
                "{image: stays.hex, chip: atmega328p, pins: {knob: PC0 PC1}, devices: {d: {kind: digit driver,"
                        + " shows: card}}} | at CONFLICT",
                "{image: stays.hex, chip: atmega328p, pins: {knob: PC0 PC1}, devices: {d: {kind: character LCD, at:"
                        + " PB0 PB1 PB2 PB3 PB4 PB5, address: 0x20, shows: card}}} | address UNUSED_KEY",
            })
    void whatIsWrongIsSaid(String firmware, String said) {
        if (!(parsed(text(firmware)) instanceof PitFile.Wrong wrong)) {
            throw new AssertionError("nothing is wrong with " + firmware);
        }
        Problem first = wrong.problems().get(0);

        assertEquals(said.replace("''", ""), first.key() + " " + first.code(), wrong::toString);
        assertEquals(1, wrong.problems().size(), wrong::toString);
    }
}
