package dropline.harness.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import dropline.harness.link.LoopLink;
import dropline.harness.live.RollCall.Found;
import dropline.harness.live.RollCall.Presence;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.Moves;
import dropline.protocol.FirmwareVersion;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** The pit file says one thing, the boards on the pair another. */
final class RollCallTest {
    private static final long TIME_OUT_NANOS = 20_000_000L;

    private static Pit pit(String protocol, int[] addresses, String... firmwares) {
        StringBuilder text = new StringBuilder("""
                pit: A pair
                host: {state-rate: as recorded}
                hubs:
                  hub: {kind: board, adapter: none}
                budgets: {update: 150 ms, control: 150 ms, source: chosen for this test}
                signals:
                  value: {unit: on/off, range: 0..1, number: 1}
                segments:
                  pair:
                    baud: 115200 baud
                    format: 8N1
                    protocol: %s
                    controller: {hub: hub, state: addressed, time-out: 20 ms, gap: 200 us}
                profiles:
                """.formatted(protocol));
        for (int i = 0; i < addresses.length; i++) {
            text.append("  p").append(i).append(":\n    like: 8-bit loop\n");
            text.append(firmwares[i].isEmpty() ? "" : "    firmware: " + firmwares[i] + "\n");
        }
        text.append("nodes:\n");
        for (int i = 0; i < addresses.length; i++) {
            text.append("  board")
                    .append(i)
                    .append(": {segment: pair, address: ")
                    .append(addresses[i]);
            text.append(", profile: p").append(i).append("}\n");
        }
        text.append("panels:\n");
        for (int i = 0; i < addresses.length; i++) {
            text.append("  panel").append(i).append(":\n    node: board").append(i);
            text.append("\n    indicators:\n      lamp").append(i).append(": {kind: lamp, shows: value}\n");
        }
        PitFile.Result result = PitFile.parse("test", text.toString());
        if (result instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError(result);
    }

    private static List<Found> called(Pit written, Pit wired) throws IOException {
        try (LoopLink link = new LoopLink(wired, 0, 1, List.of(), Moves.none())) {
            RollCall roll = new RollCall(written, 0, link, TIME_OUT_NANOS);
            assertTrue(roll.firstAnswer(2_000_000_000L, link) >= 0);
            return roll.call(20, address -> {});
        }
    }

    @Test
    void whoRunsAnotherFirmwareThanWasMeasuredIsChanged() throws IOException {
        int[] addresses = {5, 7, 9, 11};

        List<Found> found = called(
                pit("dropline", addresses, "1.3", "1.3", "", "1.3"),
                pit("dropline", addresses, "1.4", "1.3", "2.10", ""));

        assertTrue(found.get(0).isChanged());
        assertEquals(new FirmwareVersion(1, 4), found.get(0).firmware());
        assertFalse(found.get(1).isChanged());
        assertFalse(found.get(2).isChanged());
        assertEquals("2.10", Objects.requireNonNull(found.get(2).firmware()).toString());
        // one that does not know its own version may be the one that was measured
        assertFalse(found.get(3).isChanged());
        assertNull(found.get(3).firmware());
    }

    @Test
    void whoIsMissingAndWhoWasNotExpectedIsSaid() throws IOException {
        List<Found> found =
                called(pit("dropline", new int[] {5, 7}, "", ""), pit("dropline", new int[] {5, 12}, "", "3.1"));

        assertEquals(
                List.of(Presence.THERE, Presence.MISSING, Presence.UNEXPECTED),
                found.stream().map(Found::presence).toList());
        assertEquals(12, found.get(2).address());
        assertEquals("3.1", String.valueOf(found.get(2).firmware()));
    }

    @Test
    void aProtocolWithoutTheQuestionIsNotAsked() throws IOException {
        Pit pit = pit("modbus-rtu", new int[] {5, 7}, "1.3", "1.3");

        List<Found> found = called(pit, pit);

        assertEquals(
                List.of(Presence.THERE, Presence.THERE),
                found.stream().map(Found::presence).toList());
        assertNull(found.get(0).firmware());
    }
}
