package dropline.bus.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Node;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Transceiver;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PollPlanTest {
    private static final Profile PROFILE = new Profile(
            Profile.ReplyFrom.LOOP, Distribution.constant(1), 0, 0, 0, 2, 63, List.of(), 0, 0, 0, Transceiver.USUAL);

    @Test
    void weightsArePollsACycleSpreadOverIt() {
        PollPlan plan = new PollPlan(List.of(node("a", 1), node("b", 3), node("c", 2)), controller(0));

        List<Integer> turns = new ArrayList<>();
        List<Integer> rounds = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            turns.add(plan.turn(0));
            rounds.add(plan.roundBegins());
            plan.pass();
        }

        assertEquals(List.of(1, 1, 2, 0, 1, 2, 1, 1, 2, 0, 1, 2), turns);
        assertEquals(List.of(1, 0, 0, 0, 0, 0, 2, 0, 0, 0, 0, 0), rounds);
    }

    @Test
    void nodeThatGivesUpTwiceIsLeftAloneForItsBackOff() {
        PollPlan plan = new PollPlan(List.of(node("a", 1), node("b", 1)), controller(2));

        assertEquals(0, plan.gaveUp(0, 100));
        assertEquals(1100, plan.gaveUp(0, 100));
        assertEquals(1, plan.turn(1099));
        plan.pass();
        assertEquals(0, plan.turn(1100));
    }

    @Test
    void answerForgetsFailures() {
        PollPlan plan = new PollPlan(List.of(node("a", 1)), controller(2));
        plan.gaveUp(0, 100);

        plan.answered(0);

        assertEquals(0, plan.gaveUp(0, 200));
    }

    private static Node node(String name, int weight) {
        return new Node(name, 1, weight, PROFILE, List.of(), List.of());
    }

    private static Controller controller(int backOffAfter) {
        return new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                Controller.StateDelivery.BROADCAST,
                1000,
                0,
                backOffAfter,
                1000,
                0,
                0,
                0,
                0,
                0);
    }
}
