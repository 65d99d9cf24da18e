package dropline.bus.indicator;

import dropline.bus.fault.Chance;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Slots whose plans may come to nothing, since their node may restart; or turn out otherwise, since something is wrong
 * with their needle; or depend on what they are doing then, since they take time for it. What they show is decided only
 * when its time has come.
 */
final class SteppedSlots {
    private final List<Layout.Slot> slots;
    private final boolean[] stepped;
    private final @Nullable Mechanism[] mechanisms;
    private final List<Mechanism> all = new ArrayList<>();
    private final List<Jump> jumps = new ArrayList<>();
    private final Plans plans = new Plans();
    private long nextJumpNanos;
    private long nextMechanismNanos = Mechanism.NEVER;

    private SteppedSlots(Pit pit, Layout layout, int segment, long seed, List<Fault> faults) {
        slots = layout.slots();
        stepped = new boolean[slots.size()];
        mechanisms = new Mechanism[slots.size()];
        for (int slot = 0; slot < stepped.length; slot++) {
            Layout.Slot place = slots.get(slot);
            if (place.segment() == segment) {
                stepped[slot] = takesItsTime(place.indicator()) || isStruck(faults, slot);
                mechanisms[slot] = stepped[slot] ? mechanism(pit, slot) : null;
                if (mechanisms[slot] != null) {
                    all.add(mechanisms[slot]);
                }
            }
        }
        for (Fault fault : faults) {
            if (fault.segment() == segment && isNeedles(fault)) {
                add(fault, seed);
            }
        }
        findNextJump();
    }

    /** Those of a segment, or null if there are none. */
    static @Nullable SteppedSlots of(Pit pit, Layout layout, int segment, long seed, List<Fault> faults) {
        SteppedSlots made = new SteppedSlots(pit, layout, segment, seed, faults);
        for (boolean one : made.stepped) {
            if (one) {
                return made;
            }
        }
        return null;
    }

    /** Whether what it does with a command depends on what it is doing, though nothing is wrong. */
    private static boolean takesItsTime(Indicator indicator) {
        return indicator.kind().mustArrive() || indicator.motion().accelerationPerSecond2() > 0;
    }

    private @Nullable Mechanism mechanism(Pit pit, int slot) {
        Indicator indicator = slots.get(slot).indicator();
        Signal signal = pit.signals().get(slots.get(slot).signal());
        if (indicator.kind().mustArrive()) {
            return new Fade(slot, indicator, signal, Shows.rest(signal));
        }
        return indicator.kind().moves() ? new Needle(slot, signal, Shows.rest(signal), indicator.motion()) : null;
    }

    private boolean isStruck(List<Fault> faults, int slot) {
        for (Fault fault : faults) {
            if (strikes(fault, slot)) {
                return true;
            }
        }
        return false;
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
        if (!(mechanisms[slot] instanceof Needle needle)) {
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
            Jump jump = new Jump(needle, fault, seed, struckName);
            if (jump.nextNanos() == 0) {
                needle.startOff(jump.units());
                jump.pass();
            }
            jumps.add(jump);
        }
    }

    /** Whether what a slot shows is decided here. */
    boolean has(int slot) {
        return stepped[slot];
    }

    /** A slot's node has a value at an instant. */
    void apply(int slot, int serial, long atNanos, long heardNanos) {
        plans.apply(atNanos, slot, serial, heardNanos);
    }

    /** A slot is to show a value at an instant, not before any that was planned for it earlier. */
    void show(int slot, int serial, long value, long atNanos) {
        plans.show(atNanos, slot, serial, value);
    }

    /** Whether a slot's mechanism alone says what it shows and when. */
    boolean decides(int slot) {
        return mechanisms[slot] != null && (!(mechanisms[slot] instanceof Needle needle) || needle.takesItsTime());
    }

    /** When something is applied or shown, moves or jumps next, ns; {@link Plans#NEVER} if nothing is planned. */
    long nextNanos() {
        return Math.min(Math.min(nextJumpNanos, nextMechanismNanos), plans.nextNanos());
    }

    /**
     * Lets the one thing happen that comes next, if it still holds. A needle jumps before it moves, and whatever is
     * under way goes on before it is commanded anew.
     */
    void step(EventOrder events, Shows shows) {
        if (nextJumpNanos <= Math.min(nextMechanismNanos, plans.nextNanos())) {
            jump(events);
        } else if (nextMechanismNanos <= plans.nextNanos()) {
            stepMechanism(events);
        } else if (plans.nextShows()) {
            if (shows.isNewest(plans.nextNanos(), plans.nextSlot(), plans.nextSerial())) {
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
        Mechanism mechanism = mechanisms[slot];
        if (mechanism == null) {
            events.post(at, Rank.SHOWN, slot, serial, 0, 0);
        } else {
            mechanism.command(at, serial, plans.nextValue(), events);
            findNextMechanism();
        }
    }

    /** What a slot was to have and to show comes to nothing; its node's program runs again at {@code readyNanos}. */
    void forget(int slot, long nowNanos, long readyNanos, EventOrder events) {
        plans.forget(slot);
        Mechanism mechanism = mechanisms[slot];
        if (mechanism != null) {
            mechanism.forget(nowNanos, readyNanos, events);
            findNextMechanism();
        }
    }

    private void stepMechanism(EventOrder events) {
        long at = nextMechanismNanos;
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).nextNanos() == at) {
                all.get(i).step(events);
            }
        }
        findNextMechanism();
    }

    private void findNextMechanism() {
        nextMechanismNanos = Mechanism.NEVER;
        for (int i = 0; i < all.size(); i++) {
            nextMechanismNanos = Math.min(nextMechanismNanos, all.get(i).nextNanos());
        }
    }

    private void jump(EventOrder events) {
        long at = nextJumpNanos;
        for (Jump jump : jumps) {
            if (jump.nextNanos() == at) {
                jump.needle.jump(at, jump.units(), events);
                jump.pass();
            }
        }
        findNextJump();
        findNextMechanism();
    }

    private void findNextJump() {
        nextJumpNanos = Plans.NEVER;
        for (Jump jump : jumps) {
            nextJumpNanos = Math.min(nextJumpNanos, jump.nextNanos());
        }
    }
}
