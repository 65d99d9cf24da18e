package dropline.harness.describe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Signal;
import dropline.harness.describe.ColumnSummary.Kind;
import dropline.harness.describe.RecordingSummary.ControlSummary;
import dropline.harness.describe.RecordingSummary.Pause;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RecordingFoldTest {
    private static final String PIT = """
            hubs:
              centre: {adapter: none}
            segments:
              one: {baud: 250 kbaud, protocol: dropline, controller: {hub: centre}}
            nodes:
              board: {segment: one, address: 1, profile: 8-bit interrupt}
            panels:
              panel:
                node: board
                indicators:
                  readout: {kind: lamp, shows: altitude}
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Test
    void lengthRatePausesAndMovesAreTold() throws IOException {
        StringBuilder text = new StringBuilder("time_ms,a,control:gear,control:knob\n");
        for (int i = 0; i <= 1000; i++) {
            int pause = (i > 300 ? 1000 : 0) + (i > 700 ? 5000 : 0);
            text.append(10_000 + i * 40 + pause)
                    .append(',')
                    .append(i)
                    .append(',')
                    .append(i / 500);
            text.append(',').append(-i / 250).append('\n');
        }

        RecordingSummary summary = summary(text.toString());

        assertEquals(46_000_000_000L, summary.lastsNanos());
        assertEquals(10_000_000_000L, summary.firstNanos());
        assertEquals("ms", summary.unit());
        assertEquals(1001, summary.states());
        assertEquals(40e6, summary.periodNanos(), 0.04e6);
        assertEquals(2, summary.pauses());
        assertEquals(
                List.of(new Pause(29_000_000_000L, 5_040_000_000L), new Pause(12_000_000_000L, 1_040_000_000L)),
                summary.longest());
        assertEquals(
                List.of(new ControlSummary("gear", 2, 0, 2), new ControlSummary("knob", 4, -4, 0)), summary.controls());
    }

    @Test
    void figuresOfAColumnAreThoseWorkedOutByHand() throws IOException {
        ColumnSummary column = summary("time,alt [ft]\n0,359.4\n1,359.6\n2,359.6\n3,12\n4,\n10,12.5\n")
                .columns()
                .get(0);

        assertEquals("alt [ft]", column.name());
        assertEquals("ft", column.unit());
        assertEquals(12, column.least());
        assertEquals(359.6, column.greatest());
        assertEquals(3, column.changes());
        assertEquals(0.3, column.perSecond(), 1e-12);
        assertEquals(347.6, column.largestJump());
        assertEquals(0.2, column.smallestStep());
    }

    @ParameterizedTest
    @CsvSource({
        // value at step i of 1000, one a second; what it looks like; whether it wraps
        "still,NEVER_MOVES,false",
        "lamp,SWITCH,false",
        "selector,SWITCH,false",
        "climb,NEEDLE,false",
        "noise,DIGITS,false",
        "rare,DIGITS,false",
        "heading,NEEDLE,true",
        "bearing,NEEDLE,true",
        "jumpy angle,DIGITS,false",
        "transponder,DIGITS,false"
    })
    void eachKindFollowsItsRule(String what, Kind kind, boolean wraps) {
        ColumnFold fold = new ColumnFold(what);
        Random random = new Random(1);
        for (int i = 0; i < 1000; i++) {
            fold.take(
                    switch (what) {
                        case "still" -> 29.92;
                        case "lamp" -> i / 10 % 2;
                        case "selector" -> i / 7 % 12 * 5;
                        case "climb" -> 1000 + i * 2.5;
                        case "noise" -> random.nextDouble();
                        case "rare" -> Math.floorDiv(i, 200) * 0.025 + 118;
                        case "heading" -> i * 3.5 % 360;
                        case "bearing" -> i * 3.5 % 360 - 180;
                        case "jumpy angle" -> random.nextDouble() * 360;
                        case "transponder" -> i < 500 ? 7000 : 2471;
                        default -> throw new AssertionError(what);
                    });
        }

        ColumnSummary column = fold.summary(1_000_000_000_000L);

        assertEquals(kind, column.kind());
        assertEquals(wraps, column.wraps());
    }

    @Test
    void theSignalsWrittenArePartOfAPitAndShowWhatTheRecordingHolds() throws IOException {
        String recording = """
                time,altitude [ft],heading_deg,on,ENG#1 oil (psi),gear,never,known not,altitude_m
                0,12.25,355,0,41.7,0,29.92,,3.7
                1,1184.5,358.5,1,41.8,0,29.92,,361
                2,1830.75,2,0,63.1,0,29.92,,558
                3,2411,5.5,1,64.2,0,29.92,,734.9
                """ + rows(4, 40);

        String signals = SignalsFile.of(summary(recording));

        PitFile.Understood pit =
                assertInstanceOf(PitFile.Understood.class, PitFile.parse("pit.yaml", signals + PIT), () -> signals);
        List<String> told = new ArrayList<>();
        for (Signal signal : pit.pit().signals()) {
            told.add(signal.name() + " <" + signal.column() + "> " + Figures.value(signal.min()) + ".."
                    + Figures.value(signal.max()) + " " + signal.unit() + " by " + Figures.value(signal.resolution())
                    + (signal.wraps() ? " wraps" : "") + " no " + signal.number());
        }
        assertEquals(
                List.of(
                        "altitude <altitude [ft]> 0..2500 ft by 1 no 1",
                        "heading <heading_deg> 0..360 deg by 1 wraps no 2",
                        "on <on> 0..1  by 1 no 3",
                        "ENG 1 oil <ENG#1 oil (psi)> 40..65 psi by 0.1 no 4",
                        "altitude 2 <altitude_m> 0..800 m by 1 no 8"),
                told);
        assertTrue(signals.contains("  # gear: {number: 5, range: 0..1}  # never moves, always 0\n"), signals);
        assertTrue(signals.contains("  # never: {number: 6, range: 0..30}  # never moves, always 29.92\n"), signals);
        assertTrue(signals.contains("  # known not: {number: 7, range: 0..1}  # never moves\n"), signals);
    }

    @Test
    void whateverAColumnHoldsItsSignalCanBeRead() throws IOException {
        double[] figures = {0, -1, 1, 1e-300, 4.9e-324, 1.7e308, -1.7e308, 1764075600.25, 0.1, 1e15, 123456.789, -0.003
        };
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            ColumnFold fold = new ColumnFold("altitude");
            for (int i = 0; i < 2 + random.nextInt(20); i++) {
                double figure = figures[random.nextInt(figures.length)];
                fold.take(random.nextInt(3) == 0 ? figure + random.nextGaussian() : figure);
            }
            ColumnSummary column = fold.summary(1_000_000_000);
            long number = seed;
            RecordingSummary summary =
                    new RecordingSummary("f", 0, 1, "s", 2, 1, 0, List.of(), List.of(column), List.of(), 0, List.of());

            String signals = SignalsFile.of(summary);

            if (column.kind() != Kind.NEVER_MOVES) {
                assertInstanceOf(
                        PitFile.Understood.class,
                        PitFile.parse("pit.yaml", signals + PIT),
                        () -> "seed " + number + "\n" + signals);
            }
            assertTrue(RecordingText.of(summary).contains("altitude"), "seed " + seed);
        }
    }

    @Test
    void niceFiguresAreOneTwoOrFiveTimesAPowerOfTen() {
        assertEquals("0.2", NiceFigures.atMost(0.3).toPlainString());
        assertEquals("0.5", NiceFigures.atLeast(0.3).toPlainString());
        assertEquals("10", NiceFigures.atLeast(5.1).toPlainString());
        assertEquals("5", NiceFigures.atLeast(5).toPlainString());
        assertEquals("50", NiceFigures.atMost(99).toPlainString());
    }

    private static String rows(int from, int to) {
        StringBuilder rows = new StringBuilder();
        for (int i = from; i < to; i++) {
            rows.append(i)
                    .append(",24")
                    .append(10 + i)
                    .append(',')
                    .append(i + 2.5)
                    .append(",0,64.1,0,29.92,,8")
                    .append(i % 10)
                    .append('\n');
        }
        return rows.toString();
    }

    private RecordingSummary summary(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("flight.csv"), text);
        return RecordingFold.of(RecordingFiles.of(file), ReadOptions.strict(), share -> {});
    }
}
