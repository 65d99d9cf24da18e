package dropline.harness.power;

import dropline.bus.rule.Ruling;
import dropline.bus.rule.Unit;
import dropline.bus.supply.State;
import dropline.harness.report.Figures;
import dropline.harness.report.Paragraphs;
import dropline.harness.report.TextTable;
import dropline.harness.ruling.Amounts;
import dropline.harness.ruling.RulingText;
import dropline.harness.wiring.Cautions;
import java.util.Comparator;
import java.util.List;

/** What the supplies of a pit come to, as text for a terminal. */
public final class PowerText {
    private static final int MOST_BOARDS = 12;

    private final PowerResult result;
    private final StringBuilder text = new StringBuilder();
    private final Paragraphs paragraphs = new Paragraphs(text);

    private PowerText(PowerResult result) {
        this.result = result;
    }

    /** The whole text; lines end in {@code \n}. */
    public static String of(PowerResult result) {
        return new PowerText(result).text();
    }

    private String text() {
        text.append("Supplies: ").append(result.pit()).append('\n');
        text.append('\n');
        PowerSentences.of(result).forEach(sentence -> paragraphs.add("", sentence));
        heading("Before you touch a wire");
        Cautions.LINES.forEach(line -> paragraphs.add("  - ", line));
        heading("Amperes, by what the pit does");
        text.append(amps());
        paragraphs.add("", PowerSentences.STATES);
        heading("Boards with the least volts");
        text.append(boards());
        heading("Rules");
        text.append(RulingText.table(result.rulings()));
        text.append(RulingText.notes(
                result.rulings().stream()
                        .filter(ruling -> ruling.standing() != Ruling.Standing.HOLDS)
                        .toList(),
                SupplyAdvice::of));
        flight();
        powerUp();
        zones();
        heading("What this rests on");
        PowerSentences.restsOn(result).forEach(sentence -> paragraphs.add("", sentence));
        return text.toString();
    }

    private void heading(String words) {
        text.append('\n')
                .append(words)
                .append('\n')
                .append("-".repeat(words.length()))
                .append('\n');
    }

    private String amps() {
        TextTable table = new TextTable(
                "supply or run", "wire", ">boards", ">idle", ">flight", ">night", ">lamp test", ">start", ">rating");
        for (PowerResult.Point point : result.points()) {
            table.row(
                    "  ".repeat(point.depth()) + point.name(),
                    point.isSupply() ? amount(point.volts(), Unit.VOLTS) : wire(point),
                    Integer.toString(point.boards()),
                    amps(point, State.IDLE),
                    amps(point, State.IN_FLIGHT),
                    amps(point, State.AT_NIGHT),
                    amps(point, State.LAMP_TEST),
                    amps(point, State.COLD_START),
                    point.ratingAmps() > 0 ? amount(point.ratingAmps(), Unit.AMPERES) : "");
        }
        return table.text();
    }

    private static String wire(PowerResult.Point run) {
        return run.wire() + ", " + amount(run.metres(), Unit.METRES);
    }

    private static String amps(PowerResult.Point point, State state) {
        return amount(point.amps(state), Unit.AMPERES);
    }

    private static String amount(double value, Unit unit) {
        return Amounts.of(value, unit);
    }

    private String boards() {
        TextTable table =
                new TextTable("board", "fed by", ">least volts", "when", ">works down to", ">ground", ">heat");
        List<PowerResult.Board> tightest = result.boards().stream()
                .sorted(Comparator.comparingDouble(board -> board.volts() - board.worksDownTo()))
                .limit(MOST_BOARDS)
                .toList();
        for (PowerResult.Board board : tightest) {
            table.row(
                    board.name(),
                    board.fedBy(),
                    board.volts() == 0 ? "none" : amount(board.volts(), Unit.VOLTS),
                    board.when().when(),
                    board.worksDownTo() == 0 ? "not stated" : amount(board.worksDownTo(), Unit.VOLTS),
                    amount(board.groundVolts(), Unit.VOLTS),
                    amount(board.regulatorWatts(), Unit.WATTS));
        }
        int more = result.boards().size() - tightest.size();
        return table.text() + (more > 0 ? "  and " + more + " more that stand better\n" : "");
    }

    private void flight() {
        Flight flight = result.flight();
        if (flight == null) {
            return;
        }
        heading("Over the flight: " + flight.recording() + ", " + Figures.duration(flight.durationNanos()));
        TextTable table = new TextTable("supply or run", ">mean", ">99 of 100", ">most", ">at");
        for (PowerResult.Point point : result.points()) {
            Flight.Drawn drawn = flight.points().get(point.number());
            table.row(
                    "  ".repeat(point.depth()) + point.name(),
                    amount(drawn.mean(), Unit.AMPERES),
                    amount(drawn.p99(), Unit.AMPERES),
                    amount(drawn.max(), Unit.AMPERES),
                    Figures.instant(drawn.maxNanos()));
        }
        text.append(table.text());
        TextTable boards = new TextTable("board", ">least volts", ">at", ">ground then");
        result.boards().stream()
                .sorted(Comparator.comparingDouble(
                        board -> flight.boards().get(board.node()).volts() - board.worksDownTo()))
                .limit(MOST_BOARDS / 2)
                .forEach(board -> {
                    Flight.Least least = flight.boards().get(board.node());
                    boards.row(
                            board.name(),
                            amount(least.volts(), Unit.VOLTS),
                            Figures.instant(least.atNanos()),
                            amount(least.groundVolts(), Unit.VOLTS));
                });
        text.append('\n').append(boards.text());
    }

    private void powerUp() {
        PowerUp start = result.powerUp();
        if (start == null) {
            return;
        }
        heading("Power-up");
        TextTable table = new TextTable(">after", "what");
        start.steps().forEach(step -> table.row(Figures.time(step.atNanos()), step.what()));
        text.append(table.text());
        PowerSentences.powerUp(start).forEach(sentence -> paragraphs.add("", sentence));
    }

    private void zones() {
        if (result.zones().isEmpty()) {
            return;
        }
        heading("Backlight zones");
        TextTable table = new TextTable("zone", "level", ">volts", ">full", "curve", ">bits", ">coarsest step");
        for (Zone zone : result.zones()) {
            table.row(
                    zone.name(),
                    zone.signal(),
                    amount(zone.volts(), Unit.VOLTS),
                    amount(zone.amps(), Unit.AMPERES),
                    zone.curve(),
                    Integer.toString(zone.bits()),
                    Figures.percent(zone.coarsest() - 1));
        }
        text.append(table.text());
        PowerSentences.zones(result).forEach(sentence -> paragraphs.add("", sentence));
    }
}
