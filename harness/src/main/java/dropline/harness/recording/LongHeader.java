package dropline.harness.recording;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * The first line of a long CSV: which field holds the time, which the name, which the value. Others are passed over.
 *
 * @param fields how many there are
 * @param ofControls whether the names are those of controls
 * @param unit of the time, if the name says so
 */
record LongHeader(
        int fields,
        int time,
        int name,
        int value,
        boolean ofControls,
        @Nullable TimeUnit unit) {

    /**
     * The header that these names make, if they are one: a time, a name and a value, in any order; the first named
     * field is one of them.
     */
    static Optional<LongHeader> of(List<String> names) {
        int time = -1;
        int name = -1;
        int value = -1;
        for (int i = names.size() - 1; i >= 0; i--) {
            String word = names.get(i).strip().toLowerCase(Locale.ROOT);
            time = TimeHeader.isTime(word) ? i : time;
            name = isName(word) ? i : name;
            value = isValue(word) ? i : value;
        }
        int first = 0;
        while (first < names.size() && names.get(first).isBlank()) {
            first++;
        }
        if (time < 0 || name < 0 || value < 0 || first < Math.min(time, Math.min(name, value))) {
            return Optional.empty();
        }
        boolean ofControls = isControl(names.get(name).strip().toLowerCase(Locale.ROOT));
        return Optional.of(
                new LongHeader(names.size(), time, name, value, ofControls, TimeHeader.unit(names.get(time))));
    }

    /** Whether a field of this name, in lower case, holds the name of a signal or of a control. */
    static boolean isName(String word) {
        return word.equals("signal") || word.equals("name") || word.equals("variable") || isControl(word);
    }

    static boolean isControl(String word) {
        return word.equals("control");
    }

    static boolean isValue(String word) {
        return word.equals("value");
    }
}
