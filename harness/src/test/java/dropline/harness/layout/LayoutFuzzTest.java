package dropline.harness.layout;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

final class LayoutFuzzTest {
    private static final long SEED = 20_261_126L;
    private static final int ROUNDS = 1_500;

    /** Pieces that mean something somewhere. */
    private static final List<String> PIECES = List.of(
            "uint8",
            "digits up to 3",
            "signed 1",
            "float32",
            "0x80",
            "-1",
            "99999999999999999999",
            "start..check",
            "signals",
            "controls",
            "slots: 3",
            "plus: -300",
            "of: frame",
            "escape: 7D",
            "\"\\n\"",
            "[]",
            "{}",
            "~",
            "- ",
            ": ",
            "crc",
            "text",
            "number: hex 8");

    @Test
    void anyTextGivesALayoutThatCanBeTriedOrProblemsWithPlaces() throws IOException {
        List<String> texts = examples();
        Random random = new Random(SEED);
        int understood = 0;
        for (int round = 0; round < ROUNDS; round++) {
            // the sound ones come first
            int which = random.nextBoolean() ? random.nextInt(3) : random.nextInt(texts.size());
            String text = spoilt(texts.get(which), random);
            String note = "seed " + SEED + " round " + round + "\n" + text;
            LayoutFile.Result result;
            try {
                result = LayoutFile.parse("fuzz.yaml", text);
                if (result instanceof LayoutFile.Understood fine) {
                    understood++;
                    Trial trial = new Trial(1, 1, List.of(1L, 2L));
                    assertTrue(!LayoutText.of(fine.protocol(), trial).isEmpty());
                }
            } catch (RuntimeException e) {
                throw new AssertionError(note, e);
            }
            if (result instanceof LayoutFile.Wrong wrong) {
                assertTrue(!wrong.problems().isEmpty(), note);
                assertTrue(wrong.problems().stream().map(Problem::file).allMatch("fuzz.yaml"::equals), note);
            }
        }
        int fine = understood;
        assertTrue(fine > ROUNDS / 50 && fine < ROUNDS, () -> "some must be understood, some not: understood=" + fine);
    }

    private static String spoilt(String text, Random random) {
        StringBuilder spoilt = new StringBuilder(text);
        for (int i = 1 + random.nextInt(3); i > 0; i--) {
            int at = random.nextInt(spoilt.length());
            int end = Math.min(spoilt.length(), at + random.nextInt(12));
            switch (random.nextInt(4)) {
                case 0 -> spoilt.delete(at, end);
                case 1 -> spoilt.insert(at, PIECES.get(random.nextInt(PIECES.size())));
                case 2 -> spoilt.setCharAt(at, (char) (32 + random.nextInt(95)));
                default -> spoilt.replace(at, end, PIECES.get(random.nextInt(PIECES.size())));
            }
        }
        return spoilt.toString();
    }

    private static List<String> examples() throws IOException {
        Path here = Path.of("").toAbsolutePath();
        Path root = Files.isDirectory(here.resolve("docs")) ? here : Objects.requireNonNull(here.getParent());
        List<String> texts = new ArrayList<>();
        for (Path folder : List.of(root.resolve("scenarios/layouts"), root.resolve("docs/problems/layout"))) {
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.sorted().toList()) {
                    if (file.toString().endsWith(".yaml") && !file.endsWith("pit.yaml")) {
                        texts.add(Files.readString(file));
                    }
                }
            }
        }
        return texts;
    }
}
