package dropline.harness.starter;

import dropline.harness.starter.Draft.Board;
import dropline.harness.starter.Draft.DraftPanel;
import dropline.harness.starter.Draft.Segment;
import dropline.harness.yaml.YamlText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A draft as the text of a pit file, every guess marked as one. */
final class PitText {
    private static final String GUESS = "   # guess";

    private static final String HEAD = """
            #
            # What the spreadsheet did not say is marked "guess", or comes from a preset (`dropline presets` lists them,
            # with where every figure comes from). Correct what is marked; nobody else will. Presets hold guesses of
            # their own, figures written "about": those `dropline replay` tries at half and at double, and it ends with
            # the one that is worth measuring next. Between braces a value with a comma stands in quotes, as in
            #   {like: 8-bit loop, loop-pass: "3 ms, measured 2026-11-20"}
            # Every key is in docs/pit-file.md.
            #
            # SAFETY. Fuse each supply branch close to its source. Never tie a board to USB and to the external supply
            # at once without isolation. Power the external supplies before the computer. Disconnect before changing
            # wiring. Keep hands clear of driven mechanisms. Leave mains work to licensed people and local codes.
            """;

    private final StringBuilder out = new StringBuilder();
    private final Draft draft;

    private PitText(Draft draft) {
        this.draft = draft;
    }

    /**
     * @param name what the pit is called
     * @param from the spreadsheet's name, for the comments
     * @param leftOut rows of it that could not be understood
     */
    static String of(Draft draft, String name, String from, List<String> leftOut) {
        PitText text = new PitText(draft);
        text.head(name, from);
        text.leftOut(leftOut);
        text.host();
        text.signals();
        text.segments();
        text.nodes();
        text.panels();
        return text.out.toString();
    }

    private void head(String name, String from) {
        lines(
                YamlText.comment(
                        "Made from " + from + " by dropline new. Go on from here by hand: this file is yours now."),
                HEAD.stripTrailing(),
                "",
                "pit: " + YamlText.scalar(name),
                "");
    }

    private void leftOut(List<String> rows) {
        if (rows.isEmpty()) {
            return;
        }
        lines("# Rows that could not be understood, as they stand in the spreadsheet:");
        rows.forEach(row -> lines("#   " + YamlText.comment(row).substring(2)));
        lines("");
    }

    private void host() {
        lines("host:", "  state-rate: as recorded", "", "hubs:");
        for (Segment segment : draft.segments()) {
            lines("  " + YamlText.scalar(hub(segment)) + ": {kind: board, adapter: native USB}" + GUESS);
        }
        lines("");
    }

    private static String hub(Segment segment) {
        return segment.name + " hub";
    }

    private void signals() {
        if (draft.signals().isEmpty()) {
            return;
        }
        lines(
                "# What the simulator sends. Give each the name of its column in your recording (column: NAME), its",
                "# range, and the smallest step that you can see on the panel. `dropline describe RECORDING` shows",
                "# what a recording holds.",
                "signals:");
        int number = 1;
        for (Draft.Shown signal : draft.signals()) {
            SignalGuess guess = signal.guess();
            StringBuilder keys = new StringBuilder();
            if (!guess.unit().isEmpty()) {
                keys.append("unit: ").append(YamlText.scalar(guess.unit())).append(", ");
            }
            keys.append("range: ")
                    .append(guess.range())
                    .append(", resolution: ")
                    .append(guess.resolution());
            if (guess.wraps()) {
                keys.append(", wraps: yes");
            }
            boolean sure = guess.equals(SignalGuess.ON_OFF);
            String why = guess.isUnknown() ? GUESS + ": the name does not tell what it is" : GUESS + ", by its name";
            lines("  " + YamlText.scalar(signal.name()) + ": {" + keys + ", number: " + number++ + "}"
                    + (sure ? "" : why));
        }
        lines("");
    }

    private void segments() {
        lines("segments:");
        for (Segment segment : draft.segments()) {
            lines(
                    "  " + YamlText.scalar(segment.name) + ":"
                            + (segment.guessed ? GUESS + ": no segment was given" : ""),
                    "    baud: 250 kbaud" + GUESS,
                    "    protocol: dropline" + GUESS,
                    "    controller: {hub: " + YamlText.scalar(hub(segment))
                            + ", time-out: 10 ms, gap: 100 us, refresh: 5 s}" + GUESS);
        }
        lines("");
    }

    private void nodes() {
        lines("nodes:");
        for (Segment segment : draft.segments()) {
            for (Board board : segment.boards) {
                BoardGuess guess = BoardGuess.of(board.kind);
                List<String> guesses = new ArrayList<>();
                if (board.segmentGuessed) {
                    guesses.add("the segment");
                }
                if (board.addressGuessed) {
                    guesses.add("the address");
                }
                if (!guess.certain()) {
                    guesses.add("the board");
                }
                String why = guesses.isEmpty() ? "" : GUESS + ": " + String.join(", ", guesses);
                if (!board.kind.isEmpty()) {
                    why += (why.isEmpty() ? "   # " : "; ") + "in the spreadsheet: "
                            + YamlText.comment(board.kind).substring(2);
                }
                lines("  " + YamlText.scalar(board.name) + ": {segment: " + YamlText.scalar(segment.name)
                        + ", address: " + board.address + ", board: " + YamlText.scalar(guess.preset()) + "}" + why);
            }
        }
        lines("");
    }

    private void panels() {
        lines("panels:");
        for (Segment segment : draft.segments()) {
            for (Board board : segment.boards) {
                board.panels.forEach(panel -> panel(board, panel));
            }
        }
    }

    private void panel(Board board, DraftPanel panel) {
        lines("  " + YamlText.scalar(panel.name()) + ":", "    node: " + YamlText.scalar(board.name));
        if (!panel.row().place().isEmpty()) {
            lines("    place: " + YamlText.scalar(panel.row().place()));
        }
        lines("    status: " + panel.row().status().name().toLowerCase(Locale.ROOT));
        if (panel.row().drawsAmps().isPresent()) {
            long milliamps = Math.round(panel.row().drawsAmps().getAsDouble() * 1000);
            lines("    draws: " + Math.max(1, milliamps) + " mA");
        }
        if (!panel.row().notes().isEmpty()) {
            lines("    notes: " + YamlText.scalar(String.join("; ", panel.row().notes())));
        }
        if (Draft.isBlank(panel)) {
            lines("    # The spreadsheet names nothing that it shows or that can be moved on it.");
        }
        if (!panel.indicators().isEmpty()) {
            lines("    indicators:");
            for (Draft.Indicator indicator : panel.indicators()) {
                lines("      " + YamlText.scalar(indicator.name()) + ": {like: "
                        + YamlText.scalar(UsualPart.presetFor(indicator.kind())) + ", shows: "
                        + YamlText.scalar(indicator.signal())
                        + "}" + (indicator.guessed() ? GUESS + ": what shows it" : ""));
            }
        }
        if (!panel.controls().isEmpty()) {
            lines("    controls:");
            for (Draft.Control control : panel.controls()) {
                lines("      " + YamlText.scalar(control.name()) + ": {like: "
                        + YamlText.scalar(UsualPart.presetFor(control.kind())) + ", number: " + control.number() + "}"
                        + (control.guessed() ? GUESS + ": its kind" : ""));
            }
        }
    }

    private void lines(String... lines) {
        for (String line : lines) {
            out.append(line).append('\n');
        }
    }
}
