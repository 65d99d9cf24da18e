package dropline.harness.recording;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Two recordings read as one, in the order of time: one with states and maybe moves, one with nothing but moves. */
final class MergedReader implements RecordingReader {
    private final Part states;
    private final Part moves;
    private final List<String> controls;
    private final double[] values;

    MergedReader(RecordingReader states, RecordingReader moves) {
        this.states = new Part(states, 0);
        this.moves = new Part(moves, states.controls().size());
        this.controls = new ArrayList<>(states.controls());
        this.controls.addAll(moves.controls());
        this.values = new double[states.columns().size()];
    }

    /** One of the two, and how far it has been taken. */
    private static final class Part {
        final RecordingReader reader;
        final RecordingBlock block = new RecordingBlock();
        final int firstControl;
        int row;
        int move;
        boolean ended;

        Part(RecordingReader reader, int firstControl) {
            this.reader = reader;
            this.firstControl = firstControl;
        }

        /** Reads on where all that was read has been taken. */
        void refill() throws IOException {
            if (!ended && row == block.rows() && move == block.moves()) {
                row = 0;
                move = 0;
                ended = !reader.read(block);
            }
        }

        long rowNanos() {
            return row < block.rows() ? block.rowNanos(row) : Long.MAX_VALUE;
        }

        long moveNanos() {
            return move < block.moves() ? block.moveNanos(move) : Long.MAX_VALUE;
        }

        void takeMove(RecordingBlock into) {
            into.addMove(block.moveNanos(move), firstControl + block.moveControl(move), block.moveValue(move));
            move++;
        }
    }

    @Override
    public boolean read(RecordingBlock block) throws IOException {
        int most = CompactFormat.rowsPerBlock(values.length);
        block.clear(values.length, most);
        while (block.rows() < most && block.moves() < CompactFormat.MOST_MOVES) {
            states.refill();
            moves.refill();
            if (states.ended && moves.ended) {
                break;
            }
            takeNext(block);
        }
        return block.rows() + block.moves() > 0;
    }

    private void takeNext(RecordingBlock block) {
        long row = states.rowNanos();
        if (states.moveNanos() <= Math.min(row, moves.moveNanos()) && states.moveNanos() < Long.MAX_VALUE) {
            states.takeMove(block);
        } else if (moves.moveNanos() <= row) {
            moves.takeMove(block);
        } else {
            for (int column = 0; column < values.length; column++) {
                values[column] = states.block.value(states.row, column);
            }
            block.addRow(row, values);
            states.row++;
        }
    }

    @Override
    public List<RecordingColumn> columns() {
        return states.reader.columns();
    }

    @Override
    public List<String> controls() {
        return List.copyOf(controls);
    }

    /** Those of the recording with nothing but moves. */
    List<String> addedControls() {
        return moves.reader.controls();
    }

    @Override
    public int namesLine() {
        return states.reader.namesLine();
    }

    @Override
    public Optional<TimeUnit> timeUnit() {
        return states.reader.timeUnit();
    }

    @Override
    public long skippedRows() {
        return states.reader.skippedRows() + moves.reader.skippedRows();
    }

    @Override
    public List<String> losses() {
        List<String> losses = new ArrayList<>(states.reader.losses());
        moves.reader.losses().forEach(loss -> losses.add("Controls: " + loss));
        return losses;
    }

    @Override
    public long bytesRead() {
        return states.reader.bytesRead() + moves.reader.bytesRead();
    }

    @Override
    public long bytesTotal() {
        return states.reader.bytesTotal() + moves.reader.bytesTotal();
    }

    @Override
    public void close() throws IOException {
        try {
            states.reader.close();
        } finally {
            moves.reader.close();
        }
    }
}
