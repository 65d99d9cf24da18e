package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Profile;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class OriginsTest {
    private static final String TEXT = PitText.with("profile: 8-bit loop", "profile: gauge board")
                    .replace("speed: 90 deg/s", "speed: about 90 deg/s")
                    .replace("refresh-takes: 2 ms", "refresh-takes: '2 ms, measured 2026-11-20'")
            + """
            profiles:
              gauge board:
                like: 8-bit loop
                reply-gap: about 200..400 us
                boot: preset
                fifo: 3
              nobody's:
                like: 8-bit loop
                boot: about 9 s
            """;

    /** Guesses of the file's own; presets have some too. */
    private static List<Figure> guesses(Figures figures) {
        return figures.of(Origin.GUESSED).stream()
                .filter(figure -> figure.where().startsWith("pit.yaml"))
                .toList();
    }

    @Test
    void anOriginIsTakenOffBeforeTheFigureIsRead() {
        Profile profile = figures(TEXT).pit().segments().get(0).nodes().get(0).profile();

        assertEquals(Distribution.uniform(200_000, 400_000), profile.replyGap());
        assertEquals(2_000_000_000, profile.bootNanos());
    }

    @Test
    void guessesAndMeasurementsAreListedWithWhatTheyAreOfAndWhereTheyBear() {
        Figures figures = figures(TEXT).figures();

        assertEquals(
                List.of(
                        new Figure(
                                "profile gauge board, reply-gap",
                                "200..400 us",
                                Origin.GUESSED,
                                "pit.yaml:27:16",
                                List.of("left")),
                        new Figure(
                                "panel compass, indicator card, speed",
                                "90 deg/s",
                                Origin.GUESSED,
                                "pit.yaml:17:58",
                                List.of("left"))),
                guesses(figures));
        assertEquals(
                List.of("panel speed, indicator readout, refresh-takes"),
                figures.of(Origin.MEASURED).stream().map(Figure::path).toList());
        assertEquals(
                List.of("profile gauge board, fifo", "panel speed, indicator readout, refresh-every"),
                figures.of(Origin.UNSTATED).stream().map(Figure::path).toList());
    }

    @Test
    void presetsFiguresCountOnlyWhereTheyAreUsed() {
        Figures figures = figures(TEXT).figures();

        List<String> presets =
                figures.of(Origin.PRESET).stream().map(Figure::path).toList();
        List<String> guessed =
                figures.of(Origin.GUESSED).stream().map(Figure::path).toList();

        assertEquals(
                1, presets.stream().filter("profile 8-bit loop, ring"::equals).count(), presets::toString);
        assertEquals(
                1, guessed.stream().filter("profile 8-bit loop, boot"::equals).count(), guessed::toString);
        assertEquals(
                0, presets.stream().filter("profile 8-bit loop, fifo"::equals).count(), presets::toString);
        assertEquals(1, presets.stream().filter("profile 32-bit, fifo"::equals).count(), presets::toString);
    }

    @Test
    void aFigureThatManyNodesShareIsOneAndTellsAllItsSegments() {
        String text = TEXT.replace("""
                nodes:
                """, """
                  right: {baud: 500 kbaud, controller: {hub: centre}}
                nodes:
                  c: {segment: right, address: 1, profile: gauge board}
                  d: {segment: right, address: 2, profile: {like: gauge board, ring: 31}}
                """);

        List<Figure> gaps = guesses(figures(text).figures()).stream()
                .filter(f -> f.path().endsWith("reply-gap"))
                .toList();

        assertEquals(1, gaps.size());
        assertEquals(List.of("left", "right"), gaps.get(0).segments());
    }

    @Test
    void aScaledFigureGivesThePitThatWouldBe() {
        Figures figures = figures(TEXT).figures();
        Figure gap = guesses(figures).get(0);

        assertEquals(
                Distribution.uniform(400_000, 800_000),
                figures.scaled(gap, Scale.DOUBLE)
                        .orElseThrow()
                        .segments()
                        .get(0)
                        .nodes()
                        .get(0)
                        .profile()
                        .replyGap());
        assertEquals(
                Optional.of(45.0),
                figures.scaled(guesses(figures).get(1), Scale.HALF)
                        .map(pit ->
                                pit.segments().get(0).nodes().get(0).panels().get(0))
                        .map(panel -> panel.indicators().get(0).motion().ratePerSecond()));
    }

    @Test
    void aScaledFigureThatBreaksARuleGivesNoPit() {
        String text = TEXT.replace("'2 ms, measured 2026-11-20'", "about 30 ms");
        Figures figures = figures(text).figures();
        Figure takes = guesses(figures).get(2);

        assertEquals("panel speed, indicator readout, refresh-takes", takes.path());
        assertEquals(Optional.empty(), figures.scaled(takes, Scale.DOUBLE));
        assertEquals(true, figures.scaled(takes, Scale.HALF).isPresent());
    }

    @ParameterizedTest
    @CsvSource({
        "'280 us, measured 2026-11-31', 27:16, WRONG_TYPE",
        "'280 us, measured yesterday', 27:16, WRONG_TYPE",
        "'280 us, measured', 27:16, WRONG_TYPE",
        "'about 280 us, measured 2026-11-20', 27:16, CONFLICT",
        "about 280, 27:22, MISSING_UNIT",
        "about 280 mm, 27:22, WRONG_UNIT",
        "'280 mm, measured 2026-11-20', 27:16, WRONG_UNIT",
        "about, 27:16, WRONG_TYPE"
    })
    void anOriginThatIsWronglyWrittenSaysWhere(String gap, String where, String code) {
        var problem = PitText.problems(TEXT.replace("about 200..400 us", gap)).get(0);

        assertEquals("pit.yaml:" + where + " " + code, problem.where() + " " + problem.code());
    }

    @Test
    void presetWhereNothingGivesTheFigureIsAProblem() {
        assertEquals("""
                pit.yaml:11:69: boot: MISSING_KEY
                  found:    preset
                  expected: boot: time, 0 ns..1 h; nothing this is like says it
                  fix:      write a figure, such as about your best guess
                """, PitText.message("profile: 8-bit loop", "profile: {reply-gap: 200 us, boot: preset}"));
    }

    @Test
    void aChoiceHasNoOrigin() {
        assertEquals(
                "WRONG_TYPE",
                PitText.problems(PitText.with("address: 1", "address: about 1"))
                        .get(0)
                        .code());
    }

    private static PitFile.Understood figures(String text) {
        PitFile.Result result = PitFile.parse("pit.yaml", text);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString);
    }
}
