package dropline.harness.learn;

import dropline.protocol.crc.CrcCatalogue;
import dropline.protocol.custom.Checksum;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** The draft of a layout file: what was learned as its fields, what was not as spare bytes. */
final class Draft {
    private static final int LEAST_OTHERS = 3;
    private static final int USUAL_LONGEST = 64;

    private final Learned learned;
    private final Roles roles;
    private final int begin;

    private Draft(Learned learned) {
        this.learned = learned;
        roles = learned.roles();
        begin = learned.framing() instanceof Framing.ByEnd end && end.start() >= 0 ? 1 : 0;
    }

    /** Whether requests and replies can be told apart, without which there is no layout. */
    static boolean canBe(Learned learned) {
        return learned.roles().address() != null;
    }

    static String of(Learned learned) {
        return new Draft(learned).text();
    }

    private String text() {
        StringBuilder text = new StringBuilder("# A draft, made of what was heard. Hold it beside the sketches.\n");
        learned.doubts()
                .forEach(doubt -> text.append("# Not sure: ").append(doubt).append('\n'));
        int longest = learned.walk().frames().stream()
                .mapToInt(frame -> frame.length + 1)
                .max()
                .orElse(USUAL_LONGEST);
        text.append("layout: draft\nframing: ").append(framing()).append('\n');
        text.append("longest: ").append(Math.max(USUAL_LONGEST, longest)).append("\nframes:\n");
        frame("request", "signals", roles.requests(), text);
        List<byte[]> toAll = toAll();
        if (toAll.size() >= LEAST_OTHERS) {
            frame("state", "signals", toAll, text);
        }
        frame("reply", "controls", roles.replies(), text);
        return text.toString();
    }

    /** Frames that stand alone, with an address nobody answers to. */
    private List<byte[]> toAll() {
        Roles.Place address = roles.address();
        List<byte[]> alone = new ArrayList<>();
        if (address != null) {
            Set<Integer> answering = new TreeSet<>();
            roles.replies().forEach(frame -> answering.add(address.in(frame)));
            for (byte[] frame : roles.others()) {
                if (!answering.contains(address.in(frame))) {
                    alone.add(frame);
                }
            }
        }
        return alone;
    }

    private String framing() {
        if (learned.framing() instanceof Framing.ByEnd end) {
            return "{" + (end.start() >= 0 ? "start: " + hex(end.start()) + ", " : "") + "end: " + hex(end.end())
                    + (end.escape() >= 0 ? ", escape: " + hex(end.escape()) + ", xor: " + hex(end.xor()) : "") + "}";
        }
        if (learned.framing() instanceof Framing.BySilence silence) {
            return "{gap: " + silence.leastNanos() / 1_000 + " us}";
        }
        return "length";
    }

    private void frame(String kind, String items, List<byte[]> frames, StringBuilder text) {
        text.append("  ").append(kind).append(":\n");
        int shortest = frames.stream().mapToInt(frame -> frame.length).min().orElse(0);
        int longest = frames.stream().mapToInt(frame -> frame.length).max().orElse(0);
        int before = shortest - learned.tail();
        List<String> names = new ArrayList<>();
        List<Integer> starts = new ArrayList<>();
        int at = begin;
        while (at < before) {
            int end = special(at) ? end(at) : at + 1;
            boolean constant = isConstant(at, frames);
            if (!special(at) && !constant && at > lastSpecial()) {
                break;
            }
            while (!special(at)
                    && end < before
                    && !special(end)
                    && end != learned.check().from()
                    && end <= Math.max(at, lastSpecial())
                    && isConstant(end, frames) == constant) {
                end++;
            }
            names.add(field(kind, at, end, constant, frames, text));
            starts.add(at);
            at = end;
        }
        if (longest > shortest || (at < before && !kind.equals("request"))) {
            text.append("    - {")
                    .append(items)
                    .append(": [{value: ")
                    .append(item(at, before))
                    .append("}]");
            text.append(longest > shortest ? "}\n" : ", slots: " + (before - at) / each(at, before) + "}\n");
            names.add(items);
            starts.add(at);
        } else if (at < before) {
            text.append("    - {spare: ").append(before - at).append(", name: unknown}\n");
            names.add("unknown");
            starts.add(at);
        }
        check(names, starts, text);
        if (learned.check().after() > 0) {
            text.append("    - {bytes: ")
                    .append(hex(frames.get(0)[shortest - 1]))
                    .append(", name: last}\n");
        }
    }

    /** How one of what varies in number is written: as wide as one of the length counts. */
    private String item(int at, int before) {
        return "uint" + 8 * each(at, before);
    }

    private int each(int at, int before) {
        int each = learned.framing() instanceof Framing.ByLength byLength ? byLength.each() : 1;
        return (before - at) % each == 0 ? each : 1;
    }

    private String field(String kind, int at, int end, boolean constant, List<byte[]> frames, StringBuilder text) {
        Roles.Place address = roles.address();
        if (address != null && address.covers(at)) {
            int marked = address.marked() ? frames.get(0)[at] & 0x80 : 0;
            int toAll = kind.equals("state") ? address.in(frames.get(0)) : 0;
            text.append("    - {address: ")
                    .append(address.digits() ? "digits " + address.width() : "uint8")
                    .append(marked > 0 ? ", plus: 128" : "")
                    .append(toAll > 0 ? ", to-all: " + toAll : "")
                    .append("}\n");
            return "address";
        }
        if (at == learned.lengthAt() && learned.framing() instanceof Framing.ByLength length) {
            text.append("    - {length: uint8, ")
                    .append(counted(length, frames))
                    .append("}\n");
            return "length";
        }
        String name = (constant ? "begin" : "spare") + at;
        if (constant) {
            text.append("    - {bytes: ");
            for (int i = at; i < end; i++) {
                text.append(i > at ? " " : "").append(hex(frames.get(0)[i]));
            }
            text.append(", name: ").append(name).append("}\n");
        } else {
            text.append("    - {spare: ")
                    .append(end - at)
                    .append(", name: ")
                    .append(name)
                    .append("}\n");
        }
        return name;
    }

    private String counted(Framing.ByLength length, List<byte[]> frames) {
        if (length.each() == 1) {
            return "of: frame, plus: " + -length.plus();
        }
        int fixed = frames.stream().mapToInt(frame -> frame.length).min().orElse(0);
        int least = frames.stream()
                .mapToInt(frame -> frame[length.offset()] & 0xFF)
                .min()
                .orElse(0);
        return "of: items, plus: " + (fixed == lastSpecial() + 1 + learned.tail() ? least : 0);
    }

    private void check(List<String> names, List<Integer> starts, StringBuilder text) {
        CheckPlace check = learned.check();
        String first = begin > 0 && check.from() == 0 ? "start" : names.get(0);
        for (int i = 0; i < starts.size(); i++) {
            if (starts.get(i) == check.from() && !first.equals("start")) {
                first = names.get(i);
            }
        }
        String last = names.get(names.size() - 1);
        String form =
                switch (check.form()) {
                    case BIG -> "";
                    case LITTLE -> ", order: little";
                    case HEX -> ", as: hex " + check.width();
                };
        text.append("    - {check: ")
                .append(name(check.sum()))
                .append(", over: ")
                .append(first)
                .append("..")
                .append(last)
                .append(form)
                .append("}\n");
    }

    private static String name(Checksum sum) {
        if (sum instanceof Checksum.Sum plain && plain.complement() != Checksum.Complement.NONE) {
            return "sum" + plain.bits() + ", complement: "
                    + plain.complement().name().toLowerCase(Locale.ROOT);
        }
        if (sum instanceof Checksum.Cyclic crc) {
            return CrcCatalogue.named(crc.crc().parameters().name()).name();
        }
        return sum.toString();
    }

    private boolean special(int at) {
        Roles.Place address = roles.address();
        return at == learned.lengthAt() || at == roles.kind() || (address != null && address.covers(at));
    }

    private int end(int at) {
        Roles.Place address = roles.address();
        return address != null && address.covers(at) ? address.offset() + address.width() : at + 1;
    }

    private int lastSpecial() {
        Roles.Place address = roles.address();
        int end = address == null ? -1 : address.offset() + address.width() - 1;
        return Math.max(
                end,
                Math.max(
                        learned.lengthAt(),
                        Math.max(roles.kind(), learned.framing().markerLength() - 1)));
    }

    /** What all frames of this kind have there: the marker, the byte that tells kinds apart, what stands between. */
    private boolean isConstant(int at, List<byte[]> frames) {
        return at <= lastSpecial() && Roles.values(frames, at).size() == 1;
    }

    private static String hex(int value) {
        return LearnText.hex(value & 0xFF);
    }
}
