package dropline.harness.stream;

import org.jspecify.annotations.Nullable;

/** Which form a message seems to have. */
final class Guess {
    private Guess() {}

    /** The form, with nothing learnt yet; null where it is text without any number, or no text. */
    static @Nullable Form at(Message message) {
        if (!message.isText() || message.isBlank()) {
            return null;
        }
        int at = 0;
        while (message.chars()[at] <= ' ') {
            at++;
        }
        if (message.chars()[at] == '{') {
            return new JsonForm();
        }
        return KeyValueForm.score(message) > 0 ? new KeyValueForm() : CsvForm.of(message);
    }
}
