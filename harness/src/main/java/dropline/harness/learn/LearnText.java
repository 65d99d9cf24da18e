package dropline.harness.learn;

import dropline.harness.verdict.Words;
import dropline.protocol.Bytes;
import java.util.List;
import java.util.Locale;

/** What was learned, in plain sentences, doubts last. */
final class LearnText {
    private LearnText() {}

    static String of(Learned learned) {
        StringBuilder text = new StringBuilder();
        text.append(Words.share(learned.share()))
                .append(" of what was heard are frames with a right check: ")
                .append(learned.walk().frames().size())
                .append(" frames.\n");
        text.append("  framing  ").append(framing(learned.framing())).append('\n');
        text.append("  check    ")
                .append(check(learned.check()))
                .append(", over everything before it from byte ")
                .append(learned.check().from())
                .append(" on\n");
        Roles roles = learned.roles();
        Roles.Place address = roles.address();
        if (address != null) {
            text.append("  address  byte ")
                    .append(address.offset())
                    .append(address.digits() ? ", " + address.width() + " digits" : "")
                    .append(address.marked() ? ", its highest bit tells requests from replies" : "")
                    .append("; ")
                    .append(roles.requests().stream()
                            .mapToInt(address::in)
                            .distinct()
                            .count())
                    .append(" boards answered\n");
        }
        if (roles.kind() >= 0) {
            text.append("  kind     byte ")
                    .append(roles.kind())
                    .append(": requests ")
                    .append(hex(roles.requests(), roles.kind()))
                    .append(", replies ")
                    .append(hex(roles.replies(), roles.kind()))
                    .append('\n');
        }
        text.append(learned.doubts().isEmpty() ? "Nothing else explains as much of it.\n" : "Not sure:\n");
        learned.doubts().forEach(doubt -> text.append("  ").append(doubt).append('\n'));
        return text.toString();
    }

    static String framing(Framing framing) {
        if (framing instanceof Framing.ByLength one) {
            return begin(one.marker()) + "byte " + one.offset() + " says how long it is, "
                    + (one.each() > 1 ? one.each() + " bytes for each, " : "") + one.plus() + " more in all";
        }
        if (framing instanceof Framing.ByMarker one) {
            return begin(one.marker()) + "no length in it";
        }
        if (framing instanceof Framing.ByEnd one) {
            return (one.start() >= 0 ? "begins with " + hex(one.start()) + ", " : "") + "ends with " + hex(one.end())
                    + (one.escape() >= 0
                            ? ", these bytes inside are sent as " + hex(one.escape()) + " and themselves xor "
                                    + hex(one.xor())
                            : "");
        }
        if (framing instanceof Framing.BySilence one) {
            return "a frame ends with a silence of " + Words.time(one.leastNanos()) + " or more";
        }
        throw new AssertionError(framing);
    }

    private static String begin(Bytes marker) {
        return marker.length() == 0 ? "nothing marks the begin, " : "begins with " + marker + ", ";
    }

    static String check(CheckPlace check) {
        String form =
                switch (check.form()) {
                    case BIG -> check.sum().bits() > 8 ? ", high byte first" : "";
                    case LITTLE -> ", low byte first";
                    case HEX -> ", in hexadecimal digits";
                };
        return check.sum() + form;
    }

    private static String hex(List<byte[]> frames, int at) {
        StringBuilder values = new StringBuilder();
        Roles.values(frames, at)
                .forEach(value -> values.append(values.isEmpty() ? "" : ", ").append(hex(value)));
        return values.toString();
    }

    static String hex(int value) {
        return String.format(Locale.ROOT, "%02X", value);
    }
}
