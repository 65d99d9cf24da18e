package dropline.harness.verdict;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the pit's figures of hardware and firmware come from, each counted once however many nodes share it.
 *
 * @param measured on a real board, says the pit file
 * @param preset from Dropline's own presets
 * @param guessed {@code about} something, says the pit file
 * @param unstated without a word on it
 * @param tried what became of trying the guesses; null where there are none, or none were tried
 */
public record RestsOn(
        int measured,
        int preset,
        int guessed,
        int unstated,
        @Nullable Tried tried) {
    private static final int MOST_NAMES = 3;

    /**
     * Guesses tried at half and at double.
     *
     * @param figures how many were tried
     * @param fromNanos where the stretch began over which they were, ns into the run
     * @param untilNanos where it ended
     * @param idle guesses that the simulation does not look at
     * @param refused guesses that could not be tried at half or at double without breaking a rule, each with which
     * @param left guesses left out to keep the trial short
     * @param next the one that moves the verdict most; null where none moves it
     */
    public record Tried(
            int figures,
            long fromNanos,
            long untilNanos,
            int idle,
            List<String> refused,
            int left,
            @Nullable Next next) {
        public Tried {
            refused = List.copyOf(refused);
        }
    }

    /**
     * What to measure next.
     *
     * @param figure in words: {@code profile gauge board, reply-gap}
     * @param written as it stands in the pit file
     * @param where file, line and column
     * @param segment the segment that it moves most
     * @param asWritten how that segment's panels and controls fared as it stands
     * @param half the same at half; null where that could not be tried
     * @param twice the same at double; null where that could not be tried
     */
    public record Next(
            String figure,
            String written,
            String where,
            String segment,
            Strain asWritten,
            @Nullable Strain half,
            @Nullable Strain twice) {}

    /** The same in sentences: the counts first, then what to measure next and how that was found. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        sentences.add("Rests on " + measured + " measured, " + preset + " preset, " + guessed + " guessed "
                + (guessed == 1 ? "figure" : "figures") + " and " + unstated
                + " without a stated origin.");
        if (tried != null) {
            sentences.add(next(tried));
            sentences.add(how(tried));
        }
        return sentences;
    }

    private static String next(Tried tried) {
        Next next = tried.next();
        if (next == null) {
            return "None of the guesses moves the verdict, whether halved or doubled.";
        }
        StringBuilder text = new StringBuilder("Measure next: ")
                .append(next.figure())
                .append(" (about ")
                .append(next.written())
                .append(", ")
                .append(place(next.where()))
                .append("). ");
        text.append("As written, ")
                .append(words(next.asWritten()))
                .append(" on segment ")
                .append(next.segment());
        at(text, "at half", next.half());
        at(text, "at double", next.twice());
        return text.append(turns(next) ? "." : ". Neither turns the verdict.").toString();
    }

    /** A preset is no file of the builder's: what is measured is written where it is used. */
    private static String place(String where) {
        return where.startsWith("presets:") ? "a preset's guess; write yours beside its like" : where;
    }

    private static boolean turns(Next next) {
        int failing = next.asWritten().failing();
        return (next.half() != null && next.half().failing() != failing)
                || (next.twice() != null && next.twice().failing() != failing);
    }

    private static void at(StringBuilder text, String scale, @Nullable Strain strain) {
        if (strain != null) {
            text.append("; ").append(scale).append(", ").append(words(strain));
        }
    }

    private static String words(Strain strain) {
        String fails = strain.failing() == 0
                ? "nothing fails"
                : strain.failing() == 1 ? "1 misses its limit" : strain.failing() + " miss their limits";
        return (strain.tightest().isEmpty() ? "nothing updated" : strain.tightest()) + " takes "
                + Words.share(strain.share()) + " of its limit and " + fails;
    }

    private static String how(Tried tried) {
        StringBuilder text = new StringBuilder("Tried ")
                .append(tried.figures())
                .append(tried.figures() == 1 ? " guess" : " guesses")
                .append(" at half and at double over ")
                .append(Words.clock(tried.fromNanos()))
                .append("..")
                .append(Words.clock(tried.untilNanos()))
                .append(" of the run, around its tightest moment");
        if (tried.idle() > 0) {
            text.append("; ").append(tried.idle()).append(" more the simulation does not look at");
        }
        if (!tried.refused().isEmpty()) {
            text.append("; not ")
                    .append(Words.names(tried.refused(), MOST_NAMES))
                    .append(", which would break a rule of the pit file");
        }
        if (tried.left() > 0) {
            text.append("; ").append(tried.left()).append(" more were left out to keep this short");
        }
        return text.append('.').toString();
    }
}
