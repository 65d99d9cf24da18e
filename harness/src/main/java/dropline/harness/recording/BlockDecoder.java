package dropline.harness.recording;

/** Takes a block's unpacked bytes apart; believes nothing that they say. */
final class BlockDecoder {
    private final int columns;
    private final int controls;
    private final int mostRows;
    private long rows;
    private long moves;

    BlockDecoder(int columns, int controls) {
        this.columns = columns;
        this.controls = controls;
        this.mostRows = CompactFormat.rowsPerBlock(columns);
    }

    /** Rows decoded so far. */
    long rows() {
        return rows;
    }

    /** Moves decoded so far. */
    long moves() {
        return moves;
    }

    /**
     * Fills the block.
     *
     * @param notBefore the time of the last row or move before this block, ns
     */
    void decode(ByteCursor in, RecordingBlock block, long notBefore) throws DamageException {
        int rowCount = in.count("rows", mostRows);
        int moveCount = in.count("moves", CompactFormat.MOST_MOVES);
        if (rowCount + moveCount == 0) {
            throw new DamageException("it holds nothing");
        }
        block.clear(columns, mostRows);
        times(in, block.times(), rowCount, notBefore);
        moves(in, block, moveCount, notBefore);
        for (int column = 0; column < columns; column++) {
            column(in, block.values(), column, rowCount);
        }
        if (in.left() != 0) {
            throw new DamageException(in.left() + " bytes too many");
        }
        block.rows(rowCount);
        rows += rowCount;
        moves += moveCount;
    }

    private static void times(ByteCursor in, long[] times, int count, long notBefore) throws DamageException {
        long last = 0;
        long lastStep = 0;
        for (int row = 0; row < count; row++) {
            long step = in.signed() + lastStep;
            long time = last + step;
            mustNotRunBackwards(time, row == 0 ? notBefore : last);
            times[row] = time;
            last = time;
            lastStep = row == 0 ? 0 : step;
        }
    }

    private void moves(ByteCursor in, RecordingBlock block, int count, long notBefore) throws DamageException {
        long last = 0;
        for (int move = 0; move < count; move++) {
            long time = last + in.signed();
            mustNotRunBackwards(time, move == 0 ? notBefore : last);
            int control = in.count("control", controls - 1);
            block.addMove(time, control, (int) in.signed());
            last = time;
        }
    }

    private static void mustNotRunBackwards(long time, long notBefore) throws DamageException {
        if (time < notBefore) {
            throw new DamageException("time runs backwards");
        }
    }

    private void column(ByteCursor in, double[] values, int column, int rowCount) throws DamageException {
        int mode = in.u8();
        switch (mode) {
            case CompactFormat.UNKNOWN -> fill(values, column, 0, rowCount, Double.NaN);
            case CompactFormat.STILL -> {
                double power = power(in);
                fill(values, column, 0, rowCount, in.signed() / power);
            }
            case CompactFormat.FIRST_DIFFERENCES, CompactFormat.SECOND_DIFFERENCES ->
                differences(in, values, column, rowCount, mode == CompactFormat.SECOND_DIFFERENCES);
            case CompactFormat.RAW -> raw(in, values, column, rowCount);
            default -> throw new DamageException("a column's form must be 0..4: " + mode);
        }
    }

    private void differences(ByteCursor in, double[] values, int column, int rowCount, boolean second)
            throws DamageException {
        double power = power(in);
        int unknown = in.count("rows without a value", rowCount - 1);
        fill(values, column, 0, unknown, Double.NaN);
        long scaled = in.signed();
        long step = 0;
        int end = rowCount * columns;
        int at = unknown * columns + column;
        values[at] = scaled / power;
        for (at += columns; at < end; at += columns) {
            long read = in.signed();
            step = second ? step + read : read;
            scaled += step;
            values[at] = scaled / power;
        }
    }

    private void raw(ByteCursor in, double[] values, int column, int rowCount) throws DamageException {
        int unknown = in.count("rows without a value", rowCount - 1);
        fill(values, column, 0, unknown, Double.NaN);
        for (int row = unknown; row < rowCount; row++) {
            double value = Double.longBitsToDouble(in.little(8));
            if (!Double.isFinite(value)) {
                throw new DamageException("a value is not finite");
            }
            values[row * columns + column] = value;
        }
    }

    private void fill(double[] values, int column, int fromRow, int toRow, double value) {
        for (int row = fromRow; row < toRow; row++) {
            values[row * columns + column] = value;
        }
    }

    private static double power(ByteCursor in) throws DamageException {
        int decimals = in.u8();
        if (decimals > Decimals.MOST) {
            throw new DamageException("decimals must be 0..15: " + decimals);
        }
        return Decimals.power(decimals);
    }
}
