package dropline.bus.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.Pits;
import dropline.bus.pit.Dimming;
import dropline.bus.pit.Dimming.Curve;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Indicator.Glow;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Motion;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PartCurrentTest {
    private static double share(Kind kind, Curve curve, long value) {
        Indicator indicator = new Indicator(
                "part",
                kind,
                List.of(0),
                0,
                kind.refreshes() ? 20 * Pits.MILLI : 0,
                kind.refreshes() ? Pits.MILLI : 0,
                Blocks.NOTHING,
                Motion.NONE,
                Glow.NONE,
                SupplyPit.active(100, 0),
                new Dimming(curve, 8));
        return PartCurrent.share(indicator, Pits.signal(1, false), value);
    }

    @Test
    void aZoneIsDimmedByItsCurveAndABarByItsLevel() {
        assertEquals(0.25, share(Kind.BACKLIGHT_ZONE, Curve.SQUARE, 500));
        assertEquals(0.125, share(Kind.BACKLIGHT_ZONE, Curve.CUBE, 500));
        assertEquals(0.5, share(Kind.LED_BAR, Curve.SQUARE, 500));
        assertEquals(1, share(Kind.LAMP, Curve.LINEAR, 1000));
        assertEquals(1, share(Kind.DIGITS, Curve.LINEAR, 0));
    }

    @Test
    void whatIsPartlyOnTakesItsPartAboveItsRest() {
        assertEquals(40_000, PartCurrent.microamps(SupplyPit.active(100, 20), 0.25));
        assertEquals(0, PartCurrent.microamps(Draws.UNKNOWN, 1));
    }

    @Test
    void aStartAddsWhatItIsAboveTheUsual() {
        Draws filament = new Draws(SupplyPit.milliamps(80), SupplyPit.milliamps(0), SupplyPit.milliamps(800), 1, false);

        assertEquals(720_000, PartCurrent.startMicroamps(filament));
        assertEquals(0, PartCurrent.startMicroamps(SupplyPit.active(100, 20)));
        assertEquals(new Draw(800_000, false), filament.greatest());
    }

    /**
     * From 1 to 2 of 255 doubles a straight dimmer's brightness; so does 1 to 2 of 100, however many bits there are.
     */
    @Test
    void theCoarsestStepOfADimmerIsNearTheDark() {
        assertEquals(2, new Dimming(Curve.LINEAR, 8).coarsestStep(255));
        assertEquals(2, new Dimming(Curve.LINEAR, 16).coarsestStep(100), 0.002);
        // 1 % and 2 % of full, squared, are 7 and 26 of 65535
        assertEquals(26.0 / 7, new Dimming(Curve.SQUARE, 16).coarsestStep(100));
        assertEquals(1, new Dimming(Curve.LINEAR, 8).coarsestStep(1));
    }
}
