package dropline.harness.stream;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class StreamFuzzTest {
    private static final int SEEDS = 300;
    private static final String MARKS = "\"={}[],;:\n \t\u0000-9e.&*#|>";
    private static final List<String> SEED_TEXTS = List.of(
            "time=1.5,seq=3,altitude=1204.5,gear=on",
            "a;b;c\n1,5;2;3\n",
            "{\"time\": 1, \"a\": {\"b\": [1, 2, true]}, \"c\": \"x\"}",
            "1.5e3,-2,+0.125",
            "order: big\ndatagram:\n  - counter: uint8\n  - repeat: 2\n    of:\n      - values: int16\n"
                    + "        count: 3\n");

    @Test
    void whateverArrivesIsReadOrCountedAsMalformedAndNothingElse() throws DatagramException {
        DatagramLayout layout = DatagramLayout.parse("l.yaml", SEED_TEXTS.get(SEED_TEXTS.size() - 1));
        for (int seed = 0; seed < SEEDS; seed++) {
            Random random = new Random(seed);
            for (StreamReader reader : List.of(StreamReader.guessing(), StreamReader.of(layout))) {
                Heard heard = new Heard(reader);
                int read = 0;
                for (int i = 0; i < 40; i++) {
                    read += heard.bytes(damaged(random)) ? 1 : 0;
                }
                int seen = read;
                int number = seed;
                assertTrue(seen + reader.malformed() == 40, () -> "seed " + number + ": " + seen);
            }
        }
    }

    @Test
    void aDamagedDatagramFileGivesProblemsAndNothingElse() {
        for (int seed = 0; seed < SEEDS * 5; seed++) {
            byte[] text = damaged(new Random(seed));
            try {
                DatagramLayout layout = DatagramLayout.parse("l.yaml", new String(text, StandardCharsets.UTF_8));
                new Heard(StreamReader.of(layout)).bytes(text);
            } catch (DatagramException wrong) {
                int number = seed;
                assertTrue(!wrong.problems().isEmpty(), () -> "seed " + number);
            } catch (RuntimeException | StackOverflowError e) {
                throw new AssertionError("seed " + seed + ": " + new String(text, StandardCharsets.UTF_8), e);
            }
        }
    }

    private static byte[] damaged(Random random) {
        byte[] bytes = SEED_TEXTS.get(random.nextInt(SEED_TEXTS.size())).getBytes(StandardCharsets.UTF_8);
        switch (random.nextInt(4)) {
            case 0 -> random.nextBytes(bytes);
            case 1 -> bytes = java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length + 20));
            default -> {
                for (int i = random.nextInt(6); i > 0; i--) {
                    bytes[random.nextInt(bytes.length)] = (byte) MARKS.charAt(random.nextInt(MARKS.length()));
                }
            }
        }
        return bytes;
    }
}
