package dropline.protocol.custom;

/** What a length field must say. */
final class LengthCount {
    private LengthCount() {}

    /**
     * The count, before anything is added to it.
     *
     * @param rest characters after the length field
     * @param all characters of all fields
     */
    static long of(Field.Length length, int items, int payload, int rest, int all) {
        return switch (length.counted()) {
            case ITEMS -> items;
            case PAYLOAD -> payload;
            case REST -> rest;
            case FRAME -> all;
        };
    }

    /**
     * Characters of all fields of a frame whose length field says {@code counted}, or -1 where no frame has that
     * length.
     *
     * @param index where the length stands among the fields
     */
    static long frameChars(FrameLayout frame, int index, Field.Length length, long counted) {
        int fixed = frame.fixedChars();
        int each = frame.items().map(Field.Items::eachChars).orElse(0);
        if (counted < 0) {
            return -1;
        }
        return switch (length.counted()) {
            case ITEMS -> fixed + counted * each;
            case PAYLOAD -> fixed + counted;
            case REST -> frame.offset(index) + length.chars() + counted;
            case FRAME -> counted;
        };
    }
}
