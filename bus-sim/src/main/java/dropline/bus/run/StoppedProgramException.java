package dropline.bus.run;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.core.StoppedException;
import dropline.bus.pit.Node;
import dropline.bus.pit.Program;
import java.util.Locale;
import java.util.Objects;

/** A node's program did what is not modelled, or what no program should: what it would do then is not guessed. */
public final class StoppedProgramException extends RuntimeException {
    private static final long serialVersionUID = 1;

    StoppedProgramException(Node node, Board board, StoppedException stop) {
        super(words(node, board, stop), stop);
    }

    private static String words(Node node, Board board, StoppedException stop) {
        Program program = Objects.requireNonNull(node.program());
        return String.format(
                Locale.ROOT,
                "the program of %s (%s) stopped at %.3f s, in %s: %s",
                node.name(),
                program.image().shortName(),
                board.nanos(stop.cycle()) / 1e9,
                program.image().place(stop.byteAddress()),
                stop.getMessage());
    }
}
