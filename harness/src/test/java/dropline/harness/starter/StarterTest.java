package dropline.harness.starter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Replayed;
import dropline.harness.replay.Source;
import dropline.harness.sheet.Sheet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StarterTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    private Starter.Made made(String sheet) throws IOException {
        Path file = folder.resolve("panels.csv");
        Files.writeString(file, sheet);
        return Starter.fromSheet(folder.resolve("pit"), Sheet.read(file), "panels.csv");
    }

    private Pit pit(String sheet) throws IOException {
        Starter.Made made = made(sheet);
        assertEquals(List.of(), made.problems());
        return Objects.requireNonNull(made.pit());
    }

    private String text() throws IOException {
        return Files.readString(folder.resolve("pit").resolve(Starter.PIT));
    }

    @Test
    void exampleIsReadAndEverySignalAndControlOfItMoves() throws IOException {
        Starter.Made made = Starter.example(folder.resolve("pit"));

        assertEquals(List.of(), made.problems());
        everythingMoves(Objects.requireNonNull(made.pit()));
    }

    private void everythingMoves(Pit pit) throws IOException {
        Path flight = folder.resolve("pit").resolve(Starter.FLIGHT);
        Source.Opening opening =
                () -> Source.recording(RecordingFiles.of(flight), pit, ReadOptions.strict(), 0, PitFeed.TO_THE_END);

        Replayed played = new Replay(pit, opening, 1, 2).run(false, null, Progress.NONE);

        assertEquals(60_020_000_001L, played.durationNanos());
        played.segments().forEach(segment -> {
            segment.panels()
                    .forEach(panel -> panel.slots()
                            .forEach(slot -> assertTrue(
                                    slot.latency().count() > 0,
                                    () -> panel.panel().name() + slot.signal())));
            segment.controls().forEach(control -> assertTrue(control.moves() > 0));
        });
    }

    @Test
    void whatTheSheetLeavesOpenIsMarkedAsAGuess() throws IOException {
        Pit pit = pit("panel;place;shows;controls\nOil;dash;oil pressure;master\n");

        assertEquals("dash", pit.segments().get(0).name());
        Node node = pit.segments().get(0).nodes().get(0);
        assertEquals(1, node.address());
        assertTrue(text().contains("  dash:   # guess: no segment was given\n"), text());
        assertTrue(
                text().contains("board: \"8-bit one UART\"}   # guess: the segment, the address, the board\n"), text());
        assertTrue(text().contains("shows: oil pressure}   # guess: what shows it\n"), text());
        assertTrue(text().contains("{like: toggle switch, number: 1}   # guess: its kind\n"), text());
    }

    @Test
    void whatTheSheetSaysIsTakenAsItStands() throws IOException {
        Pit pit = pit("panel,place,segment,address,board,shows,controls,draws,status,dial\n"
                + "Heading,left,front,12,Mega,heading needle,2 knobs,350 mA,planned,own\n");

        Node node = pit.segments().get(0).nodes().get(0);
        Panel panel = node.panels().get(0);
        Signal heading = pit.signals().get(0);
        assertEquals(12, node.address());
        assertEquals("8-bit four UARTs", node.fitting().board());
        assertEquals(Panel.Status.PLANNED, panel.status());
        assertEquals(350_000, panel.running().microamps());
        assertEquals(2, panel.controls().size());
        assertTrue(heading.wraps());
        assertTrue(text().contains("notes: \"dial: own\""), text());
        // what wraps goes round, so it cannot be a gauge with stops
        assertTrue(text().contains("{like: geared 5 V stepper, shows: heading}"), text());
    }

    @Test
    void panelsWithOneAddressShareABoardAndOthersGetTheNextFreeOne() throws IOException {
        Pit pit = pit("panel;segment;address\nA;x;2\nB;x;\nC;x;2\nD;x;1\nE;x;\n");

        List<Node> nodes = pit.segments().get(0).nodes();
        assertEquals(List.of(2, 3, 1, 4), nodes.stream().map(Node::address).toList());
        assertEquals(
                List.of("A", "C"),
                nodes.get(0).panels().stream().map(Panel::name).toList());
    }

    @Test
    void addressThatALaterRowStatesIsNotGivenAway() throws IOException {
        Pit pit = pit("panel;address;board\nA;;Mega\nB;1;Nano\n");

        List<Node> nodes = pit.segments().get(0).nodes();
        assertEquals(List.of(2, 1), nodes.stream().map(Node::address).toList());
    }

    @Test
    void panelWithoutASegmentGoesWhereMostOfItsPlaceAre() throws IOException {
        Pit pit = pit("panel;place;segment;address\nA;Dash;Radios;1\nB;dash;radios;2\nC;dash;front;1\nD;dash;;\n");

        assertEquals(2, pit.segments().size());
        assertEquals("Radios", pit.segments().get(0).name());
        assertEquals(
                List.of(1, 2, 3),
                pit.segments().get(0).nodes().stream().map(Node::address).toList());
    }

    @Test
    void boardsOfTwoKindsWithOneAddressInDifferentPlacesAreBothKept() throws IOException {
        Pit pit = pit("panel;place;address;board\nA;left;4;Nano\nB;right;4;Mega\n");

        assertEquals(2, pit.segments().size());
    }

    @Test
    void cellsOfSeveralLinesMakeNamesOfOne() throws IOException {
        Pit pit = pit("panel;place;segment\n\"Fuel\nflow\";\"dash,\nleft\";\"bus\none\"\n");

        assertEquals("bus one", pit.segments().get(0).name());
        Panel panel = pit.segments().get(0).nodes().get(0).panels().get(0);
        assertEquals("Fuel flow", panel.name());
        assertEquals("dash, left", panel.place());
    }

    @Test
    void boardsAreKnownByWholeWords() {
        assertEquals("32-bit 48 MHz", BoardGuess.of("STM32 mini").preset());
        assertEquals("32-bit 48 MHz", BoardGuess.of("UNO R4").preset());
        assertEquals("8-bit one UART", BoardGuess.of("Nano clone").preset());
        assertEquals("8-bit four UARTs", BoardGuess.of("ATmega2560 board").preset());
        assertEquals("32-bit radio", BoardGuess.of("ESP32").preset());
        assertEquals(new BoardGuess("8-bit one UART", false), BoardGuess.of("spare"));
    }

    @Test
    void placeWithMorePanelsThanADriverCarriesGetsASecondSegment() throws IOException {
        StringBuilder sheet = new StringBuilder("panel;place\n");
        for (int i = 1; i <= 40; i++) {
            sheet.append("P").append(i).append(";dash\n");
        }

        Pit pit = pit(sheet.toString());

        // TI SLLA272D: 32 unit loads, one of them the controller's
        assertEquals(31, pit.segments().get(0).nodes().size());
        assertEquals("dash 2", pit.segments().get(1).name());
        assertEquals(9, pit.segments().get(1).nodes().size());
    }

    @Test
    void panelWithMoreControlsThanAReplyHoldsIsSpreadOverBoards() throws IOException {
        Pit pit = pit("panel;address;controls\nOverhead;3;45 switches\nDoors;3;2 switches\n");

        assertEquals(4, pit.segments().get(0).nodes().size());
        assertEquals(47, Layout.of(pit).controls().size());
    }

    @Test
    void rowsLeftOutStandAsCommentsInTheFile() throws IOException {
        made("panel;address\nClock;999\nOil;1\n");

        assertTrue(text().contains("#   Clock; 999\n"), text());
    }

    @Test
    void shippedSheetOf31PanelsIsAPitOf31PanelsInWhichEverythingMoves() throws IOException {
        Path here = Path.of("").toAbsolutePath();
        Path root = Files.isDirectory(here.resolve("docs")) ? here : Objects.requireNonNull(here.getParent());
        Sheet sheet = Sheet.read(root.resolve("scenarios/spreadsheet/panels.csv"));
        assertEquals(List.of(), sheet.problems());

        Starter.Made made = Starter.fromSheet(folder.resolve("pit"), sheet, "panels.csv");

        Pit pit = made.pit();
        assertNotNull(pit, () -> made.problems().toString());
        assertEquals(
                31,
                pit.segments().stream()
                        .flatMap(s -> s.nodes().stream())
                        .mapToInt(n -> n.panels().size())
                        .sum());
        everythingMoves(pit);
    }

    @Test
    void anySheetThatIsReadMakesAPitThatIsRead() throws IOException {
        String[] cells = {
            "",
            "a",
            "oil",
            "3 lamps",
            "#7",
            "x: y",
            "\"q\"",
            "- ",
            "true",
            "2 x heading needle",
            "keypad; 4 knobs",
            "lever",
            "12",
            "247",
            "Mega",
            "ESP32",
            "planned",
            "0,5 A",
            "drum",
            "\u00E9t\u00E9",
            "*alias",
            "&anchor",
            "a #b",
            "{flow}",
            "[list]",
            "%x",
            "'",
            "\\",
            "flag + backlight",
            "rotary switch",
            "@"
        };
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            StringBuilder sheet = new StringBuilder("panel\tplace\tsegment\taddress\tboard\tshows\tcontrols\tmine\n");
            for (int row = random.nextInt(8); row >= 0; row--) {
                for (int column = 0; column < 8; column++) {
                    String cell = cells[random.nextInt(cells.length)];
                    sheet.append(column == 0 ? "" : "\t")
                            .append('"')
                            .append(cell.replace("\"", "\"\""))
                            .append('"');
                }
                sheet.append('\n');
            }
            Path file = folder.resolve("panels.csv");
            Files.writeString(file, sheet);
            Sheet read = Sheet.read(file);
            if (!read.rows().isEmpty()) {
                Starter.Made made = Starter.fromSheet(folder.resolve("pit" + seed), read, "panels.csv");
                assertEquals(List.of(), made.problems(), "seed " + seed + "\n" + sheet);
            }
        }
    }
}
