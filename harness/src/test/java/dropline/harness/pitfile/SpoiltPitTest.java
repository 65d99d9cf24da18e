package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whatever becomes of the texts of a pit in two files, they are understood or have problems; nothing else happens. */
final class SpoiltPitTest {
    private static final int ROUNDS = 3_000;

    private static final String[] PIECES = {
        "like: gauge",
        "like: second",
        "{like: x}",
        "preset",
        "about ",
        ", measured 2026-11-20",
        "#",
        "\"#\"",
        ": ",
        "[",
        "}",
        "addresses: 1..9",
        "address: 3",
        "include: more.yaml",
        "include: pit.yaml",
        "kinds:",
        "nodes:",
        "panels:",
        "\n",
        "  ",
        "- ",
        "profiles: {second: third, third: second}",
        "8-bit loop",
        "boards:",
        "!!map",
        "&a",
        "*a",
        "\t",
        "\u0000",
        "1..300"
    };

    private static final String MORE = """
            nodes:
              gauges: {like: gauge, addresses: 4..6}
            panels:
              dial: {like: dial, node: gauges, indicators: {"needle #": {shows: heading}}}
            kinds:
              nodes:
                gauge: {segment: left, board: small, transceiver: {unit-load: 1/8}, profile: {boot: about 4 s}}
              panels:
                dial: {place: "number #", indicators: {"needle #": {like: needle}}}
              indicators:
                needle: {kind: gauge stepper, speed: "90 deg/s, measured 2026-11-20", delay: preset}
            boards:
              small: {profile: second, draws: 40 mA}
            profiles:
              first: {like: 8-bit loop, fifo: preset}
              second: {like: first, reply-gap: about 200..300 us}
            """;

    @Test
    void twoSpoiltFilesAreUnderstoodOrHaveProblems() {
        String main = "include: more.yaml\n" + PitText.SMALL;
        String good = MORE.replace(", delay: preset", "");
        assertTrue(
                parse(main, good) instanceof PitFile.Understood,
                () -> parse(main, good).toString());

        int understood = 0;
        for (int seed = 0; seed < ROUNDS; seed++) {
            Random random = new Random(seed);
            String first = random.nextInt(3) == 0 ? spoilt(main, random) : main;
            String second = spoilt(good, random);
            try {
                PitFile.Result result = parse(first, second);
                if (result instanceof PitFile.Wrong wrong) {
                    assertFalse(wrong.problems().isEmpty(), "seed=" + seed);
                    wrong.problems()
                            .forEach(problem -> assertFalse(problem.text().isBlank()));
                } else {
                    understood++;
                }
            } catch (RuntimeException | StackOverflowError | AssertionError e) {
                throw new AssertionError("seed=" + seed + "\n" + first + "---\n" + second, e);
            }
        }
        assertTrue(understood > 0 && understood < ROUNDS, "understood=" + understood);
    }

    private static PitFile.Result parse(String main, String more) {
        Map<String, String> files = Map.of("more.yaml", more, "pit.yaml", main);
        return PitFile.parse("pit.yaml", main, (path, asked, report) -> {
            Optional<String> text = Optional.ofNullable(files.get(path.toString()));
            if (text.isEmpty()) {
                report.at(asked, "include", PitCode.NO_SUCH_FILE, null, null);
            }
            return text;
        });
    }

    private static String spoilt(String text, Random random) {
        StringBuilder spoilt = new StringBuilder(text);
        for (int i = 1 + random.nextInt(3); i > 0; i--) {
            int at = random.nextInt(spoilt.length());
            switch (random.nextInt(4)) {
                case 0 -> spoilt.insert(at, PIECES[random.nextInt(PIECES.length)]);
                case 1 -> spoilt.delete(at, Math.min(spoilt.length(), at + 1 + random.nextInt(8)));
                case 2 -> {
                    int end = Math.min(spoilt.length(), at + 1 + random.nextInt(12));
                    spoilt.replace(at, end, PIECES[random.nextInt(PIECES.length)]);
                }
                default -> {
                    int from = random.nextInt(spoilt.length());
                    spoilt.insert(at, spoilt.substring(from, Math.min(spoilt.length(), from + random.nextInt(60))));
                }
            }
        }
        return spoilt.toString();
    }
}
