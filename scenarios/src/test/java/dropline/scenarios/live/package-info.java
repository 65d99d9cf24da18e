/** Drives pits over links, and compares what comes of it with a replay. */
package dropline.scenarios.live;
