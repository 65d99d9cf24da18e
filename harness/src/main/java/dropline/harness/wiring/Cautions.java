package dropline.harness.wiring;

import java.util.List;

/** What stands above everything that tells people to touch wires. */
public final class Cautions {
    /** A sentence each. */
    public static final List<String> LINES = List.of(
            "Fuse each supply branch close to its source.",
            "Never tie a board to USB and to the external supply at once without isolation.",
            "Power the external supplies before the computer.",
            "Disconnect supplies and USB before you change wiring.",
            "Keep hands clear of driven needles, servos and levers.",
            "Leave mains work to licensed people and to your local codes.");

    private Cautions() {}
}
