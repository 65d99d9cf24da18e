package dropline.scenarios.record;

import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingBlock;
import dropline.harness.recording.RecordingReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The first states of a recording as a simulator might send them, one message a state: {@code time_ns=0;a=1;b=2}. */
final class FlightStream {
    private FlightStream() {}

    static List<String> of(Path flight, int states) throws IOException {
        List<String> messages = new ArrayList<>();
        RecordingBlock block = new RecordingBlock();
        try (RecordingReader reader = RecordingReader.open(flight, ReadOptions.strict())) {
            while (messages.size() < states && reader.read(block)) {
                for (int row = 0; row < block.rows() && messages.size() < states; row++) {
                    StringBuilder message = new StringBuilder("time_ns=").append(block.rowNanos(row));
                    for (int column = 0; column < reader.columns().size(); column++) {
                        String name = reader.columns().get(column).name();
                        message.append(';').append(name).append('=').append(block.value(row, column));
                    }
                    messages.add(message.toString());
                }
            }
        }
        return messages;
    }
}
