package dropline.harness.record;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.harness.stream.StreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class StateTimeTest {
    private final StreamReader reader = StreamReader.guessing();
    private final StateTime time = new StateTime();

    @Test
    void withoutATimeOfItsOwnAStreamIsTimedByItsArrival() {
        assertEquals(List.of(0L, 40L, 90L), List.of(at("a=1", 500), at("a=2", 540), at("a=3", 590)));
    }

    @Test
    void itsOwnTimeCountsFromTheFirstState() {
        assertEquals(
                List.of(0L, 40_000_000L, 40_000_000L),
                List.of(at("time=7.1,a=1", 5), at("time=7.14,a=1", 9), at("time=7.14,a=2", 11)));
    }

    @Test
    void aStateThatIsALittleOlderThanTheLastIsLate() {
        assertEquals(
                List.of(0L, 1_000_000_000L, StateTime.LATE, 1_500_000_000L),
                List.of(at("time=1,a=1", 0), at("time=2,a=1", 1), at("time=1.5,a=1", 2), at("time=2.5,a=1", 3)));
        assertEquals(0, time.jumps());
    }

    @Test
    void whereItsOwnTimeIsSetTheClockBridgesTheJump() {
        assertEquals(
                List.of(0L, 40L, 1_000_000_040L, 1_000_000_140L),
                List.of(at("time=900,a=1", 0), at("time=3,a=1", 40), at("time=4,a=1", 60), at("time=5000,a=1", 160)));
        assertEquals(2, time.jumps());
    }

    private long at(String text, long arrivalNanos) {
        List<Long> times = new ArrayList<>();
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        reader.read(bytes, bytes.length, state -> times.add(time.of(state, arrivalNanos)));
        return times.get(0);
    }
}
