package dropline.bus.node;

import dropline.bus.clock.UartClock;
import dropline.bus.fault.Chance;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.wire.Frame;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is wrong with one node's board, as far as its program and its transceiver go: how its replies are misshapen, and
 * what it does not hear.
 */
final class Ailments {
    private static final long MILLION = 1_000_000;

    private final List<Fault> steady = new ArrayList<>();
    private final List<Fault> chances = new ArrayList<>();
    private final List<Chance> chanceDraws = new ArrayList<>();
    private final UartClock own;

    private Ailments(UartClock own) {
        this.own = own;
    }

    /** Those of a node, or null if it is well. */
    static @Nullable Ailments of(List<Fault> faults, int node, String name, UartClock own, long seed) {
        Ailments found = new Ailments(own);
        for (Fault fault : faults) {
            if (fault.node() != node) {
                continue;
            }
            switch (fault.kind().timing()) {
                case STEADY -> found.steady.add(fault);
                case CHANCE -> {
                    found.chances.add(fault);
                    found.chanceDraws.add(new Chance(fault, seed, name));
                }
                case EVENT -> {}
            }
        }
        return found.steady.isEmpty() && found.chances.isEmpty() ? null : found;
    }

    /** Whether it neither hears nor answers at an instant. */
    boolean isSilent(long atNanos) {
        return suffers(FaultKind.DEAD_NODE, atNanos)
                || suffers(FaultKind.BACK_FEED, atNanos)
                || suffers(FaultKind.SWAPPED_PAIR, atNanos);
    }

    /** Whether it has a steady fault of this kind at an instant. */
    boolean suffers(FaultKind kind, long atNanos) {
        return steadyAt(kind, atNanos) != null;
    }

    /** Whether a chance of this kind strikes what has this number. */
    boolean struck(FaultKind kind, long atNanos, long ordinal) {
        return chanceAt(kind, atNanos, ordinal) != null;
    }

    /** Whether it answers to another node's address at an instant, for a request of this number. */
    boolean answersFor(int other, long atNanos, long ordinal) {
        Fault duplicate = steadyAt(FaultKind.DUPLICATE_ADDRESS, atNanos);
        if (duplicate != null && duplicate.other() == other) {
            return true;
        }
        Fault wrong = chanceAt(FaultKind.ANSWERS_ANOTHER, atNanos, ordinal);
        return wrong != null && wrong.other() == other;
    }

    /** Whether its receive ring has room for a frame. */
    boolean hasRoom(Frame frame) {
        Fault ring = steadyAt(FaultKind.RING_OVERRUN, frame.heardNanos);
        return ring == null || frame.chars <= ring.amount();
    }

    /** When its displays began to stand still, or the instant itself. */
    long refreshedUntil(long atNanos) {
        Fault frozen = steadyAt(FaultKind.FROZEN_DISPLAY, atNanos);
        return frozen == null ? atNanos : frozen.fromNanos();
    }

    /** The clock of its UART at an instant. */
    UartClock clockAt(long atNanos) {
        Fault baud = steadyAt(FaultKind.WRONG_BAUD, atNanos);
        if (baud != null) {
            return new UartClock(baud.amount(), 1);
        }
        Fault off = steadyAt(FaultKind.CLOCK_OFF, atNanos);
        if (off == null) {
            return own;
        }
        // In millionths of a bit, so that every part in a million counts.
        return new UartClock((long) (own.baud() * (MILLION + off.amount()) / 1000), 1000);
    }

    /** Changes when a reply begins: {@code start} unless it comes too soon. */
    long start(long start, Frame request, long ordinal) {
        Fault soon = chanceAt(FaultKind.REPLY_TOO_SOON, request.heardNanos, ordinal);
        return soon == null ? start : request.heardNanos + soon.amount();
    }

    /** Changes when a timed reply's driver is on; never before its request was heard. */
    void shape(Frame reply, Frame request, long ordinal) {
        long at = request.heardNanos;
        Fault late = chanceAt(FaultKind.DRIVER_ENABLED_LATE, at, ordinal);
        if (late != null) {
            reply.driverOnNanos = Math.min(reply.startNanos + late.amount(), reply.endNanos);
        }
        Fault early = chanceAt(FaultKind.DRIVER_ENABLED_EARLY, at, ordinal);
        if (early != null) {
            reply.driverOnNanos = Math.max(request.heardNanos, reply.startNanos - early.amount());
        }
        Fault held = chanceAt(FaultKind.DRIVER_RELEASED_LATE, at, ordinal);
        if (held != null) {
            reply.driverOffNanos = reply.endNanos + held.amount();
        }
        Fault cut = chanceAt(FaultKind.DRIVER_RELEASED_EARLY, at, ordinal);
        if (cut != null) {
            reply.driverOffNanos = Math.max(reply.driverOnNanos, reply.endNanos - cut.amount());
        }
    }

    private @Nullable Fault steadyAt(FaultKind kind, long atNanos) {
        for (int i = 0; i < steady.size(); i++) {
            Fault fault = steady.get(i);
            if (fault.kind() == kind && fault.spans(atNanos)) {
                return fault;
            }
        }
        return null;
    }

    private @Nullable Fault chanceAt(FaultKind kind, long atNanos, long ordinal) {
        for (int i = 0; i < chances.size(); i++) {
            if (chances.get(i).kind() == kind && chanceDraws.get(i).strikes(atNanos, ordinal)) {
                return chances.get(i);
            }
        }
        return null;
    }
}
