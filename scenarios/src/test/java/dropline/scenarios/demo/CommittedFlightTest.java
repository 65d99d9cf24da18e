package dropline.scenarios.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingBlock;
import dropline.harness.recording.RecordingColumn;
import dropline.harness.recording.RecordingReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The committed recording is the one the generator makes. Compared by content, not by byte: how well a block packs is
 * the Java runtime's affair.
 */
final class CommittedFlightTest {
    private static final Path FLIGHT = Path.of("demo/flight.dlr");

    @Test
    void fileIsAtMostThreeMegabytes() throws IOException {
        assertTrue(
                Files.size(FLIGHT) <= 3_000_000,
                () -> "bytes=" + FLIGHT.toFile().length());
    }

    @Test
    void columnsAndControlsAreTheGenerators() throws IOException {
        List<RecordingColumn> columns = Columns.of(new Flight()).list().stream()
                .map(column -> new RecordingColumn(column.name(), column.decimals()))
                .toList();
        try (RecordingReader reader = RecordingReader.open(FLIGHT, ReadOptions.strict())) {
            assertEquals(columns, reader.columns());
            assertEquals(FlightGenerator.movedControls(), reader.controls());
        }
    }

    @Test
    void everyRowAndEveryMoveIsTheGenerators() throws IOException {
        Flight flight = new Flight();
        Columns columns = Columns.of(flight);
        double[] expected = new double[columns.list().size()];
        List<Cockpit.Move> made = new ArrayList<>();
        List<Cockpit.Move> recorded = new ArrayList<>();
        flight.begin();
        try (RecordingReader reader = RecordingReader.open(FLIGHT, ReadOptions.strict())) {
            RecordingBlock block = new RecordingBlock();
            boolean more = true;
            while (reader.read(block)) {
                for (int row = 0; row < block.rows(); row++) {
                    assertTrue(more, "the flight must last as long as its recording");
                    made.addAll(flight.cockpit.takeMoves());
                    columns.read(expected);
                    checkRow(flight, columns, expected, block, row);
                    more = flight.step();
                }
                addMoves(reader, block, recorded);
            }
            assertFalse(more, "the recording must last as long as the flight");
        }
        assertEquals(made, recorded);
    }

    private static void checkRow(Flight flight, Columns columns, double[] expected, RecordingBlock block, int row) {
        assertEquals(flight.nanos(), block.rowNanos(row));
        for (int column = 0; column < expected.length; column++) {
            String name = columns.list().get(column).name();
            assertEquals(expected[column], block.value(row, column), () -> name + " at " + flight.seconds() + " s");
        }
    }

    private static void addMoves(RecordingReader reader, RecordingBlock block, List<Cockpit.Move> recorded) {
        for (int move = 0; move < block.moves(); move++) {
            recorded.add(new Cockpit.Move(
                    block.moveNanos(move), reader.controls().get(block.moveControl(move)), block.moveValue(move)));
        }
    }
}
