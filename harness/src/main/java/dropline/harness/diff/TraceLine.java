package dropline.harness.diff;

import org.jspecify.annotations.Nullable;

/**
 * One event of a trace.
 *
 * @param text its line
 * @param atNanos when, ns since the start of the run
 * @param segment the segment's number
 * @param event its kind, as the trace writes it
 * @param rest its numbers, as written
 */
record TraceLine(String text, long atNanos, int segment, String event, String rest) {

    /** Reads a line; null if it is none. */
    static @Nullable TraceLine read(String text) {
        int first = text.indexOf(' ');
        int second = text.indexOf(' ', first + 1);
        if (first <= 0 || second < 0) {
            return null;
        }
        int third = text.indexOf(' ', second + 1);
        String event = third < 0 ? text.substring(second + 1) : text.substring(second + 1, third);
        String rest = third < 0 ? "" : text.substring(third + 1);
        try {
            long at = Long.parseLong(text.substring(0, first));
            int segment = Integer.parseInt(text.substring(first + 1, second));
            for (String number : rest.isEmpty() ? new String[0] : rest.split(" ", -1)) {
                Long.parseLong(number);
            }
            return event.isEmpty() ? null : new TraceLine(text, at, segment, event, rest);
        } catch (NumberFormatException noNumber) {
            return null;
        }
    }

    /** Its n-th number from 0; 0 where there is none. */
    long number(int index) {
        String[] numbers = rest.split(" ", -1);
        return index < numbers.length && !numbers[index].isEmpty() ? Long.parseLong(numbers[index]) : 0;
    }
}
