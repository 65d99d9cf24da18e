package dropline.protocol.custom;

import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Escape;
import dropline.protocol.custom.Flaw.Code;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What must hold for a layout as a whole, so that its frames can be written, found and read back. */
public final class LayoutRules {
    private final Layout layout;
    private final List<Flaw> flaws = new ArrayList<>();

    private LayoutRules(Layout layout) {
        this.layout = layout;
    }

    /** Everything wrong, and everything worth knowing; frames in the order given. */
    public static List<Flaw> of(Layout layout) {
        LayoutRules rules = new LayoutRules(layout);
        rules.frames();
        rules.escape();
        for (FrameLayout frame : layout.frames()) {
            rules.flaws.addAll(FrameRules.of(layout, frame));
        }
        rules.telling();
        return List.copyOf(rules.flaws);
    }

    private void frames() {
        for (Kind kind : List.of(Kind.REQUEST, Kind.REPLY)) {
            if (layout.frame(kind).isEmpty()) {
                String expected = "a " + kind.word() + ", which every polled bus has";
                flaws.add(Flaw.of(
                        Code.FRAME_MISSING,
                        null,
                        Flaw.NONE,
                        "no " + kind.word(),
                        expected,
                        "describe it under frames:"));
            }
        }
    }

    private void escape() {
        if (!(layout.boundary() instanceof Delimiters delimiters)) {
            return;
        }
        Escape escape = delimiters.escape();
        if (escape == null) {
            return;
        }
        if (escape.with() == delimiters.start() || escape.with() == delimiters.end()) {
            clash("the escape byte " + hex(escape.with()) + ", which is also the start or end byte");
        }
        for (int value : new int[] {delimiters.start(), delimiters.end(), escape.with()}) {
            if (value != Delimiters.NO_START && delimiters.isSpecial(value ^ escape.xor())) {
                clash("byte " + hex(value) + " is sent as " + hex(escape.with()) + " " + hex(value ^ escape.xor())
                        + ", and " + hex(value ^ escape.xor()) + " is a start, end or escape byte itself");
            }
        }
    }

    private void clash(String found) {
        String expected = "an escape that leaves no start, end or escape byte inside a frame";
        flaws.add(Flaw.of(
                Code.ESCAPE_CLASH,
                null,
                Flaw.NONE,
                found,
                expected,
                "check your sketch; 7D with xor 20 is what RFC 1662 uses"));
    }

    private void telling() {
        List<FrameLayout> heardByNodes =
                layout.frames().stream().filter(f -> f.kind() != Kind.REPLY).toList();
        for (int i = 0; i < heardByNodes.size(); i++) {
            for (FrameLayout other : heardByNodes.subList(i + 1, heardByNodes.size())) {
                FrameLayout one = heardByNodes.get(i);
                if (!Telling.apart(layout, one, other)) {
                    String found = other.kind().word() + " frames that can look like "
                            + one.kind().word() + " frames";
                    String expected = "a place where both always have a byte, and never the same";
                    String fix = "check your sketch: what does a node look at to tell them apart? describe that byte";
                    flaws.add(Flaw.of(Code.NOT_TOLD_APART, other.kind(), Flaw.NONE, found, expected, fix));
                }
            }
        }
        Optional<FrameLayout> reply = layout.frame(Kind.REPLY);
        for (FrameLayout one : heardByNodes) {
            if (reply.isPresent() && !Telling.apart(layout, one, reply.get())) {
                String found = "reply frames that can look like " + one.kind().word() + " frames";
                String expected = "a byte that tells replies from requests: every node hears every reply";
                flaws.add(Flaw.of(
                        Code.REPLIES_UNMARKED,
                        Kind.REPLY,
                        Flaw.NONE,
                        found,
                        expected,
                        "give replies a byte of their own"));
            }
        }
    }

    static String hex(int value) {
        return String.format(Locale.ROOT, "%02X", value);
    }
}
