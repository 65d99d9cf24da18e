package dropline.harness.wiring;

import dropline.bus.copper.Pair;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Fitting.PairLoad;
import java.util.ArrayList;
import java.util.List;

/** What to fit to a stop of a pair, what to leave in place and what to take off. */
final class Fit {
    private Fit() {}

    /** For the sheet: everything about terminator and bias. */
    static String of(Pair pair, int stop) {
        List<String> words = new ArrayList<>();
        PairLoad own = stop == Cable.CONTROLLER
                ? PairLoad.PLAIN
                : pair.segment().nodes().get(stop).fitting().pairLoad();
        if (pair.isEnd(stop)) {
            words.add(
                    own.terminatorOhms() > 0
                            ? "END: keep its own " + own.terminatorOhms() + " ohm"
                            : "END: terminator 120 ohm");
        } else if (pair.losesTerminator(stop)) {
            words.add("REMOVE its own " + own.terminatorOhms() + " ohm");
        }
        if (pair.isBiasedAt(stop)) {
            words.add(own.biasOhms() > 0 ? "BIAS: keep its own, 2 x " + own.biasOhms() + " ohm" : "BIAS here");
        } else if (pair.losesBias(stop)) {
            words.add("REMOVE its own bias, 2 x " + own.biasOhms() + " ohm");
        } else if (own.biasOhms() > 0 && pair.biasAt() == null) {
            words.add("its own bias, 2 x " + own.biasOhms() + " ohm, is there: the pit file says bias: no");
        } else if (own.biasOhms() > 0) {
            words.add("its own 2 x " + own.biasOhms() + " ohm may stay: too weak to count");
        }
        return words.isEmpty() ? "-" : String.join("; ", words);
    }

    /** For a card: whether it has a terminator, as an answer. */
    static String terminator(Pair pair, int stop) {
        int own = pair.segment().nodes().get(stop).fitting().pairLoad().terminatorOhms();
        if (pair.isEnd(stop)) {
            return own > 0 ? "YES, its own " + own + " ohm" : "YES, 120 ohm";
        }
        return pair.losesTerminator(stop) ? "NO: remove its own " + own + " ohm" : "no";
    }

    /** For a card: whether it holds the pair. */
    static String bias(Pair pair, int stop) {
        if (pair.isBiasedAt(stop)) {
            return "YES, its own";
        }
        return pair.losesBias(stop) ? "NO: remove its own" : "no";
    }
}
