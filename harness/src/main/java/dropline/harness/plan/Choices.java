package dropline.harness.plan;

import dropline.bus.clock.BaudStanding;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.harness.plan.Settings.Polling;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * The settings a group's segment can have, in the order in which they are tried: as it is now, polled otherwise, state
 * sent otherwise, and the same at each other rate, from the lowest on, at which every board keeps within 1 % (MODBUS
 * over serial line V1.02, 3.2) and answers no sooner than a character after the question.
 */
final class Choices {
    private final Pit pit;
    private final Boards boards;
    private final List<Integer> usual;

    /** @param usual baud rates to try beside those the pit has */
    Choices(Pit pit, Boards boards, List<Integer> usual) {
        this.pit = pit;
        this.boards = boards;
        this.usual = List.copyOf(usual);
    }

    List<Settings> of(Group group) {
        Segment like = pit.segments().get(group.segment());
        TreeSet<Integer> rates = new TreeSet<>(usual);
        boards.of(group).forEach(board -> rates.add(nowOn(board).baud()));
        rates.remove(like.baud());
        List<Integer> inOrder = new ArrayList<>(List.of(like.baud()));
        inOrder.addAll(rates);
        List<Settings> all = new ArrayList<>();
        for (int baud : inOrder) {
            if (boards.of(group).stream().allMatch(board -> keepsUp(board, baud))) {
                for (StateDelivery state : deliveries(group, like)) {
                    for (Polling polling : Polling.values()) {
                        add(all, group, new Settings(baud, state, polling));
                    }
                }
            }
        }
        return all;
    }

    /** Another polling is another choice only where it asks anybody otherwise. */
    private void add(List<Settings> all, Group group, Settings settings) {
        List<Board> here = boards.of(group);
        boolean other = settings.polling() == Polling.AS_WRITTEN
                || Weights.of(here, settings).entrySet().stream()
                        .anyMatch(weight -> boards.get(weight.getKey()).node().weight() != weight.getValue());
        if (other) {
            all.add(settings);
        }
    }

    private Segment nowOn(Board board) {
        return pit.segments().get(board.segment());
    }

    private boolean keepsUp(Board board, int baud) {
        Segment now = nowOn(board);
        if (baud == now.baud()) {
            return true;
        }
        Profile profile = board.node().profile().at(baud);
        double error = profile.clock(baud).baud() / baud - 1;
        long character = UartClock.exact(baud).charsNanos(now.format(), 1);
        return BaudStanding.of(error) == BaudStanding.GOOD && profile.replyGap().baseNanos() >= character;
    }

    /** What is written first; the other way only where no board's description hangs on it. */
    private List<StateDelivery> deliveries(Group group, Segment like) {
        StateDelivery written = like.controller().state();
        String protocol = like.protocol().name();
        boolean either = protocol.equals("dropline") || protocol.equals("sized");
        boolean mapped =
                boards.of(group).stream().map(Board::node).map(Node::registers).anyMatch(r -> !r.isEmpty());
        if (mapped && written == StateDelivery.BROADCAST) {
            return List.of(StateDelivery.ADDRESSED);
        }
        if (!either) {
            return List.of(written);
        }
        return written == StateDelivery.BROADCAST
                ? List.of(written, StateDelivery.ADDRESSED)
                : List.of(written, StateDelivery.BROADCAST);
    }
}
