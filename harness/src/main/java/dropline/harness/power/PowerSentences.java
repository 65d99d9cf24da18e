package dropline.harness.power;

import dropline.bus.rule.Ruling;
import dropline.bus.rule.Unit;
import dropline.bus.supply.Feeds;
import dropline.bus.supply.State;
import dropline.harness.report.Figures;
import dropline.harness.ruling.Amounts;
import dropline.harness.ruling.RulingText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What the supplies of a pit come to, in plain sentences. */
final class PowerSentences {
    /** What the states mean, wherever their figures are. */
    static final String STATES =
            "Idle: boards run, everything is dark, blank and still. Flight: every display shows and every motor moves"
                    + " at once, lamps are dark: more than a real flight takes, but for the moments in which something"
                    + " starts. Night: the backlight is full on too. Lamp test: every lamp is lit as well. Start: all"
                    + " boards start together, displays come on, motors look for their zero.";

    private PowerSentences() {}

    /** The answer. */
    static List<String> of(PowerResult result) {
        List<String> sentences = new ArrayList<>();
        List<Ruling> broken = result.rulings().stream()
                .filter(ruling -> ruling.standing() == Ruling.Standing.BROKEN)
                .toList();
        List<Ruling> open = result.rulings().stream()
                .filter(ruling -> ruling.standing() == Ruling.Standing.UNKNOWN)
                .toList();
        if (broken.isEmpty() && open.isEmpty()) {
            sentences.add("Every rule holds on every supply.");
        }
        for (Ruling ruling : broken) {
            sentences.add(RulingText.word(ruling) + ": " + ruling.where() + ": "
                    + ruling.rule().title() + ": " + RulingText.value(ruling) + ", " + RulingText.limit(ruling) + ".");
        }
        if (!open.isEmpty()) {
            Ruling first = open.get(0);
            sentences.add("Undecided: " + Figures.plural(open.size(), "rule") + " cannot be judged, since "
                    + first.where() + ": " + first.basis() + ".");
        }
        result.supplies().forEach(supply -> sentences.add(supply(result, supply)));
        if (result.unfed() > 0) {
            sentences.add(Figures.plural(result.unfed(), "board") + " of the pit "
                    + (result.unfed() == 1 ? "is" : "are") + " on no supply; nothing is said of "
                    + (result.unfed() == 1 ? "it." : "them."));
        }
        return sentences;
    }

    private static String supply(PowerResult result, PowerResult.Point supply) {
        String name = supply.name() + " (" + amount(supply.volts(), Unit.VOLTS)
                + (supply.ratingAmps() > 0 ? ", " + amount(supply.ratingAmps(), Unit.AMPERES) : "") + "): ";
        for (State state : State.values()) {
            if (Double.isNaN(supply.amps(state))) {
                return name + "collapses " + state.when()
                        + ": there are no volts at which supply, wires and boards agree.";
            }
        }
        double test = supply.amps(State.LAMP_TEST);
        String share =
                supply.ratingAmps() > 0 ? " (" + Figures.percent(test / supply.ratingAmps()) + " of its rating)" : "";
        String amps = name + amount(supply.amps(State.IDLE), Unit.AMPERES) + " idle, "
                + amount(supply.amps(State.IN_FLIGHT), Unit.AMPERES) + " in flight, " + amount(test, Unit.AMPERES)
                + " in a lamp test" + share + ", " + amount(supply.amps(State.COLD_START), Unit.AMPERES)
                + " as all starts at once.";
        return result.boards().stream()
                .filter(board -> board.supply().equals(supply.name()) && board.worksDownTo() > 0)
                .min(Comparator.comparingDouble(board -> board.volts() - board.worksDownTo()))
                .map(board -> amps + " Nearest to a brown-out is " + board.name() + ": "
                        + amount(board.volts(), Unit.VOLTS) + " " + board.when().when() + ", it works down to "
                        + amount(board.worksDownTo(), Unit.VOLTS) + ".")
                .orElse(amps);
    }

    static List<String> powerUp(PowerUp start) {
        List<String> sentences = new ArrayList<>();
        for (int s = 0; s < start.peaks().size(); s++) {
            PowerUp.Peak peak = start.peaks().get(s);
            StringBuilder words = new StringBuilder(peak.supply() + ": ready after ")
                    .append(Figures.time(start.readyNanos()))
                    .append(", peak ")
                    .append(amount(peak.amps(), Unit.AMPERES))
                    .append(" at ")
                    .append(Figures.time(peak.atNanos()))
                    .append(peak.why().isEmpty() ? "" : " because " + peak.why());
            PowerUp.Staggered turn = start.staggered();
            if (turn != null && turn.amps().get(s) < peak.amps()) {
                words.append("; delayed by address ")
                        .append(amount(turn.amps().get(s), Unit.AMPERES))
                        .append(" (")
                        .append(Figures.time(turn.delayNanos()))
                        .append(" for each address, ready after ")
                        .append(Figures.time(turn.readyNanos()))
                        .append(")");
            }
            words.append("; as the first state is shown, ")
                    .append(amount(peak.firstStateAmps(), Unit.AMPERES))
                    .append(" at ")
                    .append(Figures.time(peak.firstStateNanos()));
            sentences.add(words.append('.').toString());
        }
        sentences.add("Up to the computer's start this is a model: boot times, the longest time to a zero, starting"
                + " currents. From then on it is a run of the simulator in which every needle goes to the middle of its"
                + " scale and lamps stay dark. Charging capacitors are not counted.");
        return sentences;
    }

    static List<String> zones(PowerResult result) {
        List<String> sentences = new ArrayList<>();
        for (PowerResult.Traffic traffic : result.traffic()) {
            String broadcast = traffic.broadcast() == 0
                    ? "its protocol cannot broadcast"
                    : Figures.count(traffic.broadcast()) + " bytes a second when broadcast";
            sentences.add("Segment " + traffic.segment() + ": " + Figures.plural(traffic.zones(), "zone")
                    + " turned at once, " + traffic.rate() + " levels a second: " + broadcast + ", "
                    + Figures.count(traffic.oneByOne()) + " one by one.");
        }
        PowerUp start = result.powerUp();
        if (start != null && result.zones().size() > 1) {
            sentences.add("When the levels of all zones change at once, the slowest zone is "
                    + Figures.time(start.zoneLagNanos()) + " behind the fastest (simulated, the first state).");
        }
        sentences.add("Coarsest step: the largest change in brightness from one level to the next above dark. From"
                + " about 2 % on the eye sees a step (Weber's law; the figure from memory). Finer levels of the"
                + " signal and more bits make it smaller.");
        return sentences;
    }

    /** What is a model, an assumption, or was not looked at. */
    static List<String> restsOn(PowerResult result) {
        PowerResult.Figures figures = result.figures();
        return List.of(
                "Of " + (figures.stated() + figures.guessed() + figures.unknown()) + " currents, "
                        + figures.stated() + " are stated, " + figures.guessed() + " guessed or a preset's, "
                        + figures.unknown() + " not known and counted as nothing. Measure the large ones first.",
                "A model: supplies keep their volts; wires are copper at " + Math.round(Feeds.WIRE_CELSIUS)
                        + " degC, counted there and back; linear regulators and what is fed straight take the same"
                        + " current at every voltage, switching converters the same power.",
                "Not looked at: fuses and what a wire may carry (your local code and the wire's maker say that), inrush"
                        + " into capacitors, stalled motors, heat behind panels, mains. All of it is a planning aid.");
    }

    private static String amount(double value, Unit unit) {
        return Amounts.of(value, unit);
    }
}
