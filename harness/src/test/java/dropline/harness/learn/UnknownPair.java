package dropline.harness.learn;

import dropline.harness.layout.LayoutFile;
import dropline.harness.link.Arrival;
import dropline.protocol.Bytes;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.CustomFrame;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A controller and its boards that speak a protocol made by chance, described and encoded by the product's own layouts.
 */
final class UnknownPair {
    private static final long CHARACTER_NANOS = 86_806;
    private static final long LUMP_NANOS = 16_000_000;

    /** How frames begin and end. */
    enum Family {
        LENGTH_PAYLOAD,
        LENGTH_FRAME,
        ESCAPED,
        LINES,
        SILENCES
    }

    private final Family family;
    private final String check;
    private final boolean little;
    private final boolean overAll;
    private final int marker;
    private final Random chance;
    private final Custom protocol;

    UnknownPair(Family family, String check, boolean little, long seed) {
        this.family = family;
        this.check = check;
        this.little = little;
        chance = new Random(seed);
        overAll = chance.nextBoolean();
        marker = 0xA1 + chance.nextInt(0x40);
        LayoutFile.Result result = LayoutFile.parse("pair.yaml", yaml());
        if (!(result instanceof LayoutFile.Understood understood)) {
            throw new AssertionError(result + "\n" + yaml());
        }
        protocol = understood.protocol();
    }

    private String yaml() {
        String hex = String.format("%02X", marker);
        String form = family == Family.LINES ? ", as: hex " + hexDigits() : little ? ", order: little" : "";
        String sum = "- {check: " + check + ", over: %s..%s" + form + "}\n";
        return switch (family) {
            case LENGTH_PAYLOAD ->
                frames(
                        "length",
                        "- {bytes: " + hex + " 5A, name: begin}\n",
                        "- {address: uint8, to-all: 255}\n    - {length: uint8, of: payload}\n",
                        sum,
                        "- value: uint8");
            case LENGTH_FRAME ->
                frames(
                        "length",
                        "- {bytes: " + hex + ", name: begin}\n    - {length: uint8, of: frame}\n",
                        "- {address: uint8, to-all: 255}\n",
                        sum,
                        "- value: uint8");
            case ESCAPED ->
                frames(
                        "{start: 7E, end: 7E, escape: 7D, xor: 20}",
                        "",
                        "- {address: uint8, to-all: 255}\n",
                        sum,
                        "- value: uint8");
            case LINES -> frames("{end: \"\\n\"}", "", "- address: digits 2\n", sum, "- value: digits 3");
            case SILENCES -> frames("{gap: 2 ms}", "", "- {address: uint8, to-all: 255}\n", sum, "- value: uint8");
        };
    }

    private int hexDigits() {
        return check.contains("16") ? 4 : check.contains("32") ? 8 : 2;
    }

    private String frames(String framing, String begin, String address, String sum, String each) {
        boolean text = family == Family.LINES;
        String first = begin.isEmpty() || !overAll ? "kind" : "begin";
        StringBuilder yaml = new StringBuilder("layout: pair\nframing: " + framing + "\nlongest: 60\nframes:\n");
        String[] kinds = {"request", "state", "reply"};
        String[] marks = text ? new String[] {"\"?\"", "\"!\"", "\"=\""} : new String[] {"10", "20", "90"};
        for (int i = 0; i < kinds.length; i++) {
            String items = i == 2 ? "controls" : "signals";
            yaml.append("  ").append(kinds[i]).append(":\n");
            if (!begin.isEmpty()) {
                yaml.append("    ").append(begin);
            }
            yaml.append("    - {" + (text ? "text: " : "bytes: ") + marks[i] + ", name: kind}\n    ");
            yaml.append(address);
            String last = "address";
            if (family == Family.LENGTH_PAYLOAD) {
                last = "length";
            }
            if (i > 0) {
                yaml.append("    - ")
                        .append(items)
                        .append(":\n        ")
                        .append(each)
                        .append('\n');
                last = items;
            }
            yaml.append("    ").append(String.format(sum, first, last));
        }
        return yaml.toString();
    }

    /** How many bytes stand before the kind. */
    private int before() {
        return switch (family) {
            case LENGTH_PAYLOAD, LENGTH_FRAME -> 2;
            case ESCAPED -> 1;
            case LINES, SILENCES -> 0;
        };
    }

    /** What is said in so many rounds, damaged or in lumps as asked. */
    List<Arrival.Received> heard(int rounds, double noise, boolean lumps) {
        List<Arrival.Received> arrivals = new ArrayList<>();
        int nodes = 4 + chance.nextInt(6);
        int[][] values = new int[nodes][];
        for (int i = 0; i < nodes; i++) {
            values[i] = new int[1 + i % 5];
        }
        long at = 0;
        for (int round = 0; round < rounds; round++) {
            for (int node = 0; node < nodes; node++) {
                at = say(new CustomFrame(Kind.REQUEST, 11 + node, CustomFrame.NONE, List.of()), at, noise, arrivals);
                values[node][chance.nextInt(values[node].length)] = chance.nextInt(250);
                at = say(frame(Kind.REPLY, 11 + node, values[node]), at, noise, arrivals);
            }
            if (round % 3 == 0) {
                int[] state = {chance.nextInt(250), chance.nextInt(250)};
                at = say(frame(Kind.STATE, 0, state), at, noise, arrivals);
            }
        }
        return lumps ? lumped(arrivals) : arrivals;
    }

    private static CustomFrame frame(Kind kind, int address, int[] values) {
        List<CustomFrame.Item> items = new ArrayList<>();
        for (int value : values) {
            items.add(new CustomFrame.Item(CustomFrame.NONE, value));
        }
        return new CustomFrame(kind, address, CustomFrame.NONE, items);
    }

    private long say(CustomFrame frame, long after, double noise, List<Arrival.Received> arrivals) {
        byte[] bytes = protocol.encode(frame).toArray();
        for (int i = 0; i < bytes.length; i++) {
            if (chance.nextDouble() < noise) {
                bytes[i] ^= (byte) (1 << chance.nextInt(8));
            }
        }
        long pause = family == Family.SILENCES ? 2_500_000 : 300_000;
        long end = after + pause + bytes.length * CHARACTER_NANOS;
        arrivals.add(new Arrival.Received(end, Bytes.copyOf(bytes, 0, bytes.length)));
        return end;
    }

    private static List<Arrival.Received> lumped(List<Arrival.Received> arrivals) {
        List<Arrival.Received> lumps = new ArrayList<>();
        StringBuilder held = new StringBuilder();
        long until = LUMP_NANOS;
        for (Arrival.Received arrival : arrivals) {
            while (arrival.atNanos() > until) {
                if (!held.isEmpty()) {
                    lumps.add(new Arrival.Received(
                            until, Bytes.ofHex(held.toString().strip())));
                    held.setLength(0);
                }
                until += LUMP_NANOS;
            }
            held.append(arrival.bytes()).append(' ');
        }
        return lumps;
    }

    /** Whether what was learned is so. */
    boolean isRight(Learned learned) {
        int from = overAll && family != Family.LINES && family != Family.SILENCES ? 0 : before();
        if (family == Family.ESCAPED) {
            from = 1;
        }
        String sum = learned.check().sum().toString();
        boolean isOrder = learned.check().form()
                == (family == Family.LINES
                        ? CheckPlace.Form.HEX
                        : little && !check.contains("8") ? CheckPlace.Form.LITTLE : CheckPlace.Form.BIG);
        Roles.Place address = learned.roles().address();
        return isFraming(learned.framing())
                && sum.equalsIgnoreCase(check)
                && isOrder
                && learned.check().from() == from
                && address != null
                && address.offset() == before() + 1;
    }

    private boolean isFraming(Framing framing) {
        if (framing instanceof Framing.ByLength length) {
            return family == Family.LENGTH_PAYLOAD && length.offset() == 4 && length.each() == 1
                    || family == Family.LENGTH_FRAME
                            && length.offset() == 1
                            && length.each() == 1
                            && length.plus() == 0;
        }
        if (framing instanceof Framing.ByEnd end) {
            return family == Family.LINES && end.end() == '\n' && end.escape() < 0
                    || family == Family.ESCAPED && end.start() == 0x7E && end.end() == 0x7E && end.escape() == 0x7D;
        }
        return framing instanceof Framing.BySilence && family == Family.SILENCES;
    }

    @Override
    public String toString() {
        return family + " " + check + (little ? " little" : "") + " from " + (overAll ? "begin" : "kind");
    }
}
