package dropline.harness.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A pit with two lamps on two nodes, a load, and a recording to go with it. */
final class SmallPit {
    /** The reply gap of both nodes, as written. */
    static final String GAP = "100 us + exponential 50 us";

    private SmallPit() {}

    static Path write(Path folder, String updateLimit) throws IOException {
        return Files.writeString(
                folder.resolve("pit.yaml"), """
            pit: Small pit

            host:
              state-rate: as recorded

            load:
              every: 25 ms
              changes: 1

            hubs:
              board: {kind: board, adapter: none}

            profiles:
              plain:
                source: chosen for this test
                replies-from: interrupt
                reply-gap: GAP

            budgets:
              update: LIMIT
              control: 150 ms
              source: chosen for this test

            signals:
              lamp 1: {unit: on/off, range: 0..1, number: 1}
              lamp 2: {unit: on/off, range: 0..1, number: 2}

            segments:
              bus:
                baud: 500 kbaud
                format: 8N1
                protocol: dropline
                controller:
                  hub: board
                  state: broadcast
                  time-out: 2 ms

            nodes:
              node 1: {segment: bus, address: 1, profile: plain}
              node 2: {segment: bus, address: 2, profile: plain}

            panels:
              panel 1:
                node: node 1
                indicators:
                  lamp: {kind: lamp, shows: lamp 1}
              panel 2:
                node: node 2
                indicators:
                  lamp: {kind: lamp, shows: lamp 2}
            """.replace("LIMIT", updateLimit).replace("GAP", GAP));
    }

    static Path recording(Path folder) throws IOException {
        StringBuilder csv = new StringBuilder("time [s],lamp 1,lamp 2\n");
        for (int row = 0; row < 400; row++) {
            csv.append(row / 20).append('.').append(row % 20 < 2 ? "0" : "").append(row % 20 * 5);
            csv.append(',').append(row / 10 % 2).append(',').append(row / 7 % 2).append('\n');
        }
        return Files.writeString(folder.resolve("flight.csv"), csv);
    }
}
