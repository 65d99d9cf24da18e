package dropline.bus.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Control;
import org.junit.jupiter.api.Test;

/** Which move a node has seen, going by what it reports. */
final class WiredTest {
    private static Wired wired(Control.Kind kind, int deadBand) {
        return new Wired(new Control("c", kind, 0, 0, 0, deadBand), (at, value, bounce) -> {});
    }

    @Test
    void theNewestMoveThatLeftItSoIsSeen() {
        Wired toggle = wired(Control.Kind.TOGGLE, 0);
        toggle.counted(1, 1);
        toggle.counted(2, 0);
        toggle.counted(3, 1);

        assertEquals(3, toggle.serialOf(1, 0));
        assertEquals(2, toggle.serialOf(0, 0));
        assertEquals(0, toggle.serialOf(0, 2), "that was told already");
    }

    @Test
    void pressesAreCountedAndLettingGoIsNot() {
        Wired button = wired(Control.Kind.BUTTON, 0);

        assertTrue(button.counts(1));
        assertFalse(button.counts(0));
        button.counted(1, 1);
        button.counted(2, 1);
        assertEquals(1, button.serialOf(1, 0));
        assertEquals(2, button.serialOf(2, 1));
    }

    @Test
    void anAxisIsSeenWithinItsDeadBand() {
        Wired axis = wired(Control.Kind.AXIS, 4);

        assertFalse(axis.counts(4));
        assertTrue(axis.counts(100));
        axis.counted(1, 100);
        assertFalse(axis.counts(103));
        assertEquals(1, axis.serialOf(97, 0));
        assertEquals(0, axis.serialOf(95, 0));
    }

    @Test
    void anEncodersCountIsModuloTwoToTheSixteenth() {
        Wired encoder = wired(Control.Kind.ENCODER, 0);
        encoder.counted(1, -1);

        assertEquals(1, encoder.serialOf(0xFFFF, 0));
    }
}
