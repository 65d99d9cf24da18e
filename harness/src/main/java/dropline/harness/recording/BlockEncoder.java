package dropline.harness.recording;

/** Puts a stretch of rows and moves into the unpacked bytes of a block, every column by itself. */
final class BlockEncoder {
    private final int columns;
    private final ByteSink out;
    private final double[] values = new double[CompactFormat.MOST_ROWS];
    private final long[] scaled = new long[CompactFormat.MOST_ROWS];

    BlockEncoder(int columns, ByteSink out) {
        this.columns = columns;
        this.out = out;
    }

    void encode(RecordingBlock block) {
        out.clear();
        out.varint(block.rows());
        out.varint(block.moves());
        long last = 0;
        long lastStep = 0;
        for (int row = 0; row < block.rows(); row++) {
            long step = block.rowNanos(row) - last;
            out.signed(step - lastStep);
            last += step;
            lastStep = row == 0 ? 0 : step;
        }
        last = 0;
        for (int move = 0; move < block.moves(); move++) {
            out.signed(block.moveNanos(move) - last);
            out.varint(block.moveControl(move));
            out.signed(block.moveValue(move));
            last = block.moveNanos(move);
        }
        for (int column = 0; column < columns; column++) {
            column(block, column);
        }
    }

    private void column(RecordingBlock block, int column) {
        int rows = block.rows();
        int unknown = 0;
        int decimals = 0;
        for (int row = 0; row < rows; row++) {
            values[row] = block.value(row, column);
            if (Double.isNaN(values[row])) {
                unknown = row + 1;
            } else if (decimals <= Decimals.MOST) {
                decimals = Decimals.needed(values[row], decimals);
            }
        }
        if (unknown == rows) {
            out.u8(CompactFormat.UNKNOWN);
        } else if (scale(unknown, rows, decimals)) {
            wholeNumbers(unknown, rows, decimals);
        } else {
            raw(unknown, rows);
        }
    }

    /** Turns the values into whole numbers of so many decimals, if all of them fit. */
    private boolean scale(int from, int rows, int decimals) {
        if (decimals > Decimals.MOST) {
            return false;
        }
        for (int row = from; row < rows; row++) {
            if (!Decimals.fits(values[row], decimals)) {
                return false;
            }
            scaled[row] = Decimals.scaled(values[row], decimals);
        }
        return true;
    }

    private void wholeNumbers(int unknown, int rows, int decimals) {
        long first = 0;
        long second = 0;
        boolean still = unknown == 0;
        for (int row = unknown + 1; row < rows; row++) {
            long step = scaled[row] - scaled[row - 1];
            long lastStep = row == unknown + 1 ? 0 : scaled[row - 1] - scaled[row - 2];
            still &= step == 0;
            first += ByteSink.signedLength(step);
            second += ByteSink.signedLength(step - lastStep);
        }
        if (still) {
            out.u8(CompactFormat.STILL);
            out.u8(decimals);
            out.signed(scaled[0]);
            return;
        }
        boolean useSecond = second < first;
        out.u8(useSecond ? CompactFormat.SECOND_DIFFERENCES : CompactFormat.FIRST_DIFFERENCES);
        out.u8(decimals);
        out.varint(unknown);
        out.signed(scaled[unknown]);
        long lastStep = 0;
        for (int row = unknown + 1; row < rows; row++) {
            long step = scaled[row] - scaled[row - 1];
            out.signed(useSecond ? step - lastStep : step);
            lastStep = step;
        }
    }

    private void raw(int unknown, int rows) {
        out.u8(CompactFormat.RAW);
        out.varint(unknown);
        for (int row = unknown; row < rows; row++) {
            out.little(Double.doubleToLongBits(values[row]), 8);
        }
    }
}
