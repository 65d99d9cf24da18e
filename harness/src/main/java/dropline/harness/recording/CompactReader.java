package dropline.harness.recording;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** Reads the compact form. Every block stands by itself, so that a damaged one can be left out. */
final class CompactReader implements RecordingReader {
    private final SourceStream source;
    private final boolean lenient;
    private final CompactHeader header;
    private final BlockDecoder decoder;
    private final Inflater inflater = new Inflater();
    private final CRC32 check = new CRC32();
    private final List<String> losses = new ArrayList<>();
    private byte[] packed = new byte[1 << 12];
    private byte[] payload = new byte[1 << 12];
    private long offset;
    private long blocks;
    private long lastNanos = Long.MIN_VALUE;
    private boolean ended;

    CompactReader(SourceStream source, ReadOptions options) throws IOException {
        this.source = source;
        this.lenient = options.lenient();
        this.header = CompactHeader.read(source);
        this.offset = header.length();
        this.decoder =
                new BlockDecoder(header.columns().size(), header.controls().size());
    }

    @Override
    public boolean read(RecordingBlock block) throws IOException {
        while (!ended) {
            int got = fetch(0, CompactFormat.BLOCK_PREFIX);
            if (got < CompactFormat.BLOCK_PREFIX) {
                endTooSoon(got);
            } else if (packed[0] == CompactFormat.END) {
                readEnd(got);
            } else if (readBlock(block)) {
                return true;
            }
        }
        block.clear(header.columns().size(), 0);
        return false;
    }

    /** Reads the rest of a block; whether the block could be filled. */
    private boolean readBlock(RecordingBlock block) throws IOException {
        int packedLength = little(1);
        int payloadLength = little(5);
        if (packed[0] != CompactFormat.BLOCK || tooLong(packedLength) || tooLong(payloadLength)) {
            damaged("neither a block nor the end begins here");
            ended = true;
            return false;
        }
        int rest = packedLength + CompactFormat.CHECK_LENGTH;
        int got = fetch(CompactFormat.BLOCK_PREFIX, rest);
        if (got < rest) {
            endTooSoon(CompactFormat.BLOCK_PREFIX + got);
            return false;
        }
        int length = CompactFormat.BLOCK_PREFIX + packedLength;
        boolean filled = false;
        try {
            mustMatchCheck(length);
            unpack(packedLength, payloadLength);
            decoder.decode(new ByteCursor(payload, payloadLength), block, lastNanos);
            lastNanos = last(block);
            filled = true;
        } catch (DamageException e) {
            damaged(String.valueOf(e.getMessage()));
        }
        offset += length + CompactFormat.CHECK_LENGTH;
        blocks++;
        return filled;
    }

    private void unpack(int packedLength, int payloadLength) throws DamageException {
        if (payload.length < payloadLength) {
            payload = new byte[payloadLength];
        }
        inflater.reset();
        inflater.setInput(packed, CompactFormat.BLOCK_PREFIX, packedLength);
        try {
            int got = inflater.inflate(payload, 0, payloadLength);
            if (got < payloadLength) {
                throw new DamageException("it unpacks to " + got + " bytes in place of " + payloadLength);
            }
        } catch (DataFormatException e) {
            throw new DamageException("it does not unpack");
        }
    }

    private void readEnd(int got) throws IOException {
        int rest = CompactFormat.END_LENGTH - got;
        int more = fetch(got, rest);
        if (more < rest) {
            endTooSoon(got + more);
            return;
        }
        ended = true;
        try {
            mustMatchCheck(CompactFormat.END_LENGTH - CompactFormat.CHECK_LENGTH);
        } catch (DamageException e) {
            damaged(String.valueOf(e.getMessage()));
            return;
        }
        if (losses.isEmpty() && (wide(1) != decoder.rows() || wide(9) != decoder.moves())) {
            damaged("it counts " + wide(1) + " rows and " + wide(9) + " moves, but " + decoder.rows() + " and "
                    + decoder.moves() + " were there");
        }
    }

    private void mustMatchCheck(int length) throws DamageException {
        check.reset();
        check.update(packed, 0, length);
        if ((int) check.getValue() != little(length)) {
            throw new DamageException("its bytes do not match its check");
        }
    }

    /** Notes damage to the block at {@link #offset}, or ends the reading. */
    private void damaged(String found) throws RecordingException {
        if (!lenient) {
            ended = true;
            throw RecordingProblems.one(RecordingProblems.damagedBlock(source.name(), blocks + 1, offset, found));
        }
        losses.add("Block " + (blocks + 1) + ", at byte " + offset + ", was left out: " + found + ".");
    }

    private void endTooSoon(int dropped) {
        ended = true;
        String until = lastNanos == Long.MIN_VALUE
                ? "it holds no whole block"
                : "it is whole up to " + RecordingProblems.seconds(lastNanos);
        losses.add("The recording was cut off before its end: " + until + ", and its last " + dropped
                + " bytes, from byte " + offset + ", are part of a block and were dropped.");
    }

    private static boolean tooLong(int length) {
        return length < 0 || length > CompactFormat.MOST_BLOCK_BYTES;
    }

    private static long last(RecordingBlock block) {
        long row = block.rows() == 0 ? Long.MIN_VALUE : block.rowNanos(block.rows() - 1);
        return block.moves() == 0 ? row : Math.max(row, block.moveNanos(block.moves() - 1));
    }

    /** Reads bytes to a place in {@link #packed}; how many there were. */
    private int fetch(int at, int count) throws IOException {
        if (packed.length < at + count) {
            packed = Arrays.copyOf(packed, at + count);
        }
        return source.readNBytes(packed, at, count);
    }

    private int little(int at) {
        return (int) wide(at, 4);
    }

    private long wide(int at) {
        return wide(at, 8);
    }

    private long wide(int at, int count) {
        long value = 0;
        for (int i = 0; i < count; i++) {
            value |= (packed[at + i] & 0xFFL) << (8 * i);
        }
        return value;
    }

    @Override
    public List<RecordingColumn> columns() {
        return header.columns();
    }

    @Override
    public List<String> controls() {
        return header.controls();
    }

    @Override
    public int namesLine() {
        return 0;
    }

    @Override
    public Optional<TimeUnit> timeUnit() {
        return Optional.empty();
    }

    @Override
    public long skippedRows() {
        return 0;
    }

    @Override
    public List<String> losses() {
        return List.copyOf(losses);
    }

    @Override
    public long bytesRead() {
        return source.bytesRead();
    }

    @Override
    public long bytesTotal() {
        return source.bytesTotal();
    }

    @Override
    public void close() throws IOException {
        inflater.end();
        source.close();
    }
}
