package dropline.harness.symptom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import dropline.harness.problem.ProblemChapter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Holds symptoms, catalogue and manual together; {@code -Ddropline.write-manual=true} writes the made part anew. */
final class SymptomsTest {
    private static final String BEGIN = "<!-- symptoms -->\n";
    private static final String END = "<!-- end of symptoms -->";

    private final Symptoms symptoms = Symptoms.read();

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void everyFaultOfTheCatalogueIsBehindSomeSymptom(FaultKind kind) {
        assertFalse(symptoms.of(kind).isEmpty(), kind.word());
    }

    @Test
    void noSymptomNamesACauseTwiceAndNoneStandsTwice() {
        for (Symptom symptom : symptoms.all()) {
            assertEquals(
                    symptom.likely().size(),
                    symptom.likely().stream()
                            .map(Symptom.Cause::name)
                            .distinct()
                            .count(),
                    symptom.see());
        }
        assertEquals(
                symptoms.all().size(),
                symptoms.all().stream().map(Symptom::see).distinct().count());
    }

    @ParameterizedTest
    @CsvSource({
        "one panel shows old values, One panel shows old values",
        "all slow since today, All panels are slow since today",
        "wrong only at night, Wrong only at night",
        "only when a motor moves, Only when a motor moves",
        "gauge jittery, A needle jitters",
        "the knob misses clicks, A switch or knob gets lost",
        "works alone on the bench, 'Works on the bench, not in the pit'",
        "the needle is off, A needle points to the wrong value",
        "boards at the far end, Only the far end is wrong",
    })
    void peoplesOwnWordsLeadToASymptom(String words, String expected) {
        assertEquals(expected, symptoms.like(words).get(0).see());
    }

    @Test
    void wordsThatSayNothingLeadNowhere() {
        assertEquals(List.of(), symptoms.like("it is on the"));
        assertEquals(List.of(), symptoms.like("zzz"));
    }

    @Test
    void theTextFitsATerminalAndCautions() {
        String text = SymptomText.of(symptoms.all());

        assertTrue(Stream.of(text.split("\n")).allMatch(line -> line.length() <= 100), text);
        assertTrue(text.contains("Disconnect supplies and USB before you change wiring."), text);
    }

    @Test
    void thePageShowsThem() throws IOException {
        Path page = ProblemChapter.docs().resolve("symptoms.md");
        String text = Files.readString(page);
        String made = SymptomPage.of(symptoms.all());
        if (Boolean.getBoolean("dropline.write-manual")) {
            text = text.substring(0, text.indexOf(BEGIN)) + BEGIN + made + text.substring(text.indexOf(END));
            Files.writeString(page, text);
        }
        assertEquals(made, text.substring(text.indexOf(BEGIN) + BEGIN.length(), text.indexOf(END)));
    }
}
