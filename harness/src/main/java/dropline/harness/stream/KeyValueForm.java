package dropline.harness.stream;

/**
 * {@code altitude=1204.5, gear=down}: pairs with one mark between them, found by looking at the first message that has
 * more than one pair. A new line parts pairs too.
 */
final class KeyValueForm implements Form {
    /** In this order where two would do equally well: a blank often stands beside another mark. */
    private static final char[] SEPARATORS = {'\n', ';', '&', ',', '\t', ' '};

    private char separator;
    private int lastName = Names.NONE;

    /** How many pairs the text falls into at best, less what would be no pair; 0 if it is not of this form. */
    static int score(Message message) {
        int best = 0;
        for (char separator : SEPARATORS) {
            best = Math.max(best, score(message, separator));
        }
        return best;
    }

    private static int score(Message message, char separator) {
        char[] chars = message.chars();
        int score = 0;
        int from = 0;
        for (int at = 0; at <= message.charCount(); at++) {
            if (at == message.charCount() || chars[at] == separator || chars[at] == '\n') {
                score += pieceScore(chars, from, at);
                from = at + 1;
            }
        }
        return score;
    }

    private static int pieceScore(char[] chars, int from, int to) {
        int equals = 0;
        boolean blank = true;
        for (int i = from; i < to; i++) {
            equals += chars[i] == '=' ? 1 : 0;
            blank &= chars[i] <= ' ';
        }
        return blank ? 0 : equals == 1 ? 1 : -1;
    }

    @Override
    public String words() {
        return "text, key=value";
    }

    @Override
    public void read(Message message, Fields fields, StateSink sink) throws MalformedException {
        char mark = separator == 0 ? bestSeparator(message) : separator;
        char[] chars = message.chars();
        int pairs = 0;
        int from = 0;
        for (int at = 0; at <= message.charCount(); at++) {
            if (at == message.charCount() || chars[at] == mark || chars[at] == '\n') {
                pairs += pair(fields, chars, from, at) ? 1 : 0;
                from = at + 1;
            }
        }
        if (pairs == 0) {
            throw new MalformedException("no key=value in it");
        }
        sink.take(fields.state());
    }

    /** The mark that parts the most pairs; settled as soon as there are two. */
    private char bestSeparator(Message message) {
        char best = '\n';
        int most = score(message, best);
        for (char candidate : SEPARATORS) {
            int score = score(message, candidate);
            if (score > most) {
                most = score;
                best = candidate;
            }
        }
        separator = most > 1 ? best : 0;
        return best;
    }

    private boolean pair(Fields fields, char[] chars, int from, int to) {
        int equals = from;
        while (equals < to && chars[equals] != '=') {
            equals++;
        }
        if (equals == to) {
            return false;
        }
        int start = from;
        while (start < equals && chars[start] <= ' ') {
            start++;
        }
        int end = equals;
        while (end > start && chars[end - 1] <= ' ') {
            end--;
        }
        // Most senders keep an order: the next name is mostly the one that came next the last time.
        int expected = lastName + 1;
        Names names = fields.names();
        lastName = names.is(expected, chars, start, end) ? expected : names.number(chars, start, end);
        value(fields, chars, equals + 1, to);
        return lastName != Names.NONE;
    }

    private void value(Fields fields, char[] chars, int from, int to) {
        int start = from;
        int end = to;
        while (start < end && chars[start] <= ' ') {
            start++;
        }
        while (end > start && chars[end - 1] <= ' ') {
            end--;
        }
        if (end - start >= 2 && chars[start] == '"' && chars[end - 1] == '"') {
            start++;
            end--;
        }
        fields.text(lastName, chars, start, end);
    }
}
