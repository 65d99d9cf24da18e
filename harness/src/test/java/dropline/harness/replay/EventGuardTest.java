package dropline.harness.replay;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceSink;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

final class EventGuardTest {
    private static final long SECOND = 1_000_000_000L;

    private final EventGuard guard = new EventGuard("front", new RunLimit(60 * SECOND, 25, 10));

    @Test
    void asManyEventsInASecondAsAllowedPass() {
        for (int i = 0; i < 10; i++) {
            guard.stateSent(i);
        }
        assertDoesNotThrow(() -> guard.stateSent(SECOND));
    }

    @Test
    void oneMoreStopsTheRunAndSaysWhichLimitItWas() {
        for (int i = 0; i < 10; i++) {
            guard.stateSent(2 * SECOND);
        }

        RunLimitException stopped = assertThrows(RunLimitException.class, () -> guard.stateSent(3 * SECOND - 1));

        String message = String.valueOf(stopped.getMessage());
        assertTrue(message.contains("event limit") && message.contains("segment front"), message);
        assertTrue(message.contains("more than 10 events in one simulated second"), message);
    }

    @Test
    void theEventsOfAWholeRunAreLimitedToo() {
        for (int i = 0; i < 25; i++) {
            guard.stateSent(i * SECOND);
        }

        RunLimitException stopped = assertThrows(RunLimitException.class, () -> guard.stateSent(25 * SECOND));

        assertTrue(String.valueOf(stopped.getMessage()).contains("more than 25 events in all"), stopped::toString);
    }

    @Test
    void everyKindOfEventCountsAndIsHandedOn() {
        List<String> events = names(TraceSink.class.getDeclaredMethods());

        assertEquals(events, names(EventGuard.class.getDeclaredMethods()));
        assertEquals(events, names(Both.class.getDeclaredMethods()));
    }

    private static List<String> names(Method[] methods) {
        List<String> all = Stream.of(TraceSink.class.getDeclaredMethods())
                .map(Method::getName)
                .toList();
        return Arrays.stream(methods)
                .map(Method::getName)
                .filter(all::contains)
                .sorted()
                .toList();
    }
}
