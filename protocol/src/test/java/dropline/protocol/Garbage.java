package dropline.protocol;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.IntFunction;
import java.util.function.Supplier;

/** Bytes and silences that mean nothing, for whatever decodes. */
public final class Garbage {
    /** How many bytes; {@code -Pnightly} sets many more. */
    public static final long BYTES = Long.getLong("dropline.fuzz-bytes", 200_000);

    private static final long SEED = 20_261_126;

    private Garbage() {}

    /**
     * Feeds a decoder. It may find a frame by chance; what it says it used and dropped can never be more than it was
     * given.
     *
     * @param more asked until it needs more
     * @param often bytes that come more often than others, such as those that frames begin with
     */
    public static <F> void feed(
            IntFunction<Decoded<F>> onByte,
            IntFunction<Decoded<F>> onSilence,
            Supplier<Decoded<F>> more,
            int... often) {
        Random random = new Random(SEED);
        long told = 0;
        for (long fed = 1; fed <= BYTES; fed++) {
            boolean isLikely = often.length > 0 && random.nextInt(4) == 0;
            int next = isLikely ? often[random.nextInt(often.length)] : random.nextInt(256);
            told += taken(onByte.apply(next), more);
            if (random.nextInt(20) == 0) {
                told += taken(onSilence.apply(random.nextInt(1_000)), more);
            }
            assertTrue(told <= fed, "told " + told + " of " + fed + " bytes");
        }
    }

    private static <F> long taken(Decoded<F> first, Supplier<Decoded<F>> more) {
        long bytes = 0;
        Decoded<F> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<F>)) {
            bytes += decoded instanceof Decoded.Complete<F> complete
                    ? complete.bytesUsed()
                    : ((Decoded.Rejected<F>) decoded).bytesDropped();
            decoded = more.get();
        }
        return bytes;
    }
}
