package dropline.bus.chance;

/**
 * Counter-based draws: each is a pure function of seed, name, purpose and ordinal, so that no draw depends on how many
 * were made before, and adding a panel changes nobody's jitter. The mixing is the finaliser of SplitMix64 (Steele, Lea,
 * Flood, OOPSLA 2014), applied to each part in turn.
 */
public final class Draws {
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private Draws() {}

    /** What a draw is for. The numbers are part of every trace and never change. */
    public enum Purpose {
        REPLY_GAP(1),
        REPLY_LENGTH(2),
        LOOP_PASS(3),
        TASK_PHASE(4),
        SERVO_PHASE(5),
        USB_OUT(6),
        USB_IN(7),
        WAKE_UP(8),
        BOUNCE(9),
        STATE_USB(10),
        STATE_WAKE_UP(11),
        FAULT_CHANCE(12),
        FAULT_INSTANT(13),
        FAULT_SIZE(14),
        CONTENTION(15),
        NOISE(16);

        private final int number;

        Purpose(int number) {
            this.number = number;
        }
    }

    /** A 64-bit hash of a name, from its UTF-16 units (FNV-1a's step, then mixed). */
    public static long nameHash(String name) {
        long hash = 0xCBF29CE484222325L;
        for (int i = 0; i < name.length(); i++) {
            hash = (hash ^ name.charAt(i)) * 0x100000001B3L;
        }
        return mix(hash);
    }

    /** The stream of one named thing for one purpose: mix of seed, name and purpose, to be used with {@link #draw}. */
    public static long stream(long seed, long nameHash, Purpose purpose) {
        return mix(mix(mix(seed + GOLDEN) ^ nameHash) + purpose.number * GOLDEN);
    }

    /** Uniform in [0, 1), 53 bits. */
    public static double draw(long stream, long ordinal) {
        return (mix(stream + (ordinal + 1) * GOLDEN) >>> 11) * 0x1.0p-53;
    }

    /** SplitMix64's finaliser: a bijection in which every input bit moves every output bit. */
    public static long mix(long value) {
        long z = value;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
