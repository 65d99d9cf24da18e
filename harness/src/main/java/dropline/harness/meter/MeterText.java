package dropline.harness.meter;

import dropline.bus.copper.Range;
import dropline.bus.copper.Reading;
import dropline.bus.rule.Unit;
import dropline.harness.report.Paragraphs;
import dropline.harness.report.TextTable;
import dropline.harness.ruling.Amounts;
import dropline.harness.wiring.Cautions;
import java.util.List;

/** A meter's readings as text for a terminal. */
public final class MeterText {
    private final MeterResult result;
    private final StringBuilder text = new StringBuilder();
    private final Paragraphs paragraphs = new Paragraphs(text);

    private MeterText(MeterResult result) {
        this.result = result;
    }

    /** All of it; lines end in {@code \n}. */
    public static String of(MeterResult result) {
        return new MeterText(result).text();
    }

    private String text() {
        MeterResult.Diagnosis diagnosis = result.diagnosis();
        if (diagnosis != null) {
            diagnosis(diagnosis);
        }
        text.append(text.length() > 0 ? "\n" : "").append("Before you hold a meter to it\n");
        paragraphs.add(
                "  - ",
                "Resistance only with everything off: external supplies off, USB unplugged. A meter set to ohms on a"
                        + " live pair reads nonsense and may be harmed.");
        Cautions.LINES.forEach(line -> paragraphs.add("  - ", line));
        if (diagnosis == null) {
            result.pairs().forEach(this::pair);
            result.supplies().forEach(this::supply);
        }
        text.append('\n');
        paragraphs.add(
                "",
                "Computed from the pit file, one fault at a time: resistors within 5 %, supply and meter within a few"
                        + " per cent, transceivers from hardly any load to the most they may be. What the pit file does"
                        + " not say is taken"
                        + " for fitted as the wiring sheet has it. Two faults at once are not looked for.");
        return text.toString();
    }

    private void pair(MeterResult.Readings pair) {
        text.append("\nSegment ")
                .append(pair.pair())
                .append(", the meter at ")
                .append(pair.at())
                .append('\n');
        for (MeterResult.Expected expected : pair.expected()) {
            text.append('\n');
            paragraphs.add("  " + expected.reading().word() + ": ", how(expected.reading()));
            TextTable table = new TextTable(">reads", "means");
            table.row(of(expected.reading(), expected.sound()), "as it should be");
            expected.faults().stream()
                    .filter(MeterResult.Wrong::shows)
                    .forEach(wrong -> table.row(of(expected.reading(), wrong.range()), wrong.fault()));
            text.append(table.text());
            List<String> hidden = expected.faults().stream()
                    .filter(wrong -> !wrong.shows())
                    .map(MeterResult.Wrong::fault)
                    .toList();
            if (hidden.size() > expected.faults().size() / 2) {
                paragraphs.add("  ", "It reads much the same whatever else is wrong.");
            } else if (!hidden.isEmpty()) {
                paragraphs.add("  ", "It may read right although " + String.join("; or ", hidden) + ".");
            }
        }
    }

    private void supply(SupplyReading supply) {
        text.append("\nSupply of segment ").append(supply.segment()).append("\n\n");
        paragraphs.add(
                "  ",
                "Volts at the supply terminals of " + supply.board() + ", which has the least, with every lamp lit."
                        + " Read the supply's own terminals too: what counts is by how much the board is below.");
        TextTable table = new TextTable(">reads", ">below its supply", "means");
        supplyRow(table, supply, supply.volts(), "as it should be");
        supply.faults().forEach(wrong -> supplyRow(table, supply, wrong.volts(), wrong.fault()));
        text.append(table.text());
    }

    private static void supplyRow(TextTable table, SupplyReading supply, double volts, String means) {
        table.row(Amounts.of(volts, Unit.VOLTS), Amounts.of(supply.supplyVolts() - volts, Unit.VOLTS), means);
    }

    /** How a reading is taken. */
    private static String how(Reading reading) {
        return switch (reading) {
            case OHMS -> "resistance between D1 and D0, everything off, every bias that can be unplugged unplugged";
            case OHMS_BIASED -> "the same with the bias plugged in";
            case IDLE -> "volts from D0 (black lead) to D1 (red lead), everything on, the host not yet polling";
            case D1 -> "volts from common (black lead) to D1, the same";
            case D0 -> "volts from common (black lead) to D0, the same";
        };
    }

    private void diagnosis(MeterResult.Diagnosis diagnosis) {
        List<String> readings = diagnosis.taken().stream()
                .map(taken -> taken.reading().word() + " " + Ranges.amount(taken.reading(), taken.value()) + " at "
                        + taken.at())
                .toList();
        text.append("Segment ")
                .append(diagnosis.pair())
                .append(": ")
                .append(String.join(", ", readings))
                .append("\n\n");
        List<String> fits = diagnosis.fits();
        if (fits.isEmpty()) {
            paragraphs.add(
                    "",
                    "No single fault fits. Nearest comes: " + diagnosis.nearest()
                            + ". It may be two at once, or the pit file may not be what is there: look, and read"
                            + " again.");
            return;
        }
        paragraphs.add("", fits.size() == 1 ? "This fits:" : "These fit, the likeliest first:");
        for (int f = 0; f < fits.size(); f++) {
            paragraphs.add("  " + (f + 1) + ". ", fits.get(f));
        }
        if (fits.size() > 1) {
            further(diagnosis);
        }
    }

    private void further(MeterResult.Diagnosis diagnosis) {
        if (diagnosis.further().isEmpty()) {
            paragraphs.add("", "No further reading tells them apart: look at them one by one.");
            return;
        }
        paragraphs.add("", "That does not tell them apart. What would, step by step:");
        for (MeterResult.Further further : diagnosis.further()) {
            TextTable table = new TextTable(">" + further.reading().word() + " at " + further.at(), "if it is");
            for (int f = 0; f < diagnosis.fits().size(); f++) {
                table.row(of(further.reading(), further.ranges().get(f)), Integer.toString(f + 1));
            }
            text.append(table.text());
        }
    }

    private static String of(Reading reading, Range range) {
        return Ranges.of(reading, range);
    }
}
