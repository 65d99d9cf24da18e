package dropline.harness.bench;

import dropline.harness.verdict.Words;
import dropline.protocol.FirmwareVersion;
import java.util.Locale;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * The timing that was measured of a board, as a part of a pit file that others include. What is not known is left to
 * the profile it is like, which states conservative figures.
 *
 * @param node whose it is
 * @param trials replies measured
 * @param leastGapNanos the shortest reply gap, ns
 * @param halfGapNanos half of them were at most so long, ns
 * @param mostGapNanos the longest, ns
 * @param uncertaintyNanos the true gaps may be shorter by so much, ns
 * @param releaseTailNanos at most this, ns; empty where the link cannot tell
 * @param bootNanos from a restart to its first reply, ns; empty where it could not be restarted
 * @param firmware which it says it runs; null where it does not say
 */
public record Passport(
        String node,
        int trials,
        long leastGapNanos,
        long halfGapNanos,
        long mostGapNanos,
        long uncertaintyNanos,
        OptionalLong releaseTailNanos,
        OptionalLong bootNanos,
        @Nullable FirmwareVersion firmware) {

    /**
     * The file.
     *
     * @param like the profile that says what was not measured
     * @param day when it was measured: {@code 2026-11-20}
     * @param over the link, for people
     */
    public String text(String like, String day, String over) {
        StringBuilder text = new StringBuilder();
        text.append("# Passport of ")
                .append(node)
                .append(", measured over ")
                .append(over)
                .append(", ")
                .append(day);
        text.append(".\n# In the pit file: include this file, and give the board profile: ")
                .append(name());
        text.append("\n# Half of ")
                .append(trials)
                .append(" replies came within ")
                .append(Words.time(halfGapNanos));
        if (uncertaintyNanos > 0) {
            text.append(";\n# what the adapter adds is in these figures, up to ")
                    .append(Words.time(uncertaintyNanos));
        }
        text.append(".\n# What does not stand here was not measured: the profile it is like states it.\n");
        text.append("profiles:\n  ")
                .append(name())
                .append(":\n    like: ")
                .append(like)
                .append('\n');
        text.append("    reply-gap: ")
                .append(micros(Math.max(0, leastGapNanos)))
                .append("..")
                .append(micros(mostGapNanos))
                .append(" us, measured ")
                .append(day)
                .append('\n');
        releaseTailNanos.ifPresent(tail -> text.append("    release-tail: ")
                .append(micros(tail))
                .append(" us, measured ")
                .append(day)
                .append('\n'));
        bootNanos.ifPresent(boot -> text.append("    boot: ")
                .append(Math.round(boot / 1e6))
                .append(" ms, measured ")
                .append(day)
                .append('\n'));
        if (firmware != null) {
            text.append("    firmware: ").append(firmware).append('\n');
        }
        return text.toString();
    }

    private String name() {
        return node + "-measured";
    }

    private static String micros(long nanos) {
        return String.format(Locale.ROOT, "%.1f", nanos / 1e3);
    }
}
