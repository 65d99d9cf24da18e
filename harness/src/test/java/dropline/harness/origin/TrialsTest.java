package dropline.harness.origin;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Replayed;
import dropline.harness.replay.Source;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.Run;
import dropline.harness.verdict.Verdicts;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

final class TrialsTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long LASTS = 30 * SECOND;

    /**
     * A change waits at worst for a reply gap of 3 ms, then for the next refresh, 60 ms, and that takes 31 ms: 94 ms,
     * 97 ms with the gap doubled and 154 ms with the period doubled, so that a limit of 110 ms hangs on the period. The
     * lamp waits for the gap and a poll alone, so that a limit of 4.5 ms hangs on that.
     */
    private static final String TEXT = """
            load: {every: 40 ms, changes: 2}
            signals:
              light: {range: 0..1, number: 1}
              speed: {unit: kt, range: 0..300, number: 2}
            segments:
              left: {baud: 500 kbaud, controller: {adapter: none, time-out: 200 ms, gap: 50 us}}
            profiles:
              slow: {replies-from: interrupt, reply-gap: about 3 ms, boot: about 2 s}
              quick:
                replies-from: interrupt
                reply-gap: 100..150 us
                enable-lead: 2 us
                release-tail: 2 us
                loop-pass: 200 us
                ring: 255
                boot: 500 ms
            nodes:
              a: {segment: left, address: 1, profile: slow}
              b: {segment: left, address: 2, profile: {like: quick, fifo: "3, measured 2026-11-20"}}
            panels:
              lamps:
                node: a
                budget: {update: LAMPS}
                indicators:
                  lamp: {kind: lamp, shows: light}
              readout:
                node: b
                budget: {update: READOUT}
                indicators:
                  digits:
                    kind: digits
                    shows: speed
                    refresh-every: about 60 ms
                    refresh-takes: about 31 ms
                    refresh-blocks: nothing
            """;

    @Test
    void theGuessOnWhichTheVerdictHangsIsTheOneToMeasure() throws IOException {
        RestsOn.Next readout = next("1 s", "110 ms");
        RestsOn.Next lamps = next("4500 us", "2 s");

        assertEquals("panel readout, indicator digits, refresh-every", readout.figure());
        assertEquals(0, readout.asWritten().failing());
        assertEquals(1, assertNotNull(readout.twice()).failing());
        assertEquals("profile slow, reply-gap", lamps.figure());
        assertEquals("3 ms", lamps.written());
        assertEquals("pit.yaml:8:46", lamps.where());
        assertEquals(1, assertNotNull(lamps.twice()).failing());
        assertEquals(0, assertNotNull(lamps.half()).failing());
    }

    @Test
    void theCountsAndWhatWasTriedAreTold() throws IOException {
        RestsOn restsOn = restsOn(text("1 s", "110 ms"), LASTS);

        List<String> sentences = restsOn.sentences();
        assertEquals(
                "Rests on 1 measured, 0 preset, 4 guessed figures and 6 without a stated origin.", sentences.get(0));
        assertTrue(sentences.get(1).startsWith("Measure next: panel readout, indicator digits, refresh-every"));
        // halved, the refresh would not be over before the next; doubled takes is longer than every
        assertTrue(
                sentences.get(2).contains("refresh-every at half")
                        && sentences.get(2).contains("refresh-takes at double"),
                sentences.get(2));
    }

    @Test
    void theTrialIsTheSameWhateverTheNumberOfThreads() throws IOException {
        assertEquals(
                restsOn(text("4500 us", "110 ms"), LASTS, 1, 1).sentences(),
                restsOn(text("4500 us", "110 ms"), LASTS, 1, 3).sentences());
    }

    @Test
    void aPitWithoutGuessesIsOnlyCounted() throws IOException {
        RestsOn restsOn = restsOn(text("1 s", "1 s").replace("about ", ""), LASTS);

        assertNull(restsOn.tried());
        assertEquals(
                List.of("Rests on 1 measured, 0 preset, 0 guessed figures and 10 without a stated origin."),
                restsOn.sentences());
    }

    @Test
    void guessesThatMoveNothingAreSaidToMoveNothing() throws IOException {
        String text = text("1 s", "1 s")
                .replace("about 3 ms", "3 ms")
                .replace("about 60 ms", "60 ms")
                .replace("about 31 ms", "31 ms");
        RestsOn restsOn = restsOn(text, LASTS);

        assertEquals(
                "None of the guesses moves the verdict, whether halved or doubled.",
                restsOn.sentences().get(1));
    }

    @Test
    void aRunShorterThanTheShortestStretchIsTriedWhole() throws IOException {
        RestsOn.Tried tried =
                assertNotNull(restsOn(text("1 s", "110 ms"), SECOND).tried());

        assertEquals(0, tried.fromNanos());
        assertEquals(SECOND, tried.untilNanos());
    }

    private static RestsOn.Next next(String lamps, String readout) throws IOException {
        return assertNotNull(
                assertNotNull(restsOn(text(lamps, readout), LASTS).tried()).next());
    }

    private static String text(String lamps, String readout) {
        return TEXT.replace("LAMPS", lamps).replace("READOUT", readout);
    }

    private static RestsOn restsOn(String text, long lasts) throws IOException {
        return restsOn(text, lasts, 1, 2);
    }

    private static RestsOn restsOn(String text, long lasts, long seed, int threads) throws IOException {
        PitFile.Result read = PitFile.parse("pit.yaml", text);
        PitFile.Understood understood = assertInstanceOf(PitFile.Understood.class, read, read::toString);
        Pit pit = understood.pit();
        Pit.Load load = assertNotNull(pit.load());
        Replayed replayed =
                new Replay(pit, () -> Source.load(pit, load, lasts), seed, threads).run(false, null, Progress.NONE);
        ReplayResult result = new Verdicts(pit, Layout.of(pit))
                .of(
                        new Run("0.1.0", new Recording("load", lasts), seed, replayed.digest(), List.of()),
                        replayed.segments());
        Trials.Stretch stretch = (from, until) -> () -> Source.load(pit, load, until - from);
        return new Trials(pit, understood.figures(), stretch, seed, threads).after(result, Progress.NONE);
    }

    private static <T> T assertNotNull(@org.jspecify.annotations.Nullable T value) {
        org.junit.jupiter.api.Assertions.assertNotNull(value);
        return java.util.Objects.requireNonNull(value);
    }
}
