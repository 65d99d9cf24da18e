package dropline.harness.stream;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Binary datagrams, taken apart as their file says. */
final class DatagramForm implements Form {
    private static final String TIME = "time";
    private static final String COUNTER = "sequence";

    private final DatagramLayout layout;
    private final Map<Part.Signal, Integer> signals = new HashMap<>();
    private final Map<Long, Integer> values = new HashMap<>();
    private byte[] bytes = new byte[0];
    private int length;
    private int at;
    private long index;

    DatagramForm(DatagramLayout layout) {
        this.layout = layout;
    }

    /** What the counter counts modulo; 0 if there is none. */
    long sequenceModulus() {
        for (Part part : layout.parts()) {
            if (part instanceof Part.Counter counter) {
                return 1L << 8 * counter.form().length();
            }
        }
        return 0;
    }

    @Override
    public String words() {
        return "binary, " + layout.file();
    }

    @Override
    public void read(Message message, Fields fields, StateSink sink) throws MalformedException {
        bytes = message.bytes();
        length = message.length();
        at = 0;
        index = 0;
        read(layout.parts(), fields);
        if (at != length) {
            throw new MalformedException((length - at) + " bytes more than its file says");
        }
        sink.take(fields.state());
    }

    private void read(List<Part> parts, Fields fields) throws MalformedException {
        for (Part part : parts) {
            if (length - at < part.leastLength()) {
                throw new MalformedException("it ends too soon, after " + length + " bytes");
            }
            if (part instanceof Part.Repeat repeat) {
                repeat(repeat, fields);
            } else {
                single(part, fields);
                at += part.leastLength();
            }
        }
    }

    private void repeat(Part.Repeat repeat, Fields fields) throws MalformedException {
        int times = repeat.times() == Part.Repeat.TO_THE_END ? Integer.MAX_VALUE : repeat.times();
        for (int i = 0; i < times && !(repeat.times() == Part.Repeat.TO_THE_END && at == length); i++) {
            index = i;
            read(repeat.parts(), fields);
        }
    }

    private void single(Part part, Fields fields) throws MalformedException {
        if (part instanceof Part.Constant constant) {
            mustStandHere(constant);
        } else if (part instanceof Part.Counter counter) {
            fields.number(fields.names().number(COUNTER), counter.form().read(bytes, at, counter.little()));
        } else if (part instanceof Part.Time time) {
            double value = time.form().read(bytes, at, time.little());
            fields.time(fields.names().number(TIME), value, time.unitNanos());
        } else if (part instanceof Part.Signal signal) {
            int name = signals.computeIfAbsent(signal, s -> fields.names().number(s.name()));
            double read = signal.form().read(bytes, at, signal.little());
            fields.number(name, read * signal.scale() + signal.offset());
        } else if (part instanceof Part.Index which) {
            index = (long) which.form().read(bytes, at, which.little());
        } else if (part instanceof Part.Values several) {
            values(several, fields);
        } else if (!(part instanceof Part.Skip)) {
            throw new AssertionError(part);
        }
    }

    private void mustStandHere(Part.Constant constant) throws MalformedException {
        for (int i = 0; i < constant.bytes().length(); i++) {
            if ((bytes[at + i] & 0xFF) != constant.bytes().at(i)) {
                throw new MalformedException(String.format(
                        Locale.ROOT,
                        "byte %d is %02X and not %02X",
                        at + i,
                        bytes[at + i],
                        constant.bytes().at(i)));
            }
        }
    }

    private void values(Part.Values part, Fields fields) {
        for (int i = 0; i < part.count(); i++) {
            long key = index << 16 | i;
            int place = part.count() == 1 ? -1 : i;
            int name = values.computeIfAbsent(key, k -> fields.names().number(name(index, place)));
            double read = part.form().read(bytes, at + i * part.form().length(), part.little());
            fields.number(name, read * part.scale() + part.offset());
        }
    }

    private String name(long group, int place) {
        String number = place < 0 ? Long.toString(group) : group + "." + place;
        String named = layout.names().get(number);
        return named == null ? "v" + number : named;
    }
}
