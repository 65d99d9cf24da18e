package dropline.harness.stream;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Takes a stream's messages apart. Its form is either told or found out from the first messages, and kept as soon as
 * one of them has yielded a state. Not for use by several threads.
 */
public final class StreamReader {
    private static final int EXAMPLES = 5;

    private final Message message = new Message();
    private final Fields fields = new Fields();
    private final List<String> examples = new ArrayList<>();
    private @Nullable Form form;
    private boolean settled;
    private long malformed;

    private StreamReader(@Nullable Form form) {
        this.form = form;
        this.settled = form != null;
    }

    /** Finds out by itself in which form text is. */
    public static StreamReader guessing() {
        return new StreamReader(null);
    }

    /** Takes datagrams apart as their file says. */
    public static StreamReader of(DatagramLayout layout) {
        return new StreamReader(new DatagramForm(layout));
    }

    /**
     * Takes one message apart. What is malformed is counted; what the message says before its bad place counts.
     *
     * @return whether the message was well formed
     */
    public boolean read(byte[] bytes, int length, StateSink sink) {
        message.set(bytes, length);
        if (message.isBlank() && !(form instanceof DatagramForm)) {
            return true;
        }
        try {
            if (settled && form != null) {
                readAs(form, sink);
            } else {
                guess(sink);
            }
            return true;
        } catch (MalformedException e) {
            malformed++;
            if (examples.size() < EXAMPLES) {
                examples.add(e.getMessage() + ": " + message.shown());
            }
            return false;
        }
    }

    /** Tries what the messages before this one looked like, and then what this one looks like by itself. */
    private void guess(StateSink sink) throws MalformedException {
        Form before = form;
        if (before != null) {
            try {
                readAs(before, sink);
                return;
            } catch (MalformedException e) {
                form = null;
            }
        }
        Form seen = Guess.at(message);
        if (seen == null) {
            throw new MalformedException("binary, and no datagram file says what is in it");
        }
        readAs(seen, sink);
        form = seen;
    }

    private void readAs(Form as, StateSink sink) throws MalformedException {
        fields.state().clear();
        as.read(message, fields, state -> {
            settled = true;
            sink.take(state);
        });
    }

    /** The form in words; null as long as it is not known. */
    public @Nullable String form() {
        return settled && form != null ? form.words() : null;
    }

    /** Names seen so far, numbered in the order of their coming. */
    public int names() {
        return fields.names().size();
    }

    /** The name of a number. */
    public String name(int number) {
        return fields.names().name(number);
    }

    /** How many names are signals: all that have had a value, but for the stream's own time and sequence number. */
    public int signals() {
        return fields.signals();
    }

    /** What the stream's own time is called; null if it says none. */
    public @Nullable String timeName() {
        return fields.names().timeName();
    }

    /** What the stream's own sequence number is called; null if it says none. */
    public @Nullable String sequenceName() {
        return fields.names().sequenceName();
    }

    /** What the sequence number counts modulo; 0 if it has no end. */
    public long sequenceModulus() {
        return form instanceof DatagramForm layout ? layout.sequenceModulus() : 0;
    }

    /** Messages that were not of the stream's form. */
    public long malformed() {
        return malformed;
    }

    /** The first of them, with what is wrong. */
    public List<String> malformedExamples() {
        return List.copyOf(examples);
    }

    /** Fields that were no number and are left out. */
    public long noNumbers() {
        return fields.noNumbers();
    }

    /** The first names of them, each with what stood there. */
    public List<String> noNumberExamples() {
        return fields.examples();
    }

    /** Fields without a name that could be kept. */
    public long nameless() {
        return fields.names().refused();
    }

    /** A message as a person may be shown it. */
    public static String shown(byte[] bytes, int length) {
        Message message = new Message();
        message.set(bytes, length);
        return message.shown();
    }
}
