package dropline.bus.trace;

/**
 * The kinds of event, in the order in which they come at the same instant: physics and bookkeeping, causes before
 * effects.
 */
public enum Rank {
    /** A motion that ends or is cut here belongs to the past. */
    MOVED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.moved(event.at, event.a, event.x, event.y, event.z);
        }
    },
    /** The world changes first: a recorded value is true from its instant on. */
    STATE_CHANGED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.stateChanged(event.at, event.a, event.b, event.x);
        }
    },
    /** A person's move, likewise. */
    CONTROL_MOVED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.controlMoved(event.at, event.a, event.b, event.c);
        }
    },
    /** The host sends what is true at that instant. */
    STATE_SENT {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.stateSent(event.at);
        }
    },
    /** What waited is replaced before what is new is queued. */
    COALESCED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.coalesced(event.at, event.a, event.b, event.c);
        }
    },
    /** The controller has a change before it decides what to send. */
    QUEUED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.queued(event.at, event.a, event.b, event.c);
        }
    },
    /** A reply that ends exactly at its deadline is in time: ends come before time-outs. */
    FRAME_ENDED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.frameEnded(event.at, event.a, event.b, event.c, event.d);
        }
    },
    /** A driver lets go after its last bit and before the next driver is enabled. */
    DRIVER_OFF {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.driverOff(event.at, event.a);
        }
    },
    /** A node forgets before it hears. */
    RESET {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.reset(event.at, event.a, event.x);
        }
    },
    /** What nobody sent came before what somebody did. */
    PHANTOM {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.phantom(event.at, event.a, event.b);
        }
    },
    /** Heard, and not as it was sent. */
    RECEIVED_WRONG {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.receivedWrong(event.at, event.a, event.b, event.c);
        }
    },
    /** Heard, judged lost. */
    OVERRUN {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.overrun(event.at, event.a, event.b);
        }
    },
    /** Heard, taken. */
    ANSWERED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.answered(event.at, event.a, event.b, event.c, event.x);
        }
    },
    /** What an answer says of its node is known with it. */
    NODE_STATUS {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.nodeStatus(event.at, event.a, event.b, event.c, event.x, event.y);
        }
    },
    /** Only what was not answered times out. */
    TIMED_OUT {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.timedOut(event.at, event.a, event.b, event.c);
        }
    },
    /** Giving up follows the last time-out. */
    GAVE_UP {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.gaveUp(event.at, event.a, event.b);
        }
    },
    /** Leaving a node alone follows giving up. */
    BACKED_OFF {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.backedOff(event.at, event.a, event.x);
        }
    },
    /** The node's program has the value. */
    APPLIED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.applied(event.at, event.a, event.b, event.x);
        }
    },
    /** A panel shows what was applied. */
    SHOWN {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.shown(event.at, event.a, event.b);
        }
    },
    /** A contact is believed. */
    SAMPLED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.sampled(event.at, event.a, event.b);
        }
    },
    /** The host hears of it. */
    TOLD {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.told(event.at, event.a, event.b);
        }
    },
    /** A round begins with its first frame. */
    CYCLE_STARTED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.cycleStarted(event.at, event.b);
        }
    },
    /** A driver is on before its first bit. */
    DRIVER_ON {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.driverOn(event.at, event.a);
        }
    },
    /** Two transmissions touch once the second driver is on. */
    CLASH {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.clash(event.at, event.a, event.b);
        }
    },
    /** First bit. */
    FRAME_STARTED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.frameStarted(event.at, event.a, event.b, event.c, event.d, event.e);
        }
    },
    /** What stands in the frame that starts. */
    CARRIED {
        @Override
        void hand(TraceSink sink, Event event) {
            sink.carried(event.at, event.a, event.b, event.c, event.d);
        }
    };

    /** Calls the sink's method for this kind of event. */
    abstract void hand(TraceSink sink, Event event);

    /** Whether a node or panel plans it, and may plan otherwise before its time comes. */
    boolean isPlanned() {
        return this == SHOWN || this == MOVED || this == SAMPLED;
    }

    /** Whether it is usually known long before its time comes. */
    boolean liesAhead() {
        return this == APPLIED || this == TOLD || isPlanned();
    }
}
