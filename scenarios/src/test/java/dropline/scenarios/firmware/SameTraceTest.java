package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.frames.DroplineFrame;
import dropline.protocol.frames.DroplineFrames;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a board says, and when, does not depend on how it is run. */
final class SameTraceTest {
    private static final double BIT_NANOS = 4_000;

    /** Two seconds of polls; every character with its instant, and every edge of the driver. */
    private static List<String> trace(String image, long windowNanos, boolean skips) throws IOException {
        Microcontroller chip = Programs.image(Chip.ATMEGA328P, image).on(Chip.ATMEGA328P, Programs.HZ, 0);
        List<String> trace = new ArrayList<>();
        List<String> said = new ArrayList<>();
        chip.port('D').watch((levels, changed, cycle) -> trace.add("pins " + levels + " @" + cycle));
        Counterpart board = new Counterpart(
                chip,
                0,
                new Pin('D', 2),
                BIT_NANOS,
                CharacterFormat.EIGHT_N_ONE,
                (value, good, end) -> said.add(value + " " + good + " @" + end));
        chip.cpu().skipLoops(skips);
        Bytes poll = DroplineFrames.encode(new DroplineFrame.Poll(7, 0, List.of()));
        for (long at = 5_000_000; at < 2_000_000_000L; at += 3_333_333) {
            for (long step = board.board().reachedNanos() + windowNanos; step < at; step += windowNanos) {
                board.advanceTo(step);
            }
            board.advanceTo(at);
            board.say(poll, at);
        }
        trace.addAll(said);
        assertTrue(trace.size() > 5_000, () -> "events=" + trace.size());
        if (skips && windowNanos > 100_000) {
            assertTrue(chip.cpu().skippedCycles() > 0);
        }
        return trace;
    }

    @Test
    void windowsOfEverySizeGiveTheSame() throws IOException {
        List<String> whole = trace("lamps.hex", Long.MAX_VALUE / 2, true);

        assertSame(whole, trace("lamps.hex", 40_000, true));
        assertSame(whole, trace("lamps.hex", 4_000, true));
        assertSame(whole, trace("lamps.hex", 777, true));
    }

    @Test
    void passingOverIdleLoopsChangesNothing() throws IOException {
        assertSame(trace("lamps.hex", 40_000, false), trace("lamps.hex", 40_000, true));
    }

    @Test
    void hexAndElfGiveTheSame() throws IOException {
        assertSame(trace("lamps.hex", 40_000, true), trace("lamps.elf", 40_000, true));
    }

    private static void assertSame(List<String> one, List<String> other) {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
            assertEquals(one.get(i), other.get(i), "event " + i);
        }
        assertEquals(one.size(), other.size());
    }
}
