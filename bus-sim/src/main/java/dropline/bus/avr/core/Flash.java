package dropline.bus.avr.core;

import java.util.Arrays;

/** A program's words, and beside each what it means. Erased words are 0xFFFF. */
public final class Flash {
    private final int[] words;
    private final int mask;
    final int[] operations;
    final int[] arguments;

    /** @param words how many; a power of two */
    public Flash(int words) {
        if (Integer.bitCount(words) != 1) {
            throw new IllegalArgumentException("words must be a power of two: words=" + words);
        }
        this.words = new int[words];
        mask = words - 1;
        operations = new int[words];
        arguments = new int[words];
        Arrays.fill(this.words, 0xFFFF);
        Arrays.fill(operations, Decoder.operation(0xFFFF));
    }

    /** How many words. */
    public int size() {
        return words.length;
    }

    /** The word at an address that is counted in words, and counted round. */
    public int word(int address) {
        return words[address & mask];
    }

    /** Sets a word; what it and the two before it mean is seen anew. */
    public void set(int address, int word) {
        words[address & mask] = word & 0xFFFF;
        decode(address);
        decode(address - 1);
        decode(address - 2);
    }

    private void decode(int address) {
        int at = address & mask;
        operations[at] = Decoder.operation(words[at]);
        arguments[at] = Decoder.argument(words[at], word(at + 1), at, mask);
    }

    /** A byte of the program; the low one of a word comes first. */
    int read(int byteAddress) {
        return word(byteAddress >> 1) >> ((byteAddress & 1) << 3) & 0xFF;
    }
}
