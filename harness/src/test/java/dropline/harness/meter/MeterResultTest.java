package dropline.harness.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.copper.Reading;
import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class MeterResultTest {
    private static final String TEXT = """
        hubs:
          middle: {adapter: native USB}
        segments:
          front:
            baud: 250 kbaud
            controller: {hub: middle}
            terminators: {at: [controller, fuel]}
            bias-resistors: {at: controller}
          aft: {baud: 250 kbaud, controller: {hub: middle}}
          desk: {baud: 76.8 kbaud, topology: direct, controller: {adapter: native USB, time-out: 50 ms}}
        nodes:
          oil: {segment: front, address: 1, profile: 8-bit loop}
          heat: {segment: front, address: 3, profile: 8-bit loop}
          fuel: {segment: front, address: 2, profile: 8-bit loop}
          trim: {segment: aft, address: 1, profile: 8-bit loop}
          clipboard: {segment: desk, address: 1, profile: 8-bit loop}
        """;
    private static final List<Integer> FRONT = List.of(0);

    private final Pit pit = pit();

    @Test
    void everyPairHasItsReadingsAndABoardStraightOnUsbHasNone() throws MeterException {
        MeterResult result = MeterResult.of(pit, List.of(0, 1, 2), List.of());

        assertEquals(
                List.of("front", "aft"),
                result.pairs().stream().map(MeterResult.Readings::pair).toList());
        assertEquals("middle", result.pairs().get(0).at());
        assertThrows(MeterException.class, () -> MeterResult.of(pit, List.of(2), List.of()));
    }

    @Test
    void fortyOhmAndHundredSeventyMillivoltsNameAThirdTerminator() throws MeterException {
        MeterResult.Diagnosis diagnosis = diagnosis("ohms=40", "idle=170mV");

        assertEquals(List.of("there is a terminator too many"), diagnosis.fits());
        assertFalse(diagnosis.isSound());
        assertEquals(0.17, diagnosis.taken().get(1).value(), 1e-12);
    }

    @Test
    void whatCannotBeToldApartComesWithTheReadingThatTells() throws MeterException {
        // 5 V x 120 / 1240 = 5 V x 60 / 620 = 484 mV
        MeterResult.Diagnosis diagnosis = diagnosis("idle=484 mV");

        assertEquals(
                "the terminator at middle or at fuel is missing",
                diagnosis.fits().get(0));
        assertTrue(diagnosis.fits().contains("the bias is there twice"), diagnosis.fits()::toString);
        assertTrue(
                diagnosis.further().stream().anyMatch(further -> further.reading() == Reading.OHMS),
                () -> diagnosis.further().toString());
    }

    @Test
    void readingsMayBeTakenAtABoard() throws MeterException {
        MeterResult.Diagnosis diagnosis = diagnosis("idle@fuel=-250 mV");

        assertEquals("fuel", diagnosis.taken().get(0).at());
        assertEquals(
                "D1 and D0 are exchanged where the meter is", diagnosis.fits().get(0));
    }

    @Test
    void rightReadingsAreSound() throws MeterException {
        assertTrue(diagnosis("ohms=59").isSound());
    }

    @Test
    void whatNoFaultExplainsIsSaid() throws MeterException {
        MeterResult.Diagnosis diagnosis = diagnosis("ohms=60", "idle=3 V");

        assertEquals(List.of(), diagnosis.fits());
        assertFalse(diagnosis.nearest().isEmpty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ohms             | 'ohms' is no reading; write ohms=40, idle=170mV or idle@BOARD=170mV
            idle=170         | '170' is no reading of idle; write volts with their unit, such as 170 mV or -0.2 V
            ohms=-3          | '-3' is no reading of ohms; write ohms, such as 40 or 1.2 kohm
            ohms=40 mV       | '40 mV' is no reading of ohms; write ohms, such as 40 or 1.2 kohm
            idle@fule=0      | 'idle@fule=0': there is no board 'fule' here; did you mean fuel?
            """)
    void wrongReadingSaysWhatToWrite(String typed, String message) {
        MeterException wrong = assertThrows(MeterException.class, () -> MeterResult.of(pit, FRONT, List.of(typed)));

        assertEquals(message, wrong.getMessage());
    }

    @Test
    void unknownReadingSuggestsTheNearestOne() {
        assertEquals(
                "'ohm' is nothing that a meter reads here; it reads ohms, ohms-biased, idle, d1, d0; did you mean"
                        + " ohms?",
                message(FRONT, "ohm=40"));
    }

    @Test
    void readingsAreOfOnePair() {
        assertTrue(message(List.of(0, 1), "ohms=40").contains("there are front, aft; choose with --segment"));
        assertTrue(message(List.of(0, 1), "idle@oil=0", "idle@trim=0").contains("on different pairs"));
        assertTrue(message(FRONT, "ohms=40", "ohms=41").contains("is read twice"));
    }

    @Test
    void textBeginsWithWhatFitsAndKeepsItsCautions() throws MeterException {
        String text = MeterText.of(MeterResult.of(pit, FRONT, List.of("idle=484mV")));

        assertTrue(text.startsWith("""
            Segment front: idle 484 mV at middle

            These fit, the likeliest first:
              1. the terminator at middle or at fuel is missing
            """), text);
        assertTrue(text.contains("Resistance only with everything off"), text);
        assertTrue(text.contains("Leave mains work to licensed people"), text);
    }

    @Test
    void textOfAllReadingsFitsATerminal() throws MeterException {
        String text = MeterText.of(MeterResult.of(pit, FRONT, List.of()));

        assertTrue(text.lines().allMatch(line -> line.length() <= 100), text);
        assertTrue(text.contains("as it should be"), text);
    }

    private String message(List<Integer> segments, String... reads) {
        return Objects.requireNonNull(
                assertThrows(MeterException.class, () -> MeterResult.of(pit, segments, List.of(reads)))
                        .getMessage());
    }

    private MeterResult.Diagnosis diagnosis(String... reads) throws MeterException {
        return Objects.requireNonNull(MeterResult.of(pit, FRONT, List.of(reads)).diagnosis());
    }

    private static Pit pit() {
        PitFile.Result result = PitFile.parse("hut.yaml", TEXT);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit();
    }
}
