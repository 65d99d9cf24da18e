package dropline.harness.record;

import java.util.List;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * What has come of everything so far. Each message received is read, malformed, late, repeated, dropped or still
 * waiting: {@code received = read + malformed + late + repeated + dropped} when a recording is over.
 *
 * @param unit what a message is called
 * @param form of the stream, in words; null as long as it is not known
 * @param time where the states' times are from, in words
 * @param received messages that reached Dropline
 * @param read messages that were understood, those without a state among them
 * @param malformed messages that were not of the stream's form, or did not come whole
 * @param malformedExamples the first of them
 * @param late messages older than the one before, left out
 * @param repeated messages that came a second time, left out
 * @param dropped messages for which there was no room
 * @param systemDrops messages dropped by the operating system before they reached Dropline; empty where it does not say
 * @param numbered whether the stream carries sequence numbers
 * @param missing numbers of the stream's own that never came to be read
 * @param states states read
 * @param names signals that have had a value
 * @param noNumbers fields left out for being no number
 * @param noNumberExamples the first names of them, each with what stood there
 * @param nameless fields left out for want of a usable name
 * @param jumps how often the stream's own time was set
 * @param outages how often the connection was lost
 * @param forwarded messages passed on
 * @param notForwarded messages that could not be passed on
 * @param lastNanos the last state's time in the recording, ns
 */
public record Tally(
        String unit,
        @Nullable String form,
        String time,
        long received,
        long read,
        long malformed,
        List<String> malformedExamples,
        long late,
        long repeated,
        long dropped,
        OptionalLong systemDrops,
        boolean numbered,
        long missing,
        long states,
        int names,
        long noNumbers,
        List<String> noNumberExamples,
        long nameless,
        long jumps,
        long outages,
        long forwarded,
        long notForwarded,
        long lastNanos) {

    public Tally {
        malformedExamples = List.copyOf(malformedExamples);
        noNumberExamples = List.copyOf(noNumberExamples);
    }
}
