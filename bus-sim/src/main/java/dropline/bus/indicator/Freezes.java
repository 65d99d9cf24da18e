package dropline.bus.indicator;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When indicators are frozen: in such a span nothing new is shown. What refreshes, and a servo with its frames, catches
 * up by itself once the span is over; a lamp or stepper only when it is commanded again. A motion under way goes on to
 * its end.
 */
final class Freezes {
    /** In place of an instant: not shown at all. */
    static final long NEVER = Long.MAX_VALUE;

    private static final Fault[] NONE = {};

    private final Fault[][] spans;
    private final int[] held;

    private Freezes(Fault[][] spans) {
        this.spans = spans;
        held = new int[spans.length];
    }

    /** The freezes among the faults of a segment, or null if there are none. */
    static @Nullable Freezes of(Layout layout, int segment, List<Fault> faults) {
        List<Fault> freezes = new ArrayList<>(faults);
        freezes.removeIf(fault -> fault.kind() != FaultKind.FROZEN_DISPLAY || fault.segment() != segment);
        freezes.sort(Comparator.comparingLong(Fault::fromNanos));
        if (freezes.isEmpty()) {
            return null;
        }
        List<Layout.Slot> slots = layout.slots();
        Fault[][] spans = new Fault[slots.size()][];
        for (int i = 0; i < spans.length; i++) {
            Layout.Slot slot = slots.get(i);
            spans[i] = freezes.stream()
                    .filter(fault -> sameIndicator(slots.get(fault.part()), slot))
                    .toArray(Fault[]::new);
            spans[i] = spans[i].length == 0 ? NONE : spans[i];
        }
        return new Freezes(spans);
    }

    private static boolean sameIndicator(Layout.Slot one, Layout.Slot other) {
        return one.node() == other.node()
                && one.panel().equals(other.panel())
                && one.indicator().equals(other.indicator());
    }

    /**
     * When a value is shown that would be shown at {@code shownNanos}; {@link #NEVER} if not at all.
     *
     * @param again how it is shown again by itself; null for what must be commanded again
     */
    long thawed(int slot, int serial, long shownNanos, @Nullable Refresh again) {
        held[slot] = 0;
        long shown = shownNanos;
        for (Fault span : spans[slot]) {
            if (shown < span.fromNanos()) {
                break;
            }
            if (again != null) {
                shown = span.untilNanos() == Fault.TO_THE_END
                        ? NEVER
                        : Math.max(shown, again.shownNanos(span.untilNanos()));
            } else if (span.spans(shown)) {
                held[slot] = serial;
                return NEVER;
            }
        }
        return shown;
    }

    /** Whether the slot's node has this value, but it has not come to be shown. */
    boolean holds(int slot, int serial) {
        return held[slot] == serial;
    }
}
