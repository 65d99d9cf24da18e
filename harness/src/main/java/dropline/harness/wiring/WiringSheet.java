package dropline.harness.wiring;

import dropline.bus.pit.Adapter;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.report.Paragraphs;
import java.util.List;

/** A pit as one wires it, as text to print: cautions, USB leads, segments, supplies, labels. */
public final class WiringSheet {
    private final Pit pit;
    private final StringBuilder text = new StringBuilder();
    private final Paragraphs paragraphs = new Paragraphs(text);

    private WiringSheet(Pit pit) {
        this.pit = pit;
    }

    /** The whole sheet; lines end in {@code \n}. */
    public static String of(Pit pit) {
        return new WiringSheet(pit).text();
    }

    private String text() {
        text.append("Wiring sheet: ").append(pit.name()).append('\n');
        heading("Before you touch a wire");
        Cautions.LINES.forEach(line -> paragraphs.add("  - ", line));
        paragraphs.add(
                "",
                "This sheet is a planning aid, made from the pit file. Nobody has looked at your wires, measured a"
                        + " current or checked a fuse.");
        pairs();
        leads();
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            heading("Segment " + pit.segments().get(segment).name());
            text.append(new SegmentSheet(pit, segment).text());
        }
        heading("Supplies");
        Supplies supplies = new Supplies(pit);
        text.append(supplies.runs());
        text.append(supplies.table());
        paragraphs.add(
                "",
                "Stated is what the pit file gives as a figure. Guessed is what it calls about, what a preset says, and"
                        + " every panel's sum with such a figure in it: a first idea, not one to choose a fuse by."
                        + " Measure it, and add what is not known, before you choose a supply, a fuse or a wire.");
        paragraphs.add(
                "",
                Supplies.RUNNING
                        + " Motors, servos, filament lamps and radios take several times as much for a moment: leave"
                        + " room. What is drawn at one voltage and at another on the same branch is added as it stands;"
                        + " dropline power tells them apart.");
        heading("Labels to cut out");
        text.append(Labels.of(pit));
        return text.toString();
    }

    private void heading(String words) {
        text.append('\n')
                .append(words)
                .append('\n')
                .append("=".repeat(words.length()))
                .append('\n');
    }

    /** What holds for every pair; that makers' letters differ is common knowledge of the trade. */
    private void pairs() {
        if (pit.segments().stream().noneMatch(Segment::isShared)) {
            return;
        }
        heading("What every pair needs");
        paragraphs.add(
                "",
                "Figures and names are those of MODBUS over serial line V1.02, 3.3.2 and 3.4.4 to 3.4.6; 120 ohm is"
                        + " common practice for twisted pair.");
        paragraphs.add(
                "  D1, D0:      ",
                "D1 is the wire that is above the other, D0, while nobody speaks. The standard calls D1 B and D0 A;"
                        + " many makers do it the other way round, or print + and -. Letters cannot be trusted across"
                        + " makers. A board that never answers may have its pair swapped: disconnect, exchange the two"
                        + " at that board, try again.");
        paragraphs.add(
                "  common:      ",
                "a third wire that joins the grounds of all boards, tied to protective earth at one point only.");
        paragraphs.add(
                "  terminators: ",
                "one near each end of the cable, never more than two on a pair, never on a branch. To check, with all"
                        + " supplies off and USB unplugged: two of 120 ohm read about 60 ohm between D1 and D0, a"
                        + " little less with bias resistors; about 120 means that one is missing, about 40 that there"
                        + " is a third.");
        paragraphs.add(
                "  bias:        ",
                "450 to 650 ohm from D1 to 5 V and as much from D0 to common, at one place only. Where all receivers"
                        + " are fail-safe none is needed.");
        paragraphs.add(
                "",
                "Many adapters, hub boards and modules carry a terminator, and some bias, already: look before you add"
                        + " any. What a module brings is known here only where the pit file names its transceiver.");
    }

    private void leads() {
        heading("USB leads");
        int lead = 0;
        for (Hub hub : pit.hubs()) {
            if (!hub.segments().isEmpty()) {
                int first = hub.segments().get(0);
                paragraphs.add("  " + ++lead + ". ", hub.name() + " (" + adapter(first) + "): " + kind(hub) + ".");
            }
        }
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            if (pit.hubOf(segment) == null) {
                Segment one = pit.segments().get(segment);
                paragraphs.add(
                        "  " + ++lead + ". ",
                        one.isShared()
                                ? "adapter for segment " + one.name() + " (" + adapter(segment) + "): the PC polls it."
                                : one.nodes().get(0).name() + " (" + adapter(segment)
                                        + "): straight on USB. If it has an external supply too, isolate one of them.");
            }
        }
    }

    private String adapter(int segment) {
        Adapter adapter = pit.segments().get(segment).controller().adapter();
        return adapter.equals(Adapter.NONE) ? "no adapter stated" : adapter.name() + ", " + latencyTimer(adapter);
    }

    private static String latencyTimer(Adapter adapter) {
        return adapter.latencyTimerNanos() == 0
                ? "no latency timer"
                : "latency timer " + adapter.latencyTimerNanos() / 1_000_000 + " ms";
    }

    private String kind(Hub hub) {
        List<String> ports =
                hub.segments().stream().map(s -> pit.segments().get(s).name()).toList();
        return switch (hub.kind()) {
            case BOARD ->
                ports.size() == 1
                        ? "a board that polls segment " + ports.get(0)
                        : "a board that polls segments " + Names.row(ports)
                                + ", a port for each; they share its program and this lead";
            case TRANSCEIVERS ->
                "one transceiver for each port; all ports are segment " + ports.get(0) + ", each a pair of its own";
            case SPLITTER -> "a passive splitter; all ports are one pair, segment " + ports.get(0);
        };
    }
}
