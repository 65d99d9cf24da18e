package dropline.harness.sheet;

import dropline.bus.pit.Panel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What single cells mean. Each reading is empty where the cell cannot be understood. */
final class Cells {
    private static final int MOST_OF_A_KIND = 64;
    private static final Pattern COUNT_BEFORE = Pattern.compile("(\\d{1,4})\\s*(?:[x\u00D7*]\\s*|\\s+)(\\D.*)");
    private static final Pattern COUNT_BEHIND = Pattern.compile("(.*\\D)\\s*[x\u00D7*]\\s*(\\d{1,4})");
    private static final Pattern CURRENT =
            Pattern.compile("~?\\s*(\\d{1,6}(?:[.,]\\d{1,6})?)\\s*(mA|A|mW|W|)", Pattern.CASE_INSENSITIVE);

    private static final Map<String, Panel.Status> STATUS = Map.ofEntries(
            Map.entry("", Panel.Status.BUILT),
            Map.entry("built", Panel.Status.BUILT),
            Map.entry("done", Panel.Status.BUILT),
            Map.entry("finished", Panel.Status.BUILT),
            Map.entry("wired", Panel.Status.BUILT),
            Map.entry("installed", Panel.Status.BUILT),
            Map.entry("ok", Panel.Status.BUILT),
            Map.entry("yes", Panel.Status.BUILT),
            Map.entry("bench", Panel.Status.BENCH),
            Map.entry("on the bench", Panel.Status.BENCH),
            Map.entry("testing", Panel.Status.BENCH),
            Map.entry("in progress", Panel.Status.BENCH),
            Map.entry("wip", Panel.Status.BENCH),
            Map.entry("planned", Panel.Status.PLANNED),
            Map.entry("plan", Panel.Status.PLANNED),
            Map.entry("idea", Panel.Status.PLANNED),
            Map.entry("todo", Panel.Status.PLANNED),
            Map.entry("to do", Panel.Status.PLANNED),
            Map.entry("no", Panel.Status.PLANNED));

    private Cells() {}

    /** A bus address, 1..247; a spreadsheet may have made {@code 7,0} of 7. */
    static OptionalInt address(String cell) {
        String whole = cell.strip().replaceFirst("[.,]0+$", "");
        if (!whole.matches("\\d{1,3}")) {
            return OptionalInt.empty();
        }
        int address = Integer.parseInt(whole);
        return address >= 1 && address <= 247 ? OptionalInt.of(address) : OptionalInt.empty();
    }

    /**
     * A current in A. Watts are taken at 12 V. A bare number is in the unit that the column's head names, and in mA
     * where it names none.
     *
     * @param head the column's head, such as {@code draws (A)}
     */
    static OptionalDouble amps(String cell, String head) {
        Matcher matcher = CURRENT.matcher(cell.strip());
        if (!matcher.matches()) {
            return OptionalDouble.empty();
        }
        double number = Double.parseDouble(matcher.group(1).replace(',', '.'));
        String unit = matcher.group(2).isEmpty() ? unitOf(head) : matcher.group(2);
        return OptionalDouble.of(
                switch (unit.toLowerCase(Locale.ROOT)) {
                    case "a" -> number;
                    case "w" -> number / 12;
                    case "mw" -> number / 12_000;
                    default -> number / 1000;
                });
    }

    private static String unitOf(String head) {
        Matcher bracket = Pattern.compile(".*[\\[(]\\s*(mA|A|mW|W)\\s*[\\])].*", Pattern.CASE_INSENSITIVE)
                .matcher(head);
        return bracket.matches() ? bracket.group(1) : "mA";
    }

    static Optional<Panel.Status> status(String cell) {
        return Optional.ofNullable(STATUS.get(cell.strip().toLowerCase(Locale.ROOT)));
    }

    /**
     * The indicators or controls a cell lists: {@code airspeed gauge; 3 x gear lamp}. Items stand between semicolons,
     * commas, slashes, plus signs or line ends; a number before or behind one says how many.
     */
    static Optional<List<Part>> parts(String cell, Kinds kinds) {
        List<Part> parts = new ArrayList<>();
        for (String item : cell.split("[;,/+\\n\\r]| and | & ", -1)) {
            String text = item.replaceAll("[()\\[\\]:]", " ").strip().replaceAll("\\s+", " ");
            if (text.isEmpty() || text.equals("-") || text.equalsIgnoreCase("none")) {
                continue;
            }
            int count = 1;
            Matcher before = COUNT_BEFORE.matcher(text);
            Matcher behind = COUNT_BEHIND.matcher(text);
            // "7 segment display" is no count of seven.
            if (before.matches() && !text.toLowerCase(Locale.ROOT).matches("[37][- ](seg|way|pos).*")) {
                count = Integer.parseInt(before.group(1));
                text = before.group(2).strip();
            } else if (behind.matches()) {
                count = Integer.parseInt(behind.group(2));
                text = behind.group(1).strip();
            }
            if (count < 1 || count > MOST_OF_A_KIND) {
                return Optional.empty();
            }
            Part part = kinds.in(text).orElse(new Part(text, ""));
            for (int i = 1; i <= count; i++) {
                parts.add(count == 1 ? part : new Part((part.name() + " " + i).strip(), part.kind()));
            }
        }
        return Optional.of(parts);
    }
}
