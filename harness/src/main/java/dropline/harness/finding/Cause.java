package dropline.harness.finding;

import java.util.Locale;

/** What can be wrong, as a finding names it, with what to do about it. */
public enum Cause {
    DEAD_NODE(
            "is unplugged, without supply, or hung",
            "Look whether the board's supply light is on and its connector sits; swap it with a board that works.",
            true),
    BACK_FEED(
            "hangs because it is fed through its signal or USB leads",
            "Take off every supply and the USB lead, wait until its lights are out, then power it again: a board that"
                    + " comes back was fed through its leads.",
            true),
    WRONG_BAUD(
            "is set to another baud rate",
            "Compare the baud rate in its firmware with the pit file; mind the crystal and the double-speed bit.",
            false),
    SWAPPED_PAIR("has its two wires exchanged", "Exchange A and B at that board's connector and try again.", true),
    RESET(
            "restarts by itself",
            "Look for a loose supply or reset lead, a watchdog, or a motor on the same supply; put a capacitor"
                    + " close to the board.",
            true),
    BROWN_OUT(
            "lose their supply for a moment, all at once",
            "Measure the segment's supply at its far end while everything moves; use a stronger supply, a thicker"
                    + " lead, or feed it from both ends.",
            true),
    DRIVER_ENABLED_LATE(
            "enables its driver after it has begun to send",
            "Set the driver-enable pin before you load the first character.",
            false),
    DRIVER_ENABLED_EARLY(
            "enables its driver while the request may still be on the line",
            "Set the driver-enable pin just before the first character, not when the request is recognised.",
            false),
    DRIVER_RELEASED_LATE(
            "holds the line after its last character",
            "Release the driver in the transmit-complete interrupt, not in the main loop or after a delay.",
            false),
    DRIVER_RELEASED_EARLY(
            "lets go of the line before its last character is out",
            "Release the driver in the transmit-complete interrupt, not when the data register is empty.",
            false),
    REPLY_TOO_SOON(
            "replies before the controller has let go of the line",
            "Make it wait before it replies, as long as its profile says.",
            false),
    DUPLICATE_ADDRESS(
            "answers to the address of another node instead of its own",
            "Give each board an address of its own; unplug one of the two and see whether the other is well.",
            false),
    STUCK_DRIVER(
            "keeps its driver enabled and blocks the line",
            "Unplug boards one by one until the others answer; then look at that board's driver-enable pin.",
            true),
    BABBLING_NODE(
            "sends without being asked",
            "Look for debug output on its serial port, and for code that sends outside the answer to a poll.",
            false),
    ANSWERS_ANOTHER(
            "answers polls meant for another node",
            "Look how its firmware compares the address: it must check the whole address, and the check, first.",
            false),
    EAVESDROPPER(
            "takes another node's reply for its own business and misses the request that follows",
            "Make its firmware drop replies at once (a header bit or a state of "
                    + "its own) and look for the next request.",
            false),
    CLOCK_OFF(
            "has a clock that runs too fast or too slow",
            "Use a crystal in place of the internal oscillator, or choose a baud rate its clock makes exactly.",
            false),
    BLACKOUT(
            "switches its interrupts off for too long",
            "Look for addressable LEDs, software serial ports and long interrupt "
                    + "routines; split them into short parts.",
            false),
    RING_OVERRUN(
            "has too small a receive ring for the longest frames",
            "Enlarge its receive buffer, or send shorter frames.",
            false),
    LOOP_STALL(
            "has a main loop that stands still for too long",
            "Look for delays, display writes and sensor reads that wait; split them, or answer from the interrupt.",
            false),
    MISSING_BIAS(
            "has nothing that holds the line while nobody talks",
            "Fit one pair of bias resistors, at the controller, and one terminator at each end.",
            true),
    FLOATING_RECEIVER(
            "hears noise while it sends, since its receiver's output floats then",
            "Fit a pull-up resistor at its receive pin, or ignore what comes in while sending.",
            true),
    ECHO(
            "has a controller that hears what it sends",
            "Switch the adapter's receiver off while it sends, or make the controller drop its own characters.",
            true),
    NOISE_BURST(
            "has noise on the line",
            "Keep the pair away from motor, relay and mains leads, twist it, and check its terminators and shield.",
            true),
    FROZEN_DISPLAY(
            "shows what it last showed though its node answers",
            "Look at the leads between board and display; reset the display by itself; start it again in firmware.",
            true),
    SLOW_ADAPTER(
            "has a USB adapter that holds back what it has",
            "Set the adapter's latency timer to 1 ms, and plug it in directly rather than through a USB hub.",
            false),
    LOST_STATE_FRAME(
            "loses state frames that nobody receives",
            "Compare the controller's state frames with what it meant to send: a "
                    + "transmit buffer overwritten, or a wrong"
                    + " check, damages only these.",
            false),
    SILENT_HOST("sends no state", "See whether the simulation runs, is not paused, and its export still is on.", false),
    COMMON_WIRE_LIFTED(
            "hears wrongly now and then, alone",
            "Give it a common wire of its own back to the supply, thick and short, apart from motor and lamp returns.",
            true),
    LOST_STEPS(
            "loses steps",
            "Move it more slowly, or raise the motor's current within its rating; look for what rubs.",
            true),
    LOST_ZERO(
            "has taken its zero in the wrong place",
            "Let it find its zero again at start; look at the stop or the zero sensor.",
            true),
    NEEDLE_SLIPPED(
            "has a needle that slipped on its shaft",
            "Set the needle again at a known value and press it on firmly.",
            true),
    STICKING_NEEDLE(
            "sticks: it stops short, from whichever side it comes",
            "Look for a needle that rubs on dial or glass, and for dirt in the gears.",
            true),
    ENCODER_SKIPS(
            "is moved and its node does not notice",
            "Read it from an interrupt or a timer rather than the loop; clean or replace the part.",
            false),
    SWITCH_FLICKERS(
            "opens and closes by itself",
            "Look at its solder joints and plug; raise its debounce time; replace the part.",
            false),
    NOISY_AXIS(
            "wanders by itself",
            "Clean or replace the potentiometer, average its readings, or widen its dead band.",
            false);

    /** To be read beside every advice that has somebody touch wiring, supplies or mechanisms. */
    public static final String CAUTION = "Before you touch wiring: disconnect the supplies and USB; fuse each "
            + "supply branch close to its source; never"
            + " tie a board to USB and to an external supply at once without isolation; power the external"
            + " supplies before the computer; keep hands clear of driven mechanisms; leave mains work to"
            + " licensed people and local codes.";

    private final String words;
    private final String next;
    private final boolean touches;

    Cause(String words, String next, boolean touches) {
        this.words = words;
        this.next = next;
        this.touches = touches;
    }

    /** What is wrong, to be read after the name of what it is wrong with. */
    public String words() {
        return words;
    }

    /** What to do next, a sentence or two. */
    public String next() {
        return next;
    }

    /** Whether what to do next touches wiring, supplies or mechanisms. */
    public boolean touchesHardware() {
        return touches;
    }

    /** {@code dead-node}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** {@code dead node}. */
    String plainName() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
