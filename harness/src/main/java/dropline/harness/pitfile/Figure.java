package dropline.harness.pitfile;

import java.util.List;

/**
 * A figure of hardware or firmware that a pit's timing rests on, wherever it is used: one that ten nodes share is one.
 *
 * @param path what it is of, in words: {@code profile gauge board, reply-gap}
 * @param text as written, without its origin: {@code 300 us}
 * @param where its file, line and column
 * @param segments the names of the segments it bears on, in the order of the pit
 */
public record Figure(String path, String text, Origin origin, String where, List<String> segments) {
    public Figure {
        segments = List.copyOf(segments);
    }
}
