package dropline.bus.pit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

final class DrawTest {
    private static final Draw STATED = new Draw(30_000, false);
    private static final Draw GUESSED = new Draw(12_000, true);

    @Test
    void sumWithAGuessInItIsAGuess() {
        assertEquals(new Draw(42_000, true), STATED.plus(GUESSED));
        assertEquals(new Draw(42_000, true), GUESSED.plus(STATED));
        assertEquals(new Draw(60_000, false), STATED.plus(STATED));
    }

    @Test
    void sumWithSomethingUnknownInItIsUnknown() {
        assertEquals(Draw.UNKNOWN, STATED.plus(Draw.UNKNOWN));
        assertEquals(Draw.UNKNOWN, Draw.UNKNOWN.plus(GUESSED));
    }

    @Test
    void currentBelowZeroAndGuessAtNothingAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Draw(-2, false));
        assertThrows(IllegalArgumentException.class, () -> new Draw(-1, true));
    }
}
