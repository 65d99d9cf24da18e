package dropline.bus.run;

import dropline.bus.avr.board.Board;
import dropline.bus.node.EmulatedNode;
import dropline.bus.wire.Edges;
import dropline.bus.wire.Uart;
import org.jspecify.annotations.Nullable;

/** An emulated board of a segment, and how it is tied to the pair. */
final class EmulatedStation {
    final int position;
    final Board board;
    final Voice voice;
    private final Uart ear;
    private int level = 1;
    private int levelAfter = 1;
    private @Nullable EmulatedNode node;

    EmulatedStation(int position, Board board, Voice voice, Uart ear) {
        this.position = position;
        this.board = board;
        this.voice = voice;
        this.ear = ear;
    }

    /** What its program's pins mean. */
    void stands(EmulatedNode its) {
        node = its;
    }

    /** Whether it is off the pair at an instant. */
    boolean isOff(long atNanos) {
        return node == null || node.isOff(atNanos);
    }

    /** It hears what is known to stand on the pair in a window. */
    void hear(Edges edges, long from, long to) {
        hear(edges, from, to, level);
    }

    private void hear(Edges edges, long from, long to, int before) {
        if (!isOff(from)) {
            levelAfter = edges.tell(from, to, ear, before, board::edge);
            board.heard();
        }
    }

    /** The window is over; if there was news in it, it hears again from where it can still be told otherwise. */
    void reach(Edges edges, long windowFrom, long to, boolean isNews) {
        if (isNews) {
            long from = Math.max(windowFrom, board.openNanos());
            if (from < to) {
                hear(edges, from, to, board.takeBack(from));
            }
        }
        level = levelAfter;
    }
}
