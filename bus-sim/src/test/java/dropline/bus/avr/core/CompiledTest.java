package dropline.bus.avr.core;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.DataInputStream;
import java.io.IOException;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * HotSpot never compiles a method of 8,000 bytes of code or more (its option DontCompileHugeMethods, HugeMethodLimit).
 */
final class CompiledTest {
    private static final int HUGE = 8_000;
    private static final int UTF8 = 1;

    @ParameterizedTest
    @ValueSource(classes = {Cpu.class, Flow.class, DataSpace.class, Arithmetic.class})
    void noMethodOfTheProcessorIsTooLongToBeCompiled(Class<?> type) throws IOException {
        int longest = longestCode(type);

        assertTrue(longest > 50, () -> "methods were read: longest=" + longest);
        assertTrue(longest < HUGE, () -> "longest=" + longest);
    }

    /**
     * Bytes of code of the longest method (The Java Virtual Machine Specification, chapter 4, "The class File Format").
     */
    private static int longestCode(Class<?> type) throws IOException {
        String name = type.getSimpleName() + ".class";
        try (DataInputStream in = new DataInputStream(Objects.requireNonNull(type.getResourceAsStream(name)))) {
            in.skipNBytes(8);
            String[] texts = constants(in);
            in.skipNBytes(6);
            in.skipNBytes(2L * in.readUnsignedShort());
            members(in, texts);
            return members(in, texts);
        }
    }

    private static String[] constants(DataInputStream in) throws IOException {
        String[] texts = new String[in.readUnsignedShort()];
        for (int i = 1; i < texts.length; i++) {
            int tag = in.readUnsignedByte();
            switch (tag) {
                case UTF8 -> texts[i] = in.readUTF();
                case 3, 4, 9, 10, 11, 12, 17, 18 -> in.skipNBytes(4);
                case 5, 6 -> {
                    in.skipNBytes(8);
                    i++;
                }
                case 15 -> in.skipNBytes(3);
                default -> in.skipNBytes(2);
            }
        }
        return texts;
    }

    /** Fields or methods; the answer is the longest code among them. */
    private static int members(DataInputStream in, String[] texts) throws IOException {
        int longest = 0;
        int count = in.readUnsignedShort();
        for (int member = 0; member < count; member++) {
            in.skipNBytes(6);
            int attributes = in.readUnsignedShort();
            for (int i = 0; i < attributes; i++) {
                boolean isCode = "Code".equals(texts[in.readUnsignedShort()]);
                int length = in.readInt();
                if (isCode) {
                    in.skipNBytes(4);
                    longest = Math.max(longest, in.readInt());
                    length -= 8;
                }
                in.skipNBytes(length);
            }
        }
        return longest;
    }
}
