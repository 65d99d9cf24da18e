package dropline.bus.node;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.board.Contacts;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.core.Flash;
import dropline.bus.avr.core.Poke;
import dropline.bus.control.Wired;
import dropline.bus.pit.Control;
import dropline.bus.pit.Control.Kind;
import dropline.bus.pit.Control.Positions;
import dropline.bus.pit.Program.Lead;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What hands do to the pins of a board whose program does nothing; contacts lead to ground. */
final class HandsTest {
    private static final int STAY = 0xCFFF;
    private static final int ADCL = 0x78;
    private static final int ADCSRA = 0x7A;
    private static final int ADMUX = 0x7C;
    private static final long MILLI = 1_000_000;
    private static final long POWER = -100 * MILLI;

    private final Board board = board();
    private final Hands hands = new Hands(new Contacts(board));
    private final List<String> levels = new ArrayList<>();

    private static Board board() {
        Flash flash = new Flash(0x4000);
        flash.set(0, STAY);
        Microcontroller chip = new Microcontroller(Chip.ATMEGA328P, 16_000_000, flash, 0);
        return new Board(chip, 0, null, POWER, new Board.Talk() {
            @Override
            public void enabled(boolean isOn, long cycle) {}

            @Override
            public void begins(int bits, int length, long startCycle, int bitCycles) {}
        });
    }

    private static Lead lead(int... bits) {
        List<Pin> pins = new ArrayList<>();
        for (int bit : bits) {
            pins.add(new Pin('C', bit));
        }
        return new Lead("panel", "part", pins, true);
    }

    private void watch() {
        board.chip()
                .port('C')
                .watch((now, changed, cycle) -> levels.add(
                        Integer.toBinaryString(now & 7 | 8).substring(1) + "@" + board.nanos(cycle) / MILLI));
    }

    private int level(int bit) {
        return board.chip().port('C').level(bit);
    }

    @Test
    void contactsStandAsTheyDoFromPowerOn() {
        Control selector = new Control("s", Kind.SELECTOR, 0, 0, 0, 0, new Positions(3, 5 * MILLI, 3), null, List.of());
        hands.of(selector, lead(0, 1, 2), 0);
        board.advanceTo(POWER + MILLI);

        assertEquals(0, level(0));
        assertEquals(1, level(1));
        assertEquals(1, level(2));
    }

    @Test
    void aSelectorBreaksBeforeItMakes() {
        Control selector = new Control("s", Kind.SELECTOR, 0, 0, 0, 0, new Positions(3, 5 * MILLI, 3), null, List.of());
        Wired.Hand hand = hands.of(selector, lead(0, 1, 2), 0);
        board.advanceTo(0);
        watch();
        hand.move(0, 2, 0);
        board.advanceTo(20 * MILLI);

        assertEquals(List.of("111@0", "011@5"), levels);
    }

    @Test
    void aContactBouncesAndThenStaysWhereItIs() {
        Wired.Hand hand = hands.of(new Control("t", Kind.TOGGLE, 0, 0, 0, 0), lead(0), 0);
        board.advanceTo(0);
        watch();
        hand.move(0, 1, 4 * MILLI);
        board.advanceTo(20 * MILLI);

        assertEquals(5, levels.size(), levels::toString);
        assertTrue(levels.get(4).endsWith("0@4"), levels::toString);
        assertEquals(0, level(0));
    }

    @Test
    void anEncoderGoesThroughFourQuartersAStepEitherWay() {
        Wired.Hand hand = hands.of(new Control("e", Kind.ENCODER, 0, 0, 0, 0), lead(0, 1), 0);
        board.advanceTo(0);
        watch();
        hand.move(0, 1, 0);
        hand.move(MILLI, 0, 0);
        board.advanceTo(100 * MILLI);

        assertEquals(
                List.of("010@0", "000@2", "001@4", "011@6", "001@8", "000@10", "010@12", "011@14"),
                levels.stream().map(level -> level.replaceFirst("^.", "0")).toList(),
                "the second step waits for the first");
    }

    /** The converter's answer for ADC5, single-ended against its supply. */
    private int converted() {
        Poke.write(board.chip().cpu(), ADMUX, 0x45);
        Poke.write(board.chip().cpu(), ADCSRA, 0xC7);
        board.advanceTo(board.reachedNanos() + 2 * MILLI);
        return Poke.read(board.chip().cpu(), ADCL) | Poke.read(board.chip().cpu(), ADCL + 1) << 8;
    }

    @Test
    void anAxisStandsOnTheConvertersScale() {
        Wired.Hand hand = hands.of(new Control("a", Kind.AXIS, 0, 0, 0, 0), lead(5), 0);
        assertEquals(0, converted());
        hand.move(0, 700, 0);
        assertEquals(700, converted());
        hand.move(0, 5_000, 0);
        assertEquals(1023, converted());
        hand.move(0, -1, 0);
        assertEquals(0, converted());
    }
}
