package dropline.scenarios.demo;

import dropline.harness.recording.RecordingColumn;
import dropline.harness.recording.RecordingWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;

/** Writes the demo flight: {@code FlightGenerator FILE}. How to run it stands in {@code scenarios/demo/README.md}. */
final class FlightGenerator {

    private FlightGenerator() {}

    /** @param arguments the file to write, ending in {@code .dlr} or {@code .csv} */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException(
                    "one argument must name the file to write: arguments=" + arguments.length);
        }
        write(Path.of(arguments[0]));
    }

    static void write(Path file) throws IOException {
        Flight flight = new Flight();
        List<Columns.Column> columns = Columns.of(flight).list();
        List<RecordingColumn> heads = columns.stream()
                .map(column -> new RecordingColumn(column.name(), column.decimals()))
                .toList();
        try (RecordingWriter writer = RecordingWriter.create(file, heads, movedControls())) {
            fill(writer, flight);
            writer.finish();
        }
    }

    private static void fill(RecordingWriter writer, Flight flight) throws IOException {
        Columns columns = Columns.of(flight);
        double[] values = new double[columns.list().size()];
        flight.begin();
        do {
            for (Cockpit.Move move : flight.cockpit.takeMoves()) {
                writer.move(move.atNanos(), move.control(), move.value());
            }
            columns.read(values);
            writer.row(flight.nanos(), values);
        } while (flight.step());
    }

    /** The names of all controls that are moved during the flight, in alphabetical order. */
    static List<String> movedControls() {
        Flight flight = new Flight();
        TreeSet<String> names = new TreeSet<>();
        flight.begin();
        do {
            flight.cockpit.takeMoves().forEach(move -> names.add(move.control()));
        } while (flight.step());
        return List.copyOf(names);
    }
}
