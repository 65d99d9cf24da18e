package dropline.harness.recording;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/** Writes the compact form, a block as soon as it is full. */
final class CompactSink implements RowSink {
    private final OutputStream out;
    private final int columns;
    private final int rowsPerBlock;
    private final RecordingBlock block = new RecordingBlock();
    private final ByteSink payload = new ByteSink();
    private final ByteSink record = new ByteSink();
    private final BlockEncoder encoder;
    private final Deflater deflater = new Deflater();
    private final CRC32 check = new CRC32();
    private final byte[] packed = new byte[8192];
    private long rows;
    private long moves;
    private long lastNanos;

    CompactSink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException {
        this.out = out;
        this.columns = columns.size();
        this.rowsPerBlock = CompactFormat.rowsPerBlock(this.columns);
        this.encoder = new BlockEncoder(this.columns, payload);
        block.clear(this.columns, rowsPerBlock);
        writeHeader(columns, controls);
    }

    @Override
    public void row(long atNanos, double[] values) throws IOException {
        block.addRow(atNanos, values);
        rows++;
        lastNanos = atNanos;
        if (block.rows() == rowsPerBlock) {
            writeBlock();
        }
    }

    @Override
    public void move(long atNanos, int control, int value) throws IOException {
        block.addMove(atNanos, control, value);
        moves++;
        lastNanos = atNanos;
        if (block.moves() == CompactFormat.MOST_MOVES) {
            writeBlock();
        }
    }

    @Override
    public void finish() throws IOException {
        writeBlock();
        deflater.end();
        record.clear();
        record.u8(CompactFormat.END);
        record.little(rows, 8);
        record.little(moves, 8);
        record.little(lastNanos, 8);
        writeChecked();
    }

    private void writeHeader(List<RecordingColumn> columns, List<String> controls) throws IOException {
        payload.varint(columns.size());
        for (RecordingColumn column : columns) {
            text(column.name());
            payload.signed(column.decimals());
        }
        payload.varint(controls.size());
        for (String control : controls) {
            text(control);
        }
        for (int i = 0; i < CompactFormat.MAGIC_LENGTH; i++) {
            record.u8(CompactFormat.magic(i));
        }
        record.little(CompactFormat.VERSION, 2);
        record.little(payload.length(), 4);
        record.append(payload.bytes(), payload.length());
        writeChecked();
    }

    private void text(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        payload.varint(bytes.length);
        payload.append(bytes, bytes.length);
    }

    private void writeBlock() throws IOException {
        if (block.rows() + block.moves() == 0) {
            return;
        }
        encoder.encode(block);
        record.clear();
        record.u8(CompactFormat.BLOCK);
        record.little(0, 4);
        record.little(payload.length(), 4);
        deflater.reset();
        deflater.setInput(payload.bytes(), 0, payload.length());
        deflater.finish();
        while (!deflater.finished()) {
            record.append(packed, deflater.deflate(packed));
        }
        int packedLength = record.length() - CompactFormat.BLOCK_PREFIX;
        for (int i = 0; i < 4; i++) {
            record.bytes()[1 + i] = (byte) (packedLength >>> (8 * i));
        }
        writeChecked();
        block.clear(columns, rowsPerBlock);
    }

    /** Writes the record and the CRC-32 of its bytes (CRC-32/ISO-HDLC, that of zip files). */
    private void writeChecked() throws IOException {
        check.reset();
        check.update(record.bytes(), 0, record.length());
        record.little(check.getValue(), CompactFormat.CHECK_LENGTH);
        out.write(record.bytes(), 0, record.length());
    }
}
