package dropline.harness.plan;

import dropline.bus.pit.Controller.StateDelivery;

/**
 * What a plan chooses for a segment beside who is on it.
 *
 * @param baud bits a second
 * @param state how state reaches the boards
 * @param polling who is polled how often
 */
record Settings(int baud, StateDelivery state, Polling polling) {

    /** Who is polled how often. */
    enum Polling {
        /** As the pit file has it. */
        AS_WRITTEN,
        /** Whoever has a tighter limit, more often. */
        BY_LIMIT
    }
}
