/**
 * The one party that polls: whose turn it is, what waits to be sent, what its USB adapter costs. Start from
 * {@link dropline.bus.controller.PollPlan} and {@link dropline.bus.controller.StateQueue}. Never sees inside a node.
 */
@NullMarked
package dropline.bus.controller;

import org.jspecify.annotations.NullMarked;
