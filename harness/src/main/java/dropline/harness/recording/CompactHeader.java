package dropline.harness.recording;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.zip.CRC32;

/**
 * What a compact recording begins with.
 *
 * @param length its bytes in the file, check included
 */
record CompactHeader(List<RecordingColumn> columns, List<String> controls, int length) {
    CompactHeader {
        columns = List.copyOf(columns);
        controls = List.copyOf(controls);
    }

    static CompactHeader read(SourceStream source) throws IOException {
        try {
            byte[] prefix = whole(source, CompactFormat.HEADER_PREFIX);
            ByteCursor in = new ByteCursor(prefix, prefix.length);
            in.take(CompactFormat.MAGIC_LENGTH);
            int version = (int) in.little(2);
            if (version != CompactFormat.VERSION) {
                throw RecordingProblems.one(RecordingProblems.unknownVersion(source.name(), version));
            }
            long bodyLength = in.little(4);
            if (bodyLength > CompactFormat.MOST_HEADER_BYTES) {
                throw new DamageException(
                        "its length must be at most " + CompactFormat.MOST_HEADER_BYTES + " bytes: " + bodyLength);
            }
            byte[] body = whole(source, (int) bodyLength);
            byte[] check = whole(source, CompactFormat.CHECK_LENGTH);
            mustMatch(prefix, body, new ByteCursor(check, check.length).little(check.length));
            return decode(new ByteCursor(body, body.length), prefix.length + body.length + check.length);
        } catch (DamageException e) {
            throw RecordingProblems.one(RecordingProblems.damagedHeader(source.name(), String.valueOf(e.getMessage())));
        }
    }

    private static CompactHeader decode(ByteCursor in, int length) throws DamageException {
        Set<String> seen = new HashSet<>();
        List<RecordingColumn> columns = new ArrayList<>();
        int columnCount = in.count("columns", CompactFormat.MOST_COLUMNS);
        for (int i = 0; i < columnCount; i++) {
            String name = name(in, "", seen);
            long decimals = in.signed();
            if (decimals < RecordingColumn.AS_IS || decimals > Decimals.MOST) {
                throw new DamageException("decimals must be -1..15: " + decimals);
            }
            columns.add(new RecordingColumn(name, (int) decimals));
        }
        List<String> controls = new ArrayList<>();
        int controlCount = in.count("controls", CompactFormat.MOST_COLUMNS);
        for (int i = 0; i < controlCount; i++) {
            controls.add(name(in, CsvHeader.CONTROL, seen));
        }
        if (in.left() != 0) {
            throw new DamageException(in.left() + " bytes too many");
        }
        return new CompactHeader(columns, controls, length);
    }

    private static String name(ByteCursor in, String kind, Set<String> seen) throws DamageException {
        byte[] bytes = in.take(in.count("a name's bytes", CompactFormat.MOST_HEADER_BYTES));
        String name;
        try {
            name = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new DamageException("a name is not UTF-8");
        }
        if (name.isBlank() || !seen.add(kind + name)) {
            throw new DamageException("a name is blank or stands there twice: '" + name + "'");
        }
        return name;
    }

    private static byte[] whole(SourceStream source, int count) throws IOException, DamageException {
        byte[] bytes = source.readNBytes(count);
        if (bytes.length < count) {
            throw new DamageException("the file ends inside it");
        }
        return bytes;
    }

    private static void mustMatch(byte[] prefix, byte[] body, long stored) throws DamageException {
        CRC32 check = new CRC32();
        check.update(prefix);
        check.update(body);
        if (check.getValue() != stored) {
            throw new DamageException("its bytes do not match its check");
        }
    }
}
