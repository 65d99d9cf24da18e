package dropline.bus.indicator;

import dropline.bus.fault.Chance;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Slots whose plans may come to nothing, since their node may restart, or turn out otherwise, since something is wrong
 * with their needle. What they show is decided only when its time has come.
 */
final class StruckSlots {
    private final List<Layout.Slot> slots;
    private final boolean[] struck;
    private final @Nullable Needle[] needles;
    private final List<Jump> jumps = new ArrayList<>();
    private final Plans plans = new Plans();
    private long nextJumpNanos;

    private StruckSlots(Pit pit, Layout layout, int segment, long seed, List<Fault> faults) {
        slots = layout.slots();
        struck = new boolean[slots.size()];
        needles = new Needle[slots.size()];
        for (Fault fault : faults) {
            for (int slot = 0; slot < struck.length; slot++) {
                struck[slot] |= slots.get(slot).segment() == segment && strikes(fault, slot);
            }
        }
        for (int slot = 0; slot < struck.length; slot++) {
            if (struck[slot] && slots.get(slot).indicator().kind().moves()) {
                needles[slot] = Shows.needle(pit, slots.get(slot));
            }
        }
        for (Fault fault : faults) {
            if (fault.segment() == segment && isNeedles(fault)) {
                add(fault, seed);
            }
        }
        findNextJump();
    }

    /** The struck slots of a segment, or null if there are none. */
    static @Nullable StruckSlots of(Pit pit, Layout layout, int segment, long seed, List<Fault> faults) {
        StruckSlots made = new StruckSlots(pit, layout, segment, seed, faults);
        for (boolean one : made.struck) {
            if (one) {
                return made;
            }
        }
        return null;
    }

    private static boolean isNeedles(Fault fault) {
        return fault.kind().strikes() == Strikes.INDICATOR && fault.kind() != FaultKind.FROZEN_DISPLAY;
    }

    private boolean strikes(Fault fault, int slot) {
        return switch (fault.kind().strikes()) {
            case NODE, NODE_AND_OTHER -> fault.node() == slots.get(slot).node();
            case SEGMENT ->
                fault.kind() == FaultKind.BROWN_OUT
                        && fault.segment() == slots.get(slot).segment();
            case INDICATOR -> isNeedles(fault) && fault.part() == slot;
            case CONTROL, HOST -> false;
        };
    }

    private void add(Fault fault, long seed) {
        int slot = fault.part();
        Layout.Slot place = slots.get(slot);
        String struckName = place.panel().name() + "/" + place.indicator().name();
        Needle needle = needles[slot];
        if (needle == null || !fault.kind().canStrike(place.indicator().kind())) {
            throw new IllegalArgumentException("a fault of needles strikes only what moves: kind=" + fault.kind()
                    + " indicator=" + struckName + " is=" + place.indicator().kind());
        }
        boolean signed = fault.kind() == FaultKind.LOST_ZERO || fault.kind() == FaultKind.NEEDLE_SLIPPED;
        if (signed ? fault.amount() == 0 : fault.amount() <= 0) {
            throw new IllegalArgumentException("a needle must be off by something: kind=" + fault.kind() + " indicator="
                    + struckName + " amount=" + fault.amount());
        }
        if (fault.kind() == FaultKind.LOST_STEPS) {
            needle.loses(fault.amount(), new Chance(fault, seed, struckName));
        } else if (fault.kind() == FaultKind.STICKING_NEEDLE) {
            needle.sticks(fault);
        } else {
            Jump jump = new Jump(slot, fault, seed, struckName);
            if (jump.nextNanos() == 0) {
                needle.startOff(jump.units());
                jump.pass();
            }
            jumps.add(jump);
        }
    }

    /** Whether what a slot shows is decided here. */
    boolean has(int slot) {
        return struck[slot];
    }

    /** A slot's node has a value at an instant. */
    void apply(int slot, int serial, long atNanos, long heardNanos) {
        plans.apply(atNanos, slot, serial, heardNanos);
    }

    /** A slot is to show a value at an instant, not before any that was planned for it earlier. */
    void show(int slot, int serial, long value, long atNanos) {
        plans.show(atNanos, slot, serial, value);
    }

    /** When something is applied or shown, moves or jumps next, ns; {@link Plans#NEVER} if nothing is planned. */
    long nextNanos() {
        return Math.min(nextJumpNanos, plans.nextNanos());
    }

    /** Lets the one thing happen that comes next, if it still holds; a needle jumps before it moves. */
    void step(EventOrder events, EventOrder.Revision revision) {
        if (nextJumpNanos <= plans.nextNanos()) {
            jump(events);
        } else if (plans.nextShows()) {
            if (revision.holds(Rank.SHOWN, plans.nextNanos(), plans.nextSlot(), plans.nextSerial())) {
                show(events);
            }
            plans.pass();
        } else {
            int slot = plans.nextSlot();
            events.post(
                    plans.nextNanos(), Rank.APPLIED, slot, plans.nextSerial(), 0, 0, 0, plans.nextHeardNanos(), 0, 0);
            plans.pass();
        }
    }

    private void show(EventOrder events) {
        long at = plans.nextNanos();
        int slot = plans.nextSlot();
        int serial = plans.nextSerial();
        Needle needle = needles[slot];
        if (needle != null) {
            needle.command(at, serial, plans.nextValue());
            post(events, at, slot, serial, needle);
        }
        events.post(at, Rank.SHOWN, slot, serial, 0, 0);
    }

    /** What a slot was to have and to show comes to nothing; its needle stops where it is. */
    void forget(int slot, long nowNanos, EventOrder events) {
        plans.forget(slot);
        Needle needle = needles[slot];
        if (needle != null && needle.isMoving(nowNanos)) {
            needle.halt(nowNanos);
            post(events, nowNanos, slot, 0, needle);
        }
    }

    private void jump(EventOrder events) {
        long at = nextJumpNanos;
        for (Jump jump : jumps) {
            if (jump.nextNanos() == at) {
                Needle needle = Objects.requireNonNull(needles[jump.slot]);
                needle.jump(at, jump.units());
                jump.pass();
                post(events, at, jump.slot, 0, needle);
            }
        }
        findNextJump();
    }

    private void findNextJump() {
        nextJumpNanos = Plans.NEVER;
        for (Jump jump : jumps) {
            nextJumpNanos = Math.min(nextJumpNanos, jump.nextNanos());
        }
    }

    private static void post(EventOrder events, long atNanos, int slot, int serial, Needle needle) {
        events.post(atNanos, Rank.MOVED, slot, serial, 0, 0, 0, needle.from(), needle.endNanos(), needle.to());
    }
}
