package dropline.harness.stream;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** A reader with all the states it has handed on, as maps from names to values. */
final class Heard {
    private final StreamReader reader;
    private final List<TreeMap<String, Double>> states = new ArrayList<>();
    private final List<Long> times = new ArrayList<>();
    private final List<Long> sequence = new ArrayList<>();

    Heard(StreamReader reader) {
        this.reader = reader;
    }

    static Heard guessing(String... messages) {
        Heard heard = new Heard(StreamReader.guessing());
        for (String message : messages) {
            heard.text(message);
        }
        return heard;
    }

    boolean text(String message) {
        return bytes(message.getBytes(StandardCharsets.UTF_8));
    }

    boolean bytes(byte[] bytes) {
        return reader.read(bytes, bytes.length, this::take);
    }

    private void take(State state) {
        TreeMap<String, Double> values = new TreeMap<>();
        for (int i = 0; i < state.count(); i++) {
            values.put(reader.name(state.name(i)), state.value(i));
        }
        states.add(values);
        if (state.timed()) {
            times.add(state.timeNanos());
        }
        if (state.numbered()) {
            sequence.add(state.sequence());
        }
    }

    StreamReader reader() {
        return reader;
    }

    /** As text: {@code {a=1.0}, {a=2.0}}. */
    String states() {
        return states.toString();
    }

    List<Long> times() {
        return times;
    }

    List<Long> sequence() {
        return sequence;
    }
}
