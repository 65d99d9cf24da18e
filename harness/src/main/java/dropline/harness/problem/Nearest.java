package dropline.harness.problem;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the spelling a person most likely meant. */
public final class Nearest {
    private Nearest() {}

    /**
     * The candidate nearest to what was typed, if one is near: letters changed, left out, added or swapped with their
     * neighbour are counted, at most one in three. Case does not count. Of equals, the first.
     */
    public static Optional<String> to(String typed, Collection<String> candidates) {
        String wanted = typed.toLowerCase(Locale.ROOT);
        int allowed = Math.max(1, typed.length() / 3);
        String nearest = null;
        int least = allowed + 1;
        for (String candidate : candidates) {
            int distance = distance(wanted, candidate.toLowerCase(Locale.ROOT));
            if (distance < least) {
                least = distance;
                nearest = candidate;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** Edits between two words, a swap of neighbours counted once (Damerau 1964, optimal string alignment). */
    static int distance(String a, String b) {
        int[][] edits = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                edits[i][j] = i == 0 || j == 0 ? i + j : least(edits, a, b, i, j);
            }
        }
        return edits[a.length()][b.length()];
    }

    private static int least(int[][] edits, String a, String b, int i, int j) {
        int change = edits[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        int best = Math.min(change, Math.min(edits[i - 1][j], edits[i][j - 1]) + 1);
        boolean swapped = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
        return swapped ? Math.min(best, edits[i - 2][j - 2] + 1) : best;
    }
}
