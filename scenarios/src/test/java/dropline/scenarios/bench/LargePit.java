package dropline.scenarios.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A pit of 150 panels on six segments, a lamp and a display on each, in which 120 signals change 25 times a second. */
final class LargePit {
    private static final int PANELS = 150;
    private static final int ON_A_SEGMENT = 25;

    private LargePit() {}

    static void write(Path file) throws IOException {
        StringBuilder signals = new StringBuilder("signals:\n");
        StringBuilder hubs = new StringBuilder("hubs:\n");
        StringBuilder segments = new StringBuilder("segments:\n");
        StringBuilder nodes = new StringBuilder("nodes:\n");
        StringBuilder panels = new StringBuilder("panels:\n");
        for (int panel = 0; panel < PANELS; panel++) {
            String segment = "segment " + (panel / ON_A_SEGMENT + 1);
            int address = panel % ON_A_SEGMENT + 1;
            if (address == 1) {
                hubs.append("  hub of ").append(segment).append(": {kind: board, adapter: none}\n");
                segments.append("  " + segment + ": {baud: 250 kbaud, format: 8N1, protocol: dropline,\n")
                        .append("    controller: {hub: hub of " + segment + ", gap: 50 us}}\n");
            }
            signals.append("  gauge %d: {unit: psi, range: 0..100, resolution: 0.5, number: %d}\n"
                    .formatted(panel, 2 * panel + 1));
            signals.append("  lamp %d: {unit: on/off, range: 0..1, number: %d}\n".formatted(panel, 2 * panel + 2));
            nodes.append("  node %d: {segment: %s, address: %d, profile: usual}\n".formatted(panel, segment, address));
            panels.append("""
                      panel %1$d:
                        node: node %1$d
                        indicators:
                          lamp: {kind: lamp, shows: lamp %1$d}
                          value: {kind: digits, shows: gauge %1$d, refresh-every: 50 ms, refresh-takes: 1 ms,
                            refresh-blocks: nothing}
                    """.formatted(panel));
        }
        Files.writeString(
                file,
                """
                pit: A hundred and fifty panels
                host: {state-rate: 25 Hz}
                load: {every: 40 ms, changes: 120}
                profiles:
                  usual: {source: chosen, replies-from: interrupt, reply-gap: 100 us + exponential 50 us,
                    loop-pass: 500 us}
                """ + hubs + signals + segments + nodes + panels.toString().indent(0));
    }
}
