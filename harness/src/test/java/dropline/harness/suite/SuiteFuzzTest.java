package dropline.harness.suite;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.ProblemChapter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class SuiteFuzzTest {
    private static final long SEED = 20_261_126L;
    private static final int ROUNDS = 1_500;
    private static final Path SUITE = ProblemChapter.docs().resolve("problems/suite/suite.yaml");

    private static final String SOUND = """
            suite: Lamps
            pit: pit.yaml
            holds: {budgets: yes, cycle: 50 ms}
            runs:
              first flight:
                recording: flight.csv
                from: 1 s
                to: 3 s
                seeds: [1, 2]
              silent:
                recording: flight.csv
                faults: ["dead-node 'alarm board' at 1s for 1s"]
                holds: {controls: no}
            """;

    /** Pieces that mean something somewhere. */
    private static final List<String> PIECES = List.of(
            "for: 60 s",
            "999999999999999999h",
            "0",
            "-1",
            "99999999999999999999",
            "[]",
            "{}",
            "~",
            "- ",
            ": ",
            "\"\\0\"",
            "../",
            "'",
            "at soon",
            "yes",
            "cycle: ");

    @Test
    void anyTextGivesASuiteOrProblems() throws IOException {
        Random random = new Random(SEED);
        int understood = 0;
        for (int round = 0; round < ROUNDS; round++) {
            String text = spoilt(random);
            String note = "seed " + SEED + " round " + round + "\n" + text;
            SuiteFile.Result result;
            try {
                result = SuiteFile.parse("fuzz.yaml", SUITE, text);
            } catch (RuntimeException e) {
                throw new AssertionError(note, e);
            }
            if (result instanceof SuiteFile.Wrong wrong) {
                assertTrue(!wrong.problems().isEmpty(), note);
            } else if (result instanceof SuiteFile.Understood fine) {
                understood++;
                assertTrue(!fine.suite().runs().isEmpty(), note);
            }
        }
        int fine = understood;
        assertTrue(fine > ROUNDS / 50 && fine < ROUNDS, () -> "some must be understood, some not: understood=" + fine);
    }

    private static String spoilt(Random random) {
        StringBuilder spoilt = new StringBuilder(SOUND);
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
}
