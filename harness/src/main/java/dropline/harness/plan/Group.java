package dropline.harness.plan;

import java.util.List;

/**
 * Boards that are to share a segment.
 *
 * @param segment index of the segment of the pit that they get, or that theirs is to be like
 * @param further whether theirs is a further one, like that
 * @param boards by their numbers, ascending
 */
record Group(int segment, boolean further, List<Integer> boards) {
    Group {
        boards = List.copyOf(boards);
    }
}
