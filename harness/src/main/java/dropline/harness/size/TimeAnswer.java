package dropline.harness.size;

import org.jspecify.annotations.Nullable;

/**
 * What time on the wire allows.
 *
 * @param more so many further panels, in every seed tried; -1 where not even those there are keep their budgets
 * @param inFirstSeed so many in the first seed on the busiest stretch: what other rates, changes and guesses are to be
 *     compared with, which are tried in that way
 * @param mostBySeed so many in the luckiest seed
 * @param confirmed whether that held over all that is played, healthy and with the node dead that matters most
 * @param beyondOnWhole whether one more failed over all of it too; false as well where there was no one more to try
 * @param tightest what came nearest its budget with so many, or as it stands; null where nothing moved
 * @param beyond what missed its budget with one more; null where there was no one more to try
 * @param deadKinds how many kinds of node were tried dead
 */
public record TimeAnswer(
        int more,
        int inFirstSeed,
        int mostBySeed,
        boolean confirmed,
        boolean beyondOnWhole,
        @Nullable Tight tightest,
        @Nullable Tight beyond,
        int deadKinds) {}
