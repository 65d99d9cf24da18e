package dropline.scenarios.yardstick;

import umontreal.ssj.simevents.Event;
import umontreal.ssj.simevents.Simulator;
import umontreal.ssj.simevents.eventlist.DoublyLinked;

/**
 * The reference bus as its parts would be written with SSJ (University of Montreal): the host that sends states, the
 * controller that acts, nodes that hear and talk, each an event that is scheduled again and again. The event list is a
 * doubly linked one, of the library's the fastest where so few events wait.
 */
final class EventLibrary implements Model {
    private final long seed;

    EventLibrary(long seed) {
        this.seed = seed;
    }

    @Override
    public Result run(long seconds) {
        Run run = new Run(seed);
        run.play(seconds * 1_000_000_000L);
        if (Double.isNaN(run.figures.rest())) {
            throw new IllegalStateException("a figure is missing");
        }
        return run.figures.result();
    }

    /** One event with its code, scheduled anew each time. */
    private abstract static class Step extends Event {
        Step(Simulator simulator) {
            super(simulator);
        }

        long now() {
            return (long) simulator().time();
        }

        void at(long nanos) {
            schedule(nanos - simulator().time());
        }
    }

    private static final class Run {
        private final Simulator simulator = new Simulator(new DoublyLinked());
        private final Figures figures = new Figures();
        private final Waiting waiting = new Waiting();
        private final ReferenceBus bus;
        private final Step state = new State();
        private final Step act = new Act();
        private final Step broadcastHeard = new BroadcastHeard();
        private final Step requestHeard = new RequestHeard();
        private final Step talk = new Talk();
        private final Step answered = new Answered();
        private int count;
        private int poll;
        private int node;
        private long gap;
        private long requestEnds;
        private long replyTakes;

        Run(long seed) {
            bus = new ReferenceBus(seed);
        }

        void play(long endNanos) {
            simulator.init();
            new Step(simulator) {
                @Override
                public void actions() {
                    simulator.stop();
                }
            }.at(endNanos);
            state.at(ReferenceBus.STATE_NANOS);
            act.at(0);
            simulator.start();
        }

        /** The host has a new state. */
        private final class State extends Step {
            State() {
                super(simulator);
                setPriority(0.5);
            }

            @Override
            public void actions() {
                long now = now();
                waiting.change(now, figures);
                figures.stateSent(now);
                at(now + ReferenceBus.STATE_NANOS);
            }
        }

        /** The controller's turn to talk. */
        private final class Act extends Step {
            Act() {
                super(simulator);
            }

            @Override
            public void actions() {
                long now = now();
                if (!waiting.isEmpty()) {
                    count = waiting.take();
                    long takes = ReferenceBus.stateNanos(count);
                    figures.frame(takes);
                    broadcastHeard.at(now + takes - ReferenceBus.HALF_BIT_NANOS);
                    return;
                }
                if (node == 0) {
                    figures.cycleStarted(now);
                }
                poll++;
                figures.frame(ReferenceBus.REQUEST_NANOS);
                requestEnds = now + ReferenceBus.REQUEST_NANOS;
                requestHeard.at(requestEnds - ReferenceBus.HALF_BIT_NANOS);
            }
        }

        /** Every node has a broadcast. */
        private final class BroadcastHeard extends Step {
            BroadcastHeard() {
                super(simulator);
            }

            @Override
            public void actions() {
                long now = now();
                for (int i = 0; i < count; i++) {
                    figures.shown(waiting.picked[i], now);
                }
                act.at(now + ReferenceBus.HALF_BIT_NANOS + ReferenceBus.CONTROLLER_GAP_NANOS);
            }
        }

        /** The node asked has the request. */
        private final class RequestHeard extends Step {
            RequestHeard() {
                super(simulator);
            }

            @Override
            public void actions() {
                gap = bus.gapNanos(node, poll);
                replyTakes = bus.replyNanos(node, poll);
                talk.at(requestEnds + gap);
            }
        }

        /** The node's reply begins. */
        private final class Talk extends Step {
            Talk() {
                super(simulator);
            }

            @Override
            public void actions() {
                figures.frame(replyTakes);
                answered.at(now() + replyTakes - ReferenceBus.HALF_BIT_NANOS);
            }
        }

        /** The controller has the reply. */
        private final class Answered extends Step {
            Answered() {
                super(simulator);
            }

            @Override
            public void actions() {
                figures.answered(node, gap);
                node = node + 1 == ReferenceBus.NODES ? 0 : node + 1;
                act.at(now() + ReferenceBus.HALF_BIT_NANOS + ReferenceBus.CONTROLLER_GAP_NANOS);
            }
        }
    }
}
