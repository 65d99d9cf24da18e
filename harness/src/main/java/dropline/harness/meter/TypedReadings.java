package dropline.harness.meter;

import dropline.bus.copper.Meter;
import dropline.bus.copper.Reading;
import dropline.bus.rule.Unit;
import dropline.harness.pitfile.Measure;
import dropline.harness.pitfile.Quantity;
import dropline.harness.problem.Nearest;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Readings as people type them: {@code ohms=40}, {@code idle=170mV}, and with a board's name where the meter was not at
 * the controller, {@code idle@oil=0 mV}.
 *
 * @param pair the pair they are of
 */
record TypedReadings(MeteredPair pair, List<Meter.Taken> taken) {
    private static final Pattern FORM = Pattern.compile("([^=@]+)(?:@([^=]+))?=(.*)");
    private static final List<String> WORDS =
            Stream.of(Reading.values()).map(Reading::word).toList();

    /** One, before it is known of which pair; {@code node} is empty for the controller. */
    private record Typed(String text, Reading reading, String node, double value) {}

    static TypedReadings of(List<String> texts, List<MeteredPair> pairs) throws MeterException {
        List<Typed> all = new ArrayList<>();
        for (String text : texts) {
            all.add(typed(text));
        }
        MeteredPair pair = pair(all, pairs);
        Map<String, Meter.Taken> taken = new LinkedHashMap<>();
        for (Typed one : all) {
            int stop = stop(one, pair);
            Meter.Taken reading = new Meter.Taken(one.reading, stop, one.value);
            if (taken.putIfAbsent(one.reading + "@" + stop, reading) != null) {
                throw new MeterException("'" + one.text + "' is read twice; write each reading once");
            }
        }
        return new TypedReadings(pair, List.copyOf(taken.values()));
    }

    private static Typed typed(String text) throws MeterException {
        Matcher matcher = FORM.matcher(text.strip());
        if (!matcher.matches()) {
            throw new MeterException("'" + text + "' is no reading; write ohms=40, idle=170mV or idle@BOARD=170mV");
        }
        String word = matcher.group(1).strip();
        if (!WORDS.contains(word)) {
            throw new MeterException("'" + word + "' is nothing that a meter reads here; it reads "
                    + String.join(", ", WORDS)
                    + Nearest.to(word, WORDS)
                            .map(near -> "; did you mean " + near + "?")
                            .orElse(""));
        }
        Reading reading = Reading.values()[WORDS.indexOf(word)];
        String node = matcher.group(2) == null ? "" : matcher.group(2).strip();
        return new Typed(text, reading, node, value(reading, matcher.group(3).strip()));
    }

    /** In ohm or volts. A number of ohms needs no unit: a meter set to ohms shows nothing else. */
    private static double value(Reading reading, String text) throws MeterException {
        boolean ohms = reading.unit() == Unit.OHMS;
        Optional<Quantity> quantity = Quantity.of(text);
        Optional<BigDecimal> value = quantity.flatMap(q -> {
            boolean bare = q.unit().isEmpty() && (ohms || q.number().signum() == 0);
            return bare
                    ? Optional.of(q.number())
                    : (ohms ? Measure.resistance() : Measure.voltage())
                            .inBase(q)
                            .map(base -> ohms ? base : base.movePointLeft(3));
        });
        if (value.isEmpty() || (ohms && value.get().signum() < 0)) {
            throw new MeterException("'" + text + "' is no reading of " + reading.word() + "; write "
                    + (ohms ? "ohms, such as 40 or 1.2 kohm" : "volts with their unit, such as 170 mV or -0.2 V"));
        }
        return value.get().doubleValue();
    }

    private static MeteredPair pair(List<Typed> typed, List<MeteredPair> pairs) throws MeterException {
        Set<MeteredPair> meant = new LinkedHashSet<>();
        for (Typed one : typed) {
            if (!one.node.isEmpty()) {
                meant.add(withNode(one, pairs));
            }
        }
        if (meant.size() > 1) {
            throw new MeterException("the boards named are on different pairs; ask about one pair at a time");
        }
        if (!meant.isEmpty()) {
            return meant.iterator().next();
        }
        if (pairs.size() > 1) {
            throw new MeterException("readings are of one pair, and there are "
                    + String.join(", ", pairs.stream().map(MeteredPair::name).toList())
                    + "; choose with --segment, or say at which board it was read: idle@BOARD=170mV");
        }
        return pairs.get(0);
    }

    private static MeteredPair withNode(Typed one, List<MeteredPair> pairs) throws MeterException {
        List<String> names = new ArrayList<>();
        for (MeteredPair pair : pairs) {
            for (int stop : pair.meter().stops()) {
                names.add(pair.stop(stop));
                if (pair.stop(stop).equals(one.node)) {
                    return pair;
                }
            }
        }
        throw new MeterException("'" + one.text + "': there is no board '" + one.node + "' here"
                + Nearest.to(one.node, names)
                        .map(near -> "; did you mean " + near + "?")
                        .orElse(""));
    }

    private static int stop(Typed one, MeteredPair pair) {
        return one.node.isEmpty()
                ? pair.usualStop()
                : pair.meter().stops().stream()
                        .filter(stop -> pair.stop(stop).equals(one.node))
                        .findFirst()
                        .orElseThrow();
    }
}
