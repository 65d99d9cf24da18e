package dropline.bus.run;

import dropline.bus.control.Controls;
import dropline.bus.pit.Layout;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.protocol.Heard;
import dropline.protocol.NodeStatus;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What nodes that are not modelled told in their replies: their controls' states, and how they fare. A control that is
 * moved in the run was seen by its node if that says so; of one that is moved by real hands every change counts.
 */
final class Answered implements Polling.Answers {
    private final EventOrder events;
    private final Wiring wiring;
    private final Controls moved;
    private final int[][] controls;
    private final int[][] numbers;
    private final int[] values;
    private final int[] serials;
    private final Tallies tallies;
    private @Nullable Heard last;
    private long lastStartNanos;

    Answered(Layout layout, Wiring wiring, Controls moved, EventOrder events) {
        this.events = events;
        this.wiring = wiring;
        this.moved = moved;
        List<Layout.ControlPlace> places = layout.controls();
        values = new int[places.size()];
        for (int c = 0; c < values.length; c++) {
            values[c] = moved.value(c) & 0xFFFF;
        }
        serials = new int[places.size()];
        int count = wiring.nodes().length;
        controls = new int[count][];
        numbers = new int[count][];
        for (int n = 0; n < count; n++) {
            controls[n] = wiring.controlsOf(wiring.nodes()[n]);
            numbers[n] = new int[controls[n].length];
            for (int c = 0; c < numbers[n].length; c++) {
                numbers[n][c] = places.get(controls[n][c]).control().number();
            }
        }
        tallies = new Tallies(count);
    }

    /** Takes note of a reply that is about to be heard, and of when it began. */
    void take(Heard reply, long startNanos) {
        last = reply;
        lastStartNanos = startNanos;
    }

    @Override
    public void tell(long atNanos, int position) {
        if (last == null) {
            return;
        }
        for (Heard.Value one : last.controls()) {
            int at = indexOf(numbers[position], one.number());
            if (at < 0) {
                continue;
            }
            int control = controls[position][at];
            if (moved.isWired(control)) {
                moved.reports(control, (int) one.value(), lastStartNanos, atNanos);
            } else if (values[control] != (int) one.value()) {
                values[control] = (int) one.value();
                events.post(atNanos, Rank.TOLD, control, ++serials[control], 0, 0);
            }
        }
    }

    private static int indexOf(int[] numbers, int number) {
        for (int i = 0; i < numbers.length; i++) {
            if (numbers[i] == number) {
                return i;
            }
        }
        return -1;
    }

    @Override
    public void tellStatus(int position, long atNanos) {
        NodeStatus status = last == null ? null : last.status();
        if (status == null) {
            return;
        }
        if (tallies.isNews(position, status, atNanos)) {
            events.post(
                    atNanos,
                    Rank.NODE_STATUS,
                    wiring.nodes()[position],
                    tallies.boots(position),
                    tallies.errors(position),
                    0,
                    0,
                    status.longestLoopUnits() * Tallies.LOOP_UNIT_NANOS,
                    tallies.refreshes(position),
                    0);
        }
    }
}
