package dropline.harness.fault;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.fault.FaultKind.Timing;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.fault.Token.Clause;
import dropline.harness.pitfile.Lengths;
import dropline.harness.pitfile.Measure;
import dropline.harness.pitfile.Quantity;
import dropline.harness.problem.Nearest;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * Reads the texts of the option {@code --fault}: {@code KIND TARGET [as NODE] [at T] [for T] [rate R] [by AMOUNT]}, the
 * parts after the target in any order. What is left out is the usual.
 */
public final class FaultOptions {
    private final Pit pit;
    private final Layout layout;
    private final Targets targets;
    private final Amounts amounts;
    private final OptionalLong lengthNanos;

    private FaultOptions(Pit pit, OptionalLong lengthNanos) {
        this.pit = pit;
        this.layout = Layout.of(pit);
        this.targets = new Targets(pit, layout);
        this.amounts = new Amounts(pit, layout);
        this.lengthNanos = lengthNanos;
    }

    /**
     * What became of all the texts.
     *
     * @param faults in the order of the texts; those that are wrong are left out
     * @param problems everything that is wrong with any of them
     */
    public record Read(List<Fault> faults, List<Problem> problems) {
        public Read {
            faults = List.copyOf(faults);
            problems = List.copyOf(problems);
        }
    }

    /**
     * Reads all texts.
     *
     * @param lengthNanos how long the run will be, ns; empty where that is not known before it
     */
    public static Read read(List<String> texts, Pit pit, OptionalLong lengthNanos) {
        FaultOptions options = new FaultOptions(pit, lengthNanos);
        Problems problems = new Problems();
        List<Fault> faults = new ArrayList<>();
        for (String text : texts) {
            options.one(text, new Complaints(text, problems)).ifPresent(faults::add);
        }
        return new Read(faults, problems.list());
    }

    /** That a run was over before these faults could begin; none of those that did. */
    public static List<Problem> neverStruck(List<Fault> faults, Pit pit, long ranNanos) {
        Problems problems = new Problems();
        FaultText texts = new FaultText(pit, Layout.of(pit));
        for (Fault fault : faults) {
            if (fault.fromNanos() >= ranNanos) {
                Complaints complaints = new Complaints(texts.of(fault), problems);
                afterEnd(Measure.time().write(fault.fromNanos()) + "; it never struck", ranNanos, complaints);
            }
        }
        return problems.list();
    }

    private Optional<Fault> one(String text, Complaints complaints) {
        Optional<List<Token>> read = Token.of(text);
        if (read.isEmpty()) {
            complaints.add(
                    "",
                    FaultCode.UNCLOSED_QUOTE,
                    text.substring(text.lastIndexOf('\'')),
                    "a quote at both ends of a name",
                    "write two quotes for one that belongs to a name");
            return Optional.empty();
        }
        List<Token> words = read.get();
        if (words.isEmpty()) {
            complaints.add(
                    "",
                    FaultCode.EMPTY_FAULT,
                    "nothing",
                    "KIND TARGET [as NODE] [at T] [for T] [rate R] [by AMOUNT]",
                    "dropline faults shows every kind with an example");
            return Optional.empty();
        }
        Optional<FaultKind> kind = kind(words.get(0).text(), complaints);
        return kind.flatMap(known -> of(known, words.subList(1, words.size()), complaints));
    }

    /** The kind of this word, whatever its case. */
    public static Optional<FaultKind> kind(String word) {
        return Stream.of(FaultKind.values())
                .filter(kind -> kind.word().equalsIgnoreCase(word))
                .findFirst();
    }

    /** The word of the kind that a mistyped one is nearest to. */
    public static Optional<String> nearest(String word) {
        return Nearest.to(
                word, Stream.of(FaultKind.values()).map(FaultKind::word).toList());
    }

    private static Optional<FaultKind> kind(String word, Complaints complaints) {
        Optional<FaultKind> kind = kind(word);
        if (kind.isEmpty()) {
            String fix = nearest(word).map(near -> "write " + near + "; ").orElse("");
            complaints.add(
                    "", FaultCode.UNKNOWN_FAULT, word, "a kind of fault", fix + "dropline faults lists them all");
        }
        return kind;
    }

    private Optional<Fault> of(FaultKind kind, List<Token> words, Complaints complaints) {
        int first = firstClause(words);
        Optional<Struck> struck = targets.find(kind, words.subList(0, first), complaints);
        Map<Clause, List<Token>> clauses = clauses(words.subList(first, words.size()), complaints);
        OptionalInt other = other(kind, struck, clauses, complaints);
        long from = from(clauses, complaints);
        long until = until(kind, from, clauses, complaints);
        double rate = rate(kind, clauses, complaints);
        OptionalLong amount = amount(kind, struck, clauses, complaints);
        if (complaints.any() || struck.isEmpty() || amount.isEmpty()) {
            return Optional.empty();
        }
        Struck what = struck.get();
        return Optional.of(new Fault(
                kind,
                what.segment(),
                what.node(),
                what.part(),
                other.orElse(-1),
                from,
                until,
                rate,
                amount.getAsLong()));
    }

    private static int firstClause(List<Token> words) {
        for (int i = 0; i < words.size(); i++) {
            if (words.get(i).clause().isPresent()) {
                return i;
            }
        }
        return words.size();
    }

    private static Map<Clause, List<Token>> clauses(List<Token> words, Complaints complaints) {
        Map<Clause, List<Token>> clauses = new EnumMap<>(Clause.class);
        int at = 0;
        while (at < words.size()) {
            Clause clause = words.get(at).clause().orElseThrow();
            int end = at + 1 + firstClause(words.subList(at + 1, words.size()));
            List<Token> value = words.subList(at + 1, end);
            if (value.isEmpty()) {
                complaints.add(
                        clause.word(),
                        FaultCode.MISSING_VALUE,
                        clause.word() + " and nothing after it",
                        null,
                        "write " + example(clause) + ", or leave " + clause.word() + " out");
            } else if (clauses.put(clause, value) != null) {
                complaints.add(
                        clause.word(),
                        FaultCode.DUPLICATE_KEY,
                        clause.word() + " " + Targets.joined(value),
                        clause.word() + ", written one time",
                        "leave one of them out; give a second fault a --fault of its own");
            }
            at = end;
        }
        return clauses;
    }

    private static String example(Clause clause) {
        return switch (clause) {
            case AS -> "as NODE";
            case AT -> "at 60s";
            case FOR -> "for 30s";
            case RATE -> "rate 20% or rate 2/s";
            case BY -> "by 2ms";
        };
    }

    private OptionalInt other(
            FaultKind kind, Optional<Struck> struck, Map<Clause, List<Token>> clauses, Complaints complaints) {
        List<Token> as = clauses.get(Clause.AS);
        if (kind.strikes() != Strikes.NODE_AND_OTHER) {
            unused(Clause.AS, as, kind.word() + " involves no other node", complaints);
        } else if (as == null) {
            complaints.add(
                    "as",
                    FaultCode.MISSING_KEY,
                    "no other node",
                    "the node whose address it answers to",
                    "add as NODE");
        } else if (struck.isPresent()) {
            Optional<Integer> other = targets.other(struck.get(), as, complaints);
            return other.map(OptionalInt::of).orElse(OptionalInt.empty());
        }
        return OptionalInt.empty();
    }

    private long from(Map<Clause, List<Token>> clauses, Complaints complaints) {
        List<Token> at = clauses.get(Clause.AT);
        if (at == null) {
            return 0;
        }
        OptionalLong nanos = time(Clause.AT, Targets.joined(at), complaints);
        if (nanos.isPresent() && lengthNanos.isPresent() && nanos.getAsLong() >= lengthNanos.getAsLong()) {
            afterEnd(Targets.joined(at), lengthNanos.getAsLong(), complaints);
        }
        return nanos.orElse(0);
    }

    private static void afterEnd(String found, long lengthNanos, Complaints complaints) {
        String third = Measure.time().write(Math.max(1, lengthNanos / 3 / 1_000_000_000L) * 1_000_000_000L);
        complaints.add(
                "at",
                FaultCode.AFTER_END,
                found,
                "a time before the run ends, at " + Measure.time().write(rounded(lengthNanos)),
                "write, for one, at " + third);
    }

    /** A recording's last row belongs to it, so that its length is often a nanosecond more than people think. */
    private static long rounded(long nanos) {
        return nanos < 1_000_000L ? nanos : nanos / 1_000L * 1_000L;
    }

    private long until(FaultKind kind, long from, Map<Clause, List<Token>> clauses, Complaints complaints) {
        List<Token> length = clauses.get(Clause.FOR);
        if (length == null) {
            return Fault.TO_THE_END;
        }
        boolean once = kind.timing() == Timing.EVENT && Usual.rate(kind) == 0 && !clauses.containsKey(Clause.RATE);
        if (once) {
            String fix = kind.unit() == FaultKind.Unit.TIME
                    ? "write by " + Targets.joined(length) + " for how long it lasts, or add a rate such as rate 2/s"
                    : "add a rate such as rate 2/s, or leave it out";
            complaints.add(
                    "for", FaultCode.UNUSED_KEY, "for " + Targets.joined(length), "no span: it strikes once", fix);
            return Fault.TO_THE_END;
        }
        OptionalLong nanos = time(Clause.FOR, Targets.joined(length), complaints);
        if (nanos.isPresent() && nanos.getAsLong() == 0) {
            complaints.add("for", FaultCode.OUT_OF_RANGE, Targets.joined(length), "longer than nothing", null);
            return Fault.TO_THE_END;
        }
        return nanos.isEmpty() || nanos.getAsLong() > Fault.TO_THE_END - from
                ? Fault.TO_THE_END
                : from + nanos.getAsLong();
    }

    private static OptionalLong time(Clause clause, String text, Complaints complaints) {
        OptionalLong nanos = text.equals("0") ? OptionalLong.of(0) : Lengths.nanos(text);
        if (nanos.isPresent()) {
            return nanos;
        }
        Optional<Quantity> quantity = Quantity.of(text);
        boolean negative =
                text.startsWith("-") && Lengths.nanos(text.substring(1)).isPresent();
        FaultCode code = negative
                ? FaultCode.OUT_OF_RANGE
                : quantity.isEmpty()
                        ? FaultCode.WRONG_TYPE
                        : quantity.get().unit().isEmpty() ? FaultCode.MISSING_UNIT : FaultCode.WRONG_UNIT;
        String fix = code == FaultCode.MISSING_UNIT && !text.startsWith("-")
                ? "write " + clause.word() + " " + text + "s"
                : "write " + example(clause);
        complaints.add(
                clause.word(),
                code,
                text,
                clause == Clause.AT
                        ? "a time from the run's begin on, with its unit: 60s, 2m30s"
                        : "a length of time with its unit: 60s, 2m30s",
                fix);
        return OptionalLong.empty();
    }

    private static double rate(FaultKind kind, Map<Clause, List<Token>> clauses, Complaints complaints) {
        List<Token> rate = clauses.get(Clause.RATE);
        if (kind.timing() == Timing.STEADY) {
            unused(Clause.RATE, rate, kind.word() + " lasts all the time", complaints);
            return 0;
        }
        OptionalDouble read =
                rate == null ? OptionalDouble.empty() : Rates.read(kind, Targets.joined(rate), complaints);
        return read.orElse(Usual.rate(kind));
    }

    private OptionalLong amount(
            FaultKind kind, Optional<Struck> struck, Map<Clause, List<Token>> clauses, Complaints complaints) {
        List<Token> by = clauses.get(Clause.BY);
        if (kind.unit() == FaultKind.Unit.NONE) {
            unused(Clause.BY, by, kind.word() + " has no amount", complaints);
            return OptionalLong.of(0);
        }
        if (struck.isEmpty()) {
            return OptionalLong.empty();
        }
        return by == null
                ? OptionalLong.of(Usual.amount(kind, struck.get(), pit, layout))
                : amounts.read(kind, struck.get(), Targets.joined(by), complaints);
    }

    private static void unused(
            Clause clause, @org.jspecify.annotations.Nullable List<Token> value, String why, Complaints complaints) {
        if (value != null) {
            complaints.add(
                    clause.word(),
                    FaultCode.UNUSED_KEY,
                    clause.word() + " " + Targets.joined(value),
                    "no " + clause.word() + ": " + why,
                    "leave it out");
        }
    }
}
