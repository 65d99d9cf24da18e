package dropline.harness.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.harness.pitfile.PitFile;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

final class GrowthTest {
    private static final String TEXT = """
            load: {every: 20 ms, changes: 2}
            profiles: {plain: {replies-from: interrupt, reply-gap: 200 us}}
            signals:
              light: {range: 0..1, number: 1}
              speed: {range: 0..70000, number: 3}
            segments:
              left: {baud: 115200 baud, controller: {adapter: none}}
              right: {baud: 115200 baud, controller: {adapter: none}}
            nodes:
              a: {segment: left, address: 1, profile: plain}
              b: {segment: left, address: 3, profile: plain}
              c: {segment: right, address: 1, profile: plain}
            panels:
              lamps:
                node: a
                indicators: {lamp: {kind: lamp, shows: light}}
                controls: {press: {kind: button, number: 1}}
              readout:
                node: b
                indicators:
                  digits:
                    {kind: digits, shows: speed, refresh-every: 20 ms, refresh-takes: 1 ms, refresh-blocks: nothing}
              other: {node: c, controls: {turn: {kind: encoder, number: 1}}}
            """;

    private static Pit pit() {
        if (PitFile.parse("pit.yaml", TEXT) instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError(PitFile.parse("pit.yaml", TEXT));
    }

    private static Growth growth(Pit pit) {
        return new Growth(pit, 0, Growth.panelsOf(pit.segments().get(0), Aside.NOBODY));
    }

    @Test
    void furtherBoardsTakeTheNextFreeAddressesAndSignalsTheNextFreeNumbers() {
        Pit grown = growth(pit()).by(3).pit();

        List<Node> nodes = grown.segments().get(0).nodes();
        assertEquals(List.of(1, 3, 2, 4, 5), nodes.stream().map(Node::address).toList());
        assertEquals(
                List.of("lamps", "readout", "lamps, copy 1", "readout, copy 1", "lamps, copy 2"),
                nodes.stream().map(node -> node.panels().get(0).name()).toList());
        // speed needs four bytes, and so the numbers 3 and 4 where numbers are registers
        assertEquals(
                List.of(1, 3, 0, 5, 2),
                grown.signals().stream().map(Signal::number).toList());
        assertEquals(5, grown.segments().get(0).nodes().size());
        assertEquals(1, grown.segments().get(1).nodes().size());
    }

    @Test
    void copiesChangeAndMoveWhenTheirOriginalsDo() throws IOException {
        Pit pit = pit();
        Grown grown = growth(pit).by(3);
        StateBlock read = new StateBlock();
        StateBlock played = new StateBlock();
        played.addRow(1);
        played.addChange(0, 1);
        played.addChange(1, 42);
        played.addMove(2, 0, 1);
        played.addMove(3, 1, 7);

        try (Source source = grown.mirror().over(new PlayedOnce(played))) {
            source.feed().fill(read, 10);
        }

        assertEquals(5, read.endChange(0));
        assertEquals(
                List.of(0, 2, 4, 1, 3),
                List.of(read.signal(0), read.signal(1), read.signal(2), read.signal(3), read.signal(4)));
        assertEquals(42, read.value(4));
        // button, its two copies, then the encoder of the segment that did not grow
        assertEquals(4, read.moves());
        assertEquals(
                List.of(0, 1, 2, 3),
                List.of(read.moveControl(0), read.moveControl(1), read.moveControl(2), read.moveControl(3)));
        assertEquals(7, read.moveValue(3));
    }

    @Test
    void aDirectSegmentTakesNoFurtherBoard() {
        String text = TEXT.replace(
                "right: {baud: 115200 baud, controller", "right: {baud: 115200 baud, topology: direct, controller");
        if (PitFile.parse("pit.yaml", text) instanceof PitFile.Understood understood) {
            Pit pit = understood.pit();
            assertEquals(0, new Growth(pit, 1, Growth.panelsOf(pit.segments().get(1), Aside.NOBODY)).most());
            assertEquals(245, growth(pit).most());
        } else {
            throw new AssertionError(PitFile.parse("pit.yaml", text));
        }
    }

    @Test
    void identicalBoardsAreOneKindOfDeadNode() {
        Pit grown = growth(pit()).by(8).pit();

        assertEquals(List.of(0, 1), DeadClasses.of(grown.segments().get(0)));
    }

    @Test
    void theKneeIsWhereACurveBends() {
        List<BaudCurve.Point> bent = List.of(point(0, 20), point(10, 22), point(20, 25), point(22, 60), point(24, 130));
        List<BaudCurve.Point> straight = List.of(point(0, 20), point(10, 40), point(20, 60), point(40, 100));

        assertEquals(20, Knee.of(bent));
        assertEquals(Knee.NONE, Knee.of(straight));
    }

    private static BaudCurve.Point point(int more, long nanos) {
        assertTrue(nanos > 0);
        return new BaudCurve.Point(more, "panel", nanos, nanos, 100, false);
    }
}
