package dropline.harness.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Panel;
import dropline.harness.problem.Problem;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SheetTest {
    private static final String HEADS = "place;panel;segment;address;board;shows;controls;draws;status;maker of dial\n";

    private static Sheet read(String text) {
        return Sheet.read("panels.csv", text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> kinds(List<Part> parts) {
        return parts.stream().map(p -> p.kind() + "/" + p.name()).toList();
    }

    @Test
    void rowSaysEverythingThatItsCellsSay() {
        Sheet sheet = read(HEADS + "dash, left;Airspeed;front;7;Nano clone;airspeed gauge;;0,12 A;bench;own print\n");

        assertEquals(List.of(), sheet.problems());
        Row row = sheet.rows().get(0);
        assertEquals("dash, left", row.place());
        assertEquals("Airspeed", row.panel());
        assertEquals("front", row.segment());
        assertEquals(OptionalInt.of(7), row.address());
        assertEquals("Nano clone", row.board());
        assertEquals(List.of("gauge stepper/airspeed"), kinds(row.shows()));
        assertEquals(0.12, row.drawsAmps().getAsDouble(), 1e-12);
        assertEquals(Panel.Status.BENCH, row.status());
        assertEquals(List.of("maker of dial: own print"), row.notes());
    }

    @Test
    void orderOfColumnsIsFreeAndMissingOnesAreEmpty() {
        Sheet sheet = read("Status,Panel\nplanned,Clock\n");

        assertEquals("Clock", sheet.rows().get(0).panel());
        assertEquals(Panel.Status.PLANNED, sheet.rows().get(0).status());
        assertTrue(sheet.rows().get(0).address().isEmpty());
    }

    @Test
    void separatorsAndEncodingsOfSpreadsheetProgramsAreUnderstood() {
        List<String> texts = List.of(
                "panel,place\nH\u00F6he,links\n",
                "panel;place\r\nH\u00F6he;links\r\n",
                "panel\tplace\nH\u00F6he\tlinks\n",
                "sep=;\npanel;place\nH\u00F6he;links\n",
                "\n\"panel\";\"place\"\n\"H\u00F6he\";\"links\"");
        List<Charset> charsets = List.of(
                StandardCharsets.UTF_8,
                Charset.forName("windows-1252"),
                StandardCharsets.UTF_16,
                Charset.forName("x-UTF-16LE-BOM"));
        for (String text : texts) {
            for (Charset charset : charsets) {
                Sheet sheet = Sheet.read("panels.csv", text.getBytes(charset));

                assertEquals(List.of(), sheet.problems(), charset + text);
                assertEquals("H\u00F6he", sheet.rows().get(0).panel(), charset + text);
                assertEquals("links", sheet.rows().get(0).place(), charset + text);
            }
        }
    }

    @Test
    void commasInTextDoNotMakeASemicolonFileAComplicatedOne() {
        Sheet sheet = read("panel;shows\nGear;3 lamps, red, green\nTrim;needle, small, white, a, b\n");

        assertEquals(2, sheet.rows().size());
        assertEquals("Trim", sheet.rows().get(1).panel());
    }

    @Test
    void titleAboveTheHeadingsIsPassedOver() {
        Sheet sheet = read("My cockpit;;\n;;\nversion 12;;\npanel;place;address\nClock;dash;3\n");

        assertEquals("Clock", sheet.rows().get(0).panel());
        assertEquals(5, sheet.rows().get(0).line());
    }

    @Test
    void listsOfPartsGiveKindsCountsAndNames() {
        Sheet sheet = read("panel;shows;controls\nGear;3 x gear lamp; \n"
                + "Radio;\"7-segment display (com active), com standby digits / backlight\";"
                + "\"2 encoders, swap button + on-off-on nav light\"\n"
                + "Oil;temperature;master\nFuel;needles x2;-\n");

        assertEquals(
                List.of("lamp/gear 1", "lamp/gear 2", "lamp/gear 3"),
                kinds(sheet.rows().get(0).shows()));
        assertEquals(
                List.of("digits/com active", "digits/com standby", "backlight zone/"),
                kinds(sheet.rows().get(1).shows()));
        assertEquals(
                List.of("encoder/1", "encoder/2", "button/swap", "three-way toggle/nav light"),
                kinds(sheet.rows().get(1).controls()));
        assertEquals(List.of("/temperature"), kinds(sheet.rows().get(2).shows()));
        assertEquals(List.of("/master"), kinds(sheet.rows().get(2).controls()));
        assertEquals(
                List.of("gauge stepper/1", "gauge stepper/2"),
                kinds(sheet.rows().get(3).shows()));
        assertEquals(List.of(), sheet.rows().get(3).controls());
    }

    @Test
    void currentsAreReadInTheUnitsPeopleWrite() {
        Sheet sheet = read("panel;draws (A)\na;0,35\nb;350 mA\nc;~4 W\nd;.\n");

        assertEquals(0.35, sheet.rows().get(0).drawsAmps().getAsDouble(), 1e-12);
        assertEquals(0.35, sheet.rows().get(1).drawsAmps().getAsDouble(), 1e-12);
        assertEquals(4.0 / 12, sheet.rows().get(2).drawsAmps().getAsDouble(), 1e-12);
        assertEquals("BAD_CURRENT", sheet.problems().get(0).code());
        assertEquals(
                0.35, read("panel;draws\na;350\n").rows().get(0).drawsAmps().getAsDouble(), 1e-12);
    }

    @Test
    void rowThatCannotBeUnderstoodIsSaidAndKeptAndTheOthersAreRead() {
        Sheet sheet = read("panel;address;status\nA;300;built\n;5;built\nC;7,0;sold\nD;9;wired\n");

        assertEquals(List.of("D"), sheet.rows().stream().map(Row::panel).toList());
        assertEquals(
                List.of("panels.csv:2:2", "panels.csv:3:1", "panels.csv:4:3"),
                sheet.problems().stream().map(Problem::where).toList());
        assertEquals(
                List.of("BAD_ADDRESS", "NO_PANEL_NAME", "BAD_STATUS"),
                sheet.problems().stream().map(Problem::code).toList());
        assertEquals(List.of("A; 300; built", "; 5; built", "C; 7,0; sold"), sheet.leftOut());
    }

    @Test
    void twoBoardsOfDifferentKindCannotShareAnAddress() {
        Sheet sheet = read("panel;segment;address;board\nA;x;4;Nano\nB;x;4;Mega\nC;x;4;nano\nD;y;4;Mega\n");

        assertEquals(
                List.of("A", "C", "D"), sheet.rows().stream().map(Row::panel).toList());
        assertEquals("ADDRESS_CLASH", sheet.problems().get(0).code());
        assertTrue(
                sheet.problems().get(0).text().contains("line 2"),
                sheet.problems().get(0).text());
    }

    @Test
    void whatIsNoSheetIsOneProblem() {
        assertEquals("NO_TEXT", read("PK\u0003\u0004rest").problems().get(0).code());
        assertEquals("NO_TEXT", read("panel;place\n\u0001").problems().get(0).code());
        assertEquals("NO_HEADINGS", read("a;b;c\n1;2;3\n").problems().get(0).code());
        assertEquals("NO_HEADINGS", read("").problems().get(0).code());
        assertEquals(1, read("a;b;c\n".repeat(100)).problems().size());
    }

    @Test
    void columnsKeptAsNotesAreToldWithWhatTheyMayHaveBeen() {
        Sheet sheet = read("panel;Adress;dial\nClock;4;own\n");

        assertEquals(List.of("Adress (did you mean address?)", "dial"), sheet.notes());
        assertEquals(List.of("Adress: 4", "dial: own"), sheet.rows().get(0).notes());
    }

    @Test
    void onlyTheColumnOfPanelsMustBeThere() {
        assertEquals("Clock", read("Panel\nClock\n").rows().get(0).panel());
    }

    @Test
    void sameAddressInTwoPlacesIsNoClashWhereNoSegmentIsNamed() {
        Sheet sheet = read("panel;place;address;board\nA;left;4;Nano\nB;right;4;Mega\nC;left;4;Mega\n");

        assertEquals(List.of("A", "B"), sheet.rows().stream().map(Row::panel).toList());
    }

    @Test
    void unclosedQuoteLosesNoRowBeforeIt() {
        Sheet sheet = read("panel;place\nA;x\nB;\"y\nC;z\n");

        assertEquals(List.of("A"), sheet.rows().stream().map(Row::panel).toList());
        assertEquals("panels.csv:3", sheet.problems().get(0).where());
        assertEquals("UNREADABLE_ROW", sheet.problems().get(0).code());
        assertEquals(List.of("B; y C;z "), sheet.leftOut());
    }

    @Test
    void anyBytesGiveRowsOrProblemsAndNeverMore() {
        String letters = "panel;place\taddress,\"\r\n0123456789 xX-/\u00E9\u0000()[]=";
        for (long seed = 1; seed <= 3000; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder(random.nextBoolean() ? HEADS : "");
            int length = random.nextInt(200);
            for (int i = 0; i < length; i++) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
            if (random.nextInt(3) == 0 && bytes.length > 0) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            String at = "seed " + seed;
            try {
                Sheet sheet = Sheet.read("panels.csv", bytes);
                assertTrue(sheet.rows().stream().noneMatch(r -> r.panel().isEmpty()), at);
            } catch (RuntimeException e) {
                throw new AssertionError(at + ": " + text, e);
            }
        }
    }
}
