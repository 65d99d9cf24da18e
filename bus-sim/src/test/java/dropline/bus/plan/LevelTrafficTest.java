package dropline.bus.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.Pits;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class LevelTrafficTest {
    /** Sized frames of 6 characters and 4 a signal; a poll that carries state is such a frame after its 10. */
    @Test
    void oneLevelForNineBoardsGoesOutOnceOrNineTimes() {
        List<Node> nodes = IntStream.rangeClosed(1, 9)
                .mapToObj(n -> Pits.node("n" + n, n, Pits.profile(0), List.of(Pits.lamp(0)), List.of()))
                .toList();
        Pit pit = Pits.pit(
                List.of(Pits.signal(1, false)), Pits.controller(StateDelivery.ADDRESSED, 20 * Pits.MILLI, 1), nodes);

        LevelTraffic traffic = LevelTraffic.of(pit, pit.segments().get(0), List.of(0));

        assertEquals(6 + 4, traffic.broadcast());
        assertEquals(0, traffic.oneByOne() % 9);
        assertEquals(true, traffic.oneByOne() >= 9 * (6 + 4));
    }

    @Test
    void whatNobodyShowsCostsNothing() {
        Node node = Pits.node("n", 1, Pits.profile(0), List.of(Pits.lamp(0)), List.of());
        Pit pit = Pits.pit(
                List.of(Pits.signal(1, false), Pits.signal(2, false)),
                Pits.controller(StateDelivery.BROADCAST, 20 * Pits.MILLI, 1),
                List.of(node));

        assertEquals(new LevelTraffic(0, 0), LevelTraffic.of(pit, pit.segments().get(0), List.of(1)));
    }
}
