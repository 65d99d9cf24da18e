package dropline.harness.ruling;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.bus.rule.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;

final class RulingTextTest {
    private static final String SAYS = "a page of a standard";

    /** Rules of no standard, for their shapes only. */
    private enum Invented implements Rule {
        LOADS("loads", Unit.UNIT_LOADS, Sense.AT_MOST, Weight.LAW),
        REST("volts at rest", Unit.VOLTS, Sense.AT_LEAST, Weight.LAW),
        REACH("reach", Unit.METRES, Sense.AT_MOST, Weight.GUIDANCE);

        private final String title;
        private final Unit unit;
        private final Sense sense;
        private final Weight weight;

        Invented(String title, Unit unit, Sense sense, Weight weight) {
            this.title = title;
            this.unit = unit;
            this.sense = sense;
            this.weight = weight;
        }

        @Override
        public String title() {
            return title;
        }

        @Override
        public Unit unit() {
            return unit;
        }

        @Override
        public Sense sense() {
            return sense;
        }

        @Override
        public String source() {
            return SAYS;
        }

        @Override
        public Weight weight() {
            return weight;
        }
    }

    private final List<Ruling> rulings = List.of(
            Ruling.of(Invented.LOADS, "front", 19, 32, "each transceiver as stated"),
            Ruling.of(Invented.REST, "front", 0.1714, 0.2, "resistors as fitted."),
            Ruling.of(Invented.REACH, "front", 12.5, 10, "added up"),
            Ruling.unknown(Invented.REACH, "aft", Double.NaN, "nobody said how long it is"));

    @Test
    void rulingsStandInATableWithVerdictValueLimitAndMargin() {
        assertEquals("""
              verdict    rule           where           value            limit           margin
              pass       loads          front   19 unit loads  at most 32 unit loads  +13 unit loads
              FAIL       volts at rest  front          171 mV        at least 200 mV        -28.6 mV
              caution    reach          front          12.5 m           at most 10 m          -2.5 m
              undecided  reach          aft                 -                      -               -
            """.replaceAll("(?m) +", " "), RulingText.table(rulings).replaceAll("(?m) +", " "));
    }

    @Test
    void notesSayWhatARulingRestsOnWhoSaysSoAndWhatToDo() {
        assertEquals("""
              - loads: each transceiver as stated. [a page of a standard]
              ! volts at rest: resistors as fitted. Do it. [a page of a standard]
              ! reach: added up. Do it. [a page of a standard]
              ? reach: nobody said how long it is. Do it. [a page of a standard]
            """, RulingText.notes(rulings, ruling -> "Do it."));
    }

    @Test
    void amountsHaveThreeFiguresAndThePrefixThatSuitsThem() {
        assertEquals("248 mV", Amounts.of(0.2477, Unit.VOLTS));
        assertEquals("1.5 V", Amounts.of(1.5, Unit.VOLTS));
        assertEquals("0 V", Amounts.of(0, Unit.VOLTS));
        assertEquals("-28.6 mV", Amounts.of(-0.0286, Unit.VOLTS));
        assertEquals("1235 ohm", Amounts.of(1234.6, Unit.OHMS));
        assertEquals("96 kohm", Amounts.of(96_000, Unit.OHMS));
        assertEquals("0.8 us", Amounts.of(800e-9, Unit.SECONDS));
        assertEquals("12.5%", Amounts.of(0.125, Unit.SHARE));
        assertEquals("0.07 m", Amounts.of(0.0702, Unit.METRES));
        assertEquals("247", Amounts.of(247, Unit.NUMBER));
        assertEquals("-", Amounts.of(Double.NaN, Unit.OHMS));
    }
}
