package dropline.harness.stream;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class TextFormsTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "altitude=1204.5,gear=on",
                "altitude=1204.5, gear=on",
                "altitude=1204.5; gear=true;",
                "altitude=1204,5;gear=1",
                "altitude=1204.5&gear=TRUE",
                "altitude=1204.5 gear=1",
                "altitude = 1204.5\r\ngear = on\r\n",
                "altitude=1204.5\tgear=1",
                "altitude=\"1204.5\", gear=on",
                "STATE altitude=1204.5 gear=1"
            })
    void keyValueIsRecognisedWithAnyMarkBetweenItsPairs(String text) {
        Heard heard = Heard.guessing(text);

        assertEquals("[{altitude=1204.5, gear=1.0}]", heard.states());
        assertEquals("text, key=value", heard.reader().form());
    }

    @Test
    void aPairByItselfLeavesTheMarkOpenUntilTwoComeTogether() {
        Heard heard = Heard.guessing("flaps=1,5", "flaps=2,5;gear=1", "flaps=3;gear=0");

        assertEquals("[{flaps=1.5}, {flaps=2.5, gear=1.0}, {flaps=3.0, gear=0.0}]", heard.states());
    }

    @Test
    void namesMayAppearLater() {
        Heard heard = Heard.guessing("a=1,b=2", "b=3,c=4", "a=5");

        assertEquals("[{a=1.0, b=2.0}, {b=3.0, c=4.0}, {a=5.0}]", heard.states());
        assertEquals(3, heard.reader().signals());
    }

    @Test
    void aHeaderNamesTheFieldsOfCsv() {
        Heard heard = Heard.guessing("altitude;\"gear; left\"", "1204,5;on", "", "1205;");

        assertEquals("[{altitude=1204.5, gear; left=1.0}, {altitude=1205.0}]", heard.states());
        assertEquals("text, CSV with a header", heard.reader().form());
    }

    @Test
    void csvWithoutAHeaderIsNamedByPlace() {
        Heard heard = Heard.guessing("1204.5,1,x", "1205,0,y");

        assertEquals("[{c1=1204.5, c2=1.0}, {c1=1205.0, c2=0.0}]", heard.states());
        assertEquals(
                "text, CSV without a header, its fields named c1 to c3",
                heard.reader().form());
        assertEquals(List.of("c3=x"), heard.reader().noNumberExamples());
        assertEquals(2, heard.reader().noNumbers());
    }

    @Test
    void aRowOfAnotherLengthIsMalformed() {
        Heard heard = Heard.guessing("1,2,3", "1,2", "4,5,6");

        assertEquals("[{c1=1.0, c2=2.0, c3=3.0}, {c1=4.0, c2=5.0, c3=6.0}]", heard.states());
        assertEquals(List.of("2 fields, not 3: 1,2"), heard.reader().malformedExamples());
    }

    @Test
    void severalRowsInOneDatagramAreSeveralStates() {
        Heard heard = Heard.guessing("a,b\n1,2\n3,4\n");

        assertEquals("[{a=1.0, b=2.0}, {a=3.0, b=4.0}]", heard.states());
    }

    @Test
    void jsonIsNamedByTheWayToEachValue() {
        Heard heard = Heard.guessing(
                "{\"altitude\": 1204.5, \"gear\": {\"left\": true, \"right\": \"off\"}, \"flaps\": [1, {\"x\": 2}],"
                        + " \"title\": \"Dunlin\", \"none\": null}");

        assertEquals("[{altitude=1204.5, flaps.0=1.0, flaps.1.x=2.0, gear.left=1.0, gear.right=0.0}]", heard.states());
        assertEquals("text, JSON", heard.reader().form());
        assertEquals(List.of("title=Dunlin"), heard.reader().noNumberExamples());
    }

    @Test
    void jsonThatBreaksOffYieldsNothing() {
        Heard heard = Heard.guessing("{\"a\": 1}", "{\"a\": 2, \"b\":", "{\"a\": 3} {\"a\": 4}");

        assertEquals("[{a=1.0}, {a=3.0}, {a=4.0}]", heard.states());
        assertEquals(1, heard.reader().malformed());
    }

    @Test
    void theStreamsOwnTimeIsTakenInItsUnit() {
        assertEquals(List.of(1_500_000_000L), Heard.guessing("time=1.5,a=1").times());
        assertEquals(List.of(1_500_000L), Heard.guessing("time_ms=1.5,a=1").times());
        assertEquals(List.of(1_500L), Heard.guessing("t [us]=1.5,a=1").times());
        assertEquals(
                List.of(2_000_000_000L), Heard.guessing("sim time,a", "2,1").times());
        assertEquals(List.of(), Heard.guessing("times=1.5,flight time=3,t=1").times());
    }

    @Test
    void aSequenceNumberIsNoSignal() {
        Heard heard = Heard.guessing("seq=7,a=1");

        assertEquals("[{a=1.0}]", heard.states());
        assertEquals(List.of(7L), heard.sequence());
        assertEquals(1, heard.reader().signals());
    }

    @Test
    void aGreetingDoesNotDecideTheForm() {
        Heard heard = Heard.guessing("Welcome, pilot", "hello", "altitude=1,gear=0");

        assertEquals("[{altitude=1.0, gear=0.0}]", heard.states());
        assertEquals("text, key=value", heard.reader().form());
    }

    @Test
    void valuesThatAreNoFiniteNumbersAreCountedNotKept() {
        Heard heard = Heard.guessing("a=NaN,b=1e999,c=1.#IND,d=2");

        assertEquals("[{d=2.0}]", heard.states());
        assertEquals(3, heard.reader().noNumbers());
    }

    @Test
    void binaryWithoutADatagramFileIsMalformedAndShownInHexadecimal() {
        Heard heard = new Heard(StreamReader.guessing());

        assertFalse(heard.bytes(new byte[] {0x44, 1, (byte) 0xFF}));
        assertNull(heard.reader().form());
        assertEquals(
                List.of("binary, and no datagram file says what is in it: 44 01 FF (3 bytes)"),
                heard.reader().malformedExamples());
    }

    @Test
    void zerosBehindTextAndAByteOrderMarkAreNoPartOfIt() {
        Heard heard = new Heard(StreamReader.guessing());

        assertTrue(heard.bytes("\uFEFFa=1,b=2\0\0\0".getBytes(StandardCharsets.UTF_8)));
        assertEquals("[{a=1.0, b=2.0}]", heard.states());
    }

    @Test
    void textInLatin1IsRead() {
        Heard heard = new Heard(StreamReader.guessing());

        assertTrue(heard.bytes("heading \u00B0=270,b=2".getBytes(StandardCharsets.ISO_8859_1)));
        assertEquals("[{b=2.0, heading \u00B0=270.0}]", heard.states());
    }
}
