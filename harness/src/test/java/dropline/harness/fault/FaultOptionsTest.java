package dropline.harness.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Timing;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

final class FaultOptionsTest {
    private static final long MILLI = 1_000_000L;
    private static final long SECOND = 1_000_000_000L;

    private static final Pit PIT = DemoPit.read();

    private final Pit pit = PIT;
    private final Layout layout = Layout.of(pit);
    private final FaultText texts = new FaultText(pit, layout);

    @Test
    void everyPartIsUnderstood() {
        Fault fault = one("noise-burst front at 2m30s for 30 s rate 2/s by 3ms");

        assertEquals(new Fault(FaultKind.NOISE_BURST, 0, -1, -1, -1, 150 * SECOND, 180 * SECOND, 2, 3 * MILLI), fault);
    }

    @Test
    void partsComeInAnyOrder() {
        List<String> parts = List.of("at 60s", "for 5s", "rate 2/s", "by 3ms");
        Fault expected = one("noise-burst front " + String.join(" ", parts));

        List<List<String>> orders = orders(parts);

        assertEquals(24, orders.size());
        for (List<String> order : orders) {
            assertEquals(expected, one("noise-burst front " + String.join(" ", order)), order::toString);
        }
    }

    @Test
    void aPartLeftOutIsTheUsual() {
        Fault fault = one("babbling-node clock-board");

        assertEquals(0, fault.fromNanos());
        assertEquals(Fault.TO_THE_END, fault.untilNanos());
        assertEquals(50, fault.rate());
        assertEquals(10, fault.amount());
    }

    /**
     * 500 kbaud: 2 us a bit; 19.2 kbaud 8E1: 52,083 ns a bit, 11 of them a character, and 3.5 characters of silence.
     */
    @ParameterizedTest
    @CsvSource({
        "driver-enabled-late clock-board, 3000",
        "driver-enabled-early clock-board, 120000",
        "driver-released-early clock-board, 19000",
        "driver-released-late clock-board, 74000",
        "driver-released-early gear-board, 494792",
        "blackout clock-board, 800000",
        "blackout gear-board, 22916667",
        "wrong-baud clock-board, 250000",
        "clock-off clock-board, 60000",
        "slow-adapter overhead, 16000000",
        "loop-stall clock-board, 200000000",
        "noise-burst front, 2000000",
        "ring-overrun clock-board, 16",
        "needle-slipped Airspeed, 52",
        "lost-zero Airspeed, 52",
        "sticking-needle Airspeed, 10",
        "lost-steps Airspeed, 5",
        "reset clock-board, 0",
        "reply-too-soon clock-board, 0"
    })
    void theUsualAmountFollowsFromThePit(String text, long amount) {
        assertEquals(amount, one(text).amount());
    }

    @Test
    void whatIsDrivenLateOnModbusOutlastsTheSilenceBeforeAFrame() {
        long silence = pit.segments().get(2).silenceNanos();

        assertEquals(silence + 625_000, one("driver-released-late gear-board").amount());
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void everythingAKindCanStrikeIsFoundByItsNameAndWrittenSoThatItReadsBack(FaultKind kind) {
        List<Fault> faults = new SingleFaults(pit, layout).all(List.of(kind), 90 * SECOND, 5 * SECOND);

        assertTrue(faults.size() > 0);
        for (Fault fault : faults) {
            boolean once = kind.timing() == Timing.EVENT && fault.rate() == 0;
            Fault expected = once
                    ? new Fault(
                            kind,
                            fault.segment(),
                            fault.node(),
                            fault.part(),
                            fault.other(),
                            fault.fromNanos(),
                            Fault.TO_THE_END,
                            0,
                            fault.amount())
                    : fault;
            assertEquals(expected, one(texts.of(fault)), () -> texts.of(fault));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "DEAD-NODE Oil-Board | dead-node oil-board",
                "needle-slipped 'vertical SPEED' | needle-slipped 'Vertical speed/needle'",
                "needle-slipped 'Vertical speed'/needle | needle-slipped 'Vertical speed/needle'",
                "needle-slipped Altimeter | needle-slipped Altimeter/needle",
                "needle-slipped 'Course deviation'/'course bar' | needle-slipped 'Course deviation/course bar'",
                "dead-node 'oil-board' AT 0 | dead-node oil-board"
            })
    void namesMatchWhateverTheirCaseAndQuotes(String text, String same) {
        assertEquals(one(same), one(text));
    }

    @Test
    void aNameThatIsAPartsWordOrHoldsAQuoteIsWrittenInQuotes() {
        assertEquals("'at'", Token.written("at"));
        assertEquals("'captain''s clock'", Token.written("captain's clock"));
        for (String name : List.of("at", "by", "plain", "two words", "captain's clock", "'", "a'b", "''", "x/'y")) {
            List<Token> read = Token.of(Token.written(name)).orElseThrow();
            assertEquals(List.of(name), read.stream().map(Token::text).toList());
            assertTrue(read.get(0).clause().isEmpty(), name);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "driver-released-early clock-board by 9.5 bits, 19000",
        "blackout clock-board by 40 chars, 800000",
        "driver-released-early clock-board by 38us, 38000",
        "driver-released-early clock-board by 38µs, 38000",
        "wrong-baud clock-board by 57.6 kbaud, 57600",
        "clock-off clock-board by -2%, -20000",
        "clock-off clock-board by 1500 ppm, 1500",
        "ring-overrun clock-board by 12, 12",
        "babbling-node clock-board by 1 char, 1",
        "needle-slipped Airspeed by 12, 24",
        "needle-slipped Airspeed by -12 kt, -24",
        "needle-slipped Airspeed by 12 steps, 12",
        "needle-slipped Airspeed by 5%, 26",
        "reply-too-soon clock-board by 0, 0"
    })
    void anAmountMayBeWrittenInSeveralUnits(String text, long amount) {
        assertEquals(amount, one(text).amount());
    }

    @ParameterizedTest
    @CsvSource({
        "noise-burst front rate 2/s, 2",
        "noise-burst front rate 0.5 /s, 0.5",
        "noise-burst front rate 30/min, 0.5",
        "noise-burst front rate 4 Hz, 4",
        "noise-burst front rate 1000/s, 1000",
        "lost-state-frame front rate 20%, 0.2",
        "lost-state-frame front rate 100 %, 1",
        "lost-state-frame front rate 0.5%, 0.005"
    })
    void aRateIsAChanceOrSoManyTimesASecond(String text, double rate) {
        assertEquals(rate, one(text).rate(), 1e-12);
    }

    @Test
    void aSpanTooLongForALongLastsToTheEnd() {
        assertEquals(
                Fault.TO_THE_END,
                one("dead-node oil-board at 60s for 2562047h47m").untilNanos());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void anyWordsAreEitherAFaultOrAProblem(long seed) {
        List<String> words = new ArrayList<>(List.of(
                "at",
                "for",
                "rate",
                "by",
                "as",
                "60s",
                "2m30s",
                "-5s",
                "20%",
                "2/s",
                "12",
                "3ms",
                "3 kbaud",
                "9.5 bits",
                "'",
                "''",
                "/",
                "front",
                "oil-board",
                "fuel-board",
                "Airspeed",
                "Airspeed/needle",
                "'Vertical speed'",
                "heading-bug",
                "\u00B5",
                "1e9",
                "99999999999999999999",
                "5 %",
                "0",
                "x",
                ""));
        Stream.of(FaultKind.values()).map(FaultKind::word).forEach(words::add);
        Random random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            StringBuilder text = new StringBuilder();
            if (random.nextInt(4) > 0) {
                text.append(FaultKind.values()[random.nextInt(FaultKind.values().length)].word());
            }
            for (int n = random.nextInt(9); n > 0; n--) {
                text.append(' ').append(words.get(random.nextInt(words.size())));
            }
            FaultOptions.Read read = read(text.toString());
            String message = "seed " + seed + ", text " + i + ": " + text;
            assertEquals(read.problems().isEmpty() ? 1 : 0, read.faults().size(), message);
            for (Fault fault : read.faults()) {
                assertEquals(fault, one(texts.of(fault)), message);
            }
        }
    }

    private static List<List<String>> orders(List<String> parts) {
        if (parts.isEmpty()) {
            return List.of(List.of());
        }
        List<List<String>> all = new ArrayList<>();
        for (String first : parts) {
            List<String> rest = new ArrayList<>(parts);
            rest.remove(first);
            for (List<String> order : orders(rest)) {
                List<String> whole = new ArrayList<>(List.of(first));
                whole.addAll(order);
                all.add(whole);
            }
        }
        return all;
    }

    private Fault one(String text) {
        FaultOptions.Read read = read(text);
        assertEquals(List.of(), read.problems(), text);
        return read.faults().get(0);
    }

    private FaultOptions.Read read(String text) {
        return FaultOptions.read(List.of(text), pit, OptionalLong.of(600 * SECOND));
    }
}
