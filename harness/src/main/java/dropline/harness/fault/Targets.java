package dropline.harness.fault;

import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Nearest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Finds what a fault strikes by the name a person gave it, whatever its case. */
final class Targets {
    private final Pit pit;
    private final Layout layout;
    private final Strikable strikable;

    Targets(Pit pit, Layout layout) {
        this.pit = pit;
        this.layout = layout;
        this.strikable = new Strikable(pit, layout);
    }

    /** What the kind strikes; empty with the reason noted. */
    Optional<Struck> find(FaultKind kind, List<Token> words, Complaints complaints) {
        if (kind.strikes() == Strikes.HOST) {
            if (!words.isEmpty()) {
                complaints.add(
                        "", FaultCode.UNUSED_KEY, joined(words), "nothing: there is one host", "leave the name out");
            }
            return Optional.of(Struck.HOST);
        }
        if (words.isEmpty()) {
            String example = names(kind).stream().findFirst().orElse("NAME");
            complaints.add(
                    "",
                    FaultCode.MISSING_TARGET,
                    "no name after " + kind.word(),
                    "the name of " + sort(kind.strikes()),
                    "write " + kind.word() + " " + Token.written(example));
            return Optional.empty();
        }
        if (words.size() > 1) {
            complaints.add(
                    "",
                    FaultCode.UNQUOTED_NAME,
                    joined(words),
                    "one name; one with spaces stands in single quotes",
                    "write " + Token.written(joined(words).replace("'", "")));
            return Optional.empty();
        }
        return named(kind, words.get(0).text(), complaints);
    }

    /** The index of the node whose address is answered to; empty with the reason noted. */
    Optional<Integer> other(Struck struck, List<Token> words, Complaints complaints) {
        String name = joined(words);
        Optional<Struck> found = one(matching(strikable.candidates(FaultKind.DEAD_NODE), FaultKind.DEAD_NODE, name));
        if (found.isEmpty()) {
            String segment = struck.segment(pit).name();
            List<String> near = others(struck);
            complaints.add(
                    "as",
                    FaultCode.UNKNOWN_NAME,
                    name,
                    "the name of another node on segment " + segment,
                    Nearest.to(name, near)
                            .map(n -> "write as " + Token.written(n))
                            .orElse(null));
            return Optional.empty();
        }
        if (found.get().segment() != struck.segment() || found.get().node() == struck.node()) {
            String found0 = found.get().node() == struck.node()
                    ? name + ", the node itself"
                    : name + ", on segment " + found.get().segment(pit).name();
            complaints.add(
                    "as",
                    FaultCode.WRONG_TARGET,
                    found0,
                    "another node on segment " + struck.segment(pit).name(),
                    others(struck).stream()
                            .findFirst()
                            .map(n -> "write as " + Token.written(n))
                            .orElse(null));
            return Optional.empty();
        }
        return Optional.of(found.get().node());
    }

    private List<String> others(Struck struck) {
        return strikable.candidates(FaultKind.DEAD_NODE).stream()
                .filter(node -> node.segment() == struck.segment() && node.node() != struck.node())
                .map(node -> node.name(FaultKind.DEAD_NODE, pit, layout))
                .toList();
    }

    private Optional<Struck> named(FaultKind kind, String name, Complaints complaints) {
        List<Struck> matches = matching(strikable.candidates(kind), kind, name);
        if (matches.isEmpty() && kind.strikes() == Strikes.INDICATOR) {
            return ofPanel(kind, name, complaints);
        }
        return checked(kind, name, matches, complaints);
    }

    /** A panel's name stands for its one indicator that can be struck. */
    private Optional<Struck> ofPanel(FaultKind kind, String name, Complaints complaints) {
        List<Struck> onPanel = strikable.candidates(kind).stream()
                .filter(struck ->
                        layout.slots().get(struck.part()).panel().name().equalsIgnoreCase(name))
                .toList();
        List<Struck> fit = onPanel.stream()
                .filter(struck -> strikable.refusal(kind, struck).isEmpty())
                .toList();
        return checked(kind, name, fit.isEmpty() ? onPanel : fit, complaints);
    }

    private Optional<Struck> checked(FaultKind kind, String name, List<Struck> matches, Complaints complaints) {
        Optional<Struck> one = one(matches);
        if (matches.isEmpty()) {
            unknown(kind, name, complaints);
        } else if (matches.stream()
                .allMatch(match -> strikable.refusal(kind, match).isPresent())) {
            String what = strikable.refusal(kind, matches.get(0)).orElseThrow();
            complaints.add("", FaultCode.WRONG_TARGET, name, kind.word() + " strikes " + what, instead(kind));
            return Optional.empty();
        } else if (one.isEmpty()) {
            String choices = matches.stream()
                    .map(match -> Token.written(match.name(kind, pit, layout)))
                    .collect(Collectors.joining(", "));
            complaints.add("", FaultCode.AMBIGUOUS_NAME, name, "one of: " + choices, null);
        }
        return one;
    }

    private static Optional<Struck> one(List<Struck> matches) {
        return matches.size() == 1 ? Optional.of(matches.get(0)) : Optional.empty();
    }

    /** Those of this name as it is written, or else whatever its case. */
    private List<Struck> matching(List<Struck> candidates, FaultKind kind, String name) {
        List<Struck> exact = candidates.stream()
                .filter(struck -> struck.name(kind, pit, layout).equals(name))
                .toList();
        return !exact.isEmpty()
                ? exact
                : candidates.stream()
                        .filter(struck -> struck.name(kind, pit, layout).equalsIgnoreCase(name))
                        .toList();
    }

    private void unknown(FaultKind kind, String name, Complaints complaints) {
        Optional<String> elsewhere = elsewhere(name);
        String expected = "the name of " + sort(kind.strikes());
        if (elsewhere.isPresent()) {
            complaints.add("", FaultCode.WRONG_TARGET, elsewhere.get(), expected, instead(kind));
            return;
        }
        String fix = Nearest.to(name, names(kind))
                .map(near -> "write " + kind.word() + " " + Token.written(near))
                .orElse("dropline describe lists the names of a pit");
        complaints.add("", FaultCode.UNKNOWN_NAME, name, expected, fix);
    }

    /** What else in the pit has this name. */
    private Optional<String> elsewhere(String name) {
        for (FaultKind kind : new FaultKind[] {
            FaultKind.MISSING_BIAS, FaultKind.DEAD_NODE, FaultKind.FROZEN_DISPLAY, FaultKind.ENCODER_SKIPS
        }) {
            List<Struck> matches = matching(strikable.candidates(kind), kind, name);
            if (!matches.isEmpty()) {
                return Optional.of(name + ", " + sort(kind.strikes()));
            }
        }
        boolean panel = layout.nodes().stream()
                .flatMap(place -> place.node().panels().stream())
                .anyMatch(carried -> carried.name().equalsIgnoreCase(name));
        return panel ? Optional.of(name + ", a panel") : Optional.empty();
    }

    private String instead(FaultKind kind) {
        List<Struck> all = strikable.all(kind);
        return all.isEmpty()
                ? "leave it out: there is no such thing in this pit"
                : "write, for one, " + kind.word() + " "
                        + Token.written(all.get(0).name(kind, pit, layout));
    }

    /** The names of what a kind can strike; panels of one such indicator among them. */
    private List<String> names(FaultKind kind) {
        List<String> names = new ArrayList<>();
        for (Struck struck : strikable.all(kind)) {
            names.add(struck.name(kind, pit, layout));
            if (kind.strikes() == Strikes.INDICATOR) {
                names.add(layout.slots().get(struck.part()).panel().name());
            }
        }
        return names;
    }

    static String sort(Strikes strikes) {
        return switch (strikes) {
            case NODE, NODE_AND_OTHER -> "a node";
            case SEGMENT -> "a segment";
            case INDICATOR -> "an indicator, as PANEL/INDICATOR";
            case CONTROL -> "a control";
            case HOST -> "the host";
        };
    }

    static String joined(List<Token> words) {
        return words.stream().map(Token::text).collect(Collectors.joining(" "));
    }
}
