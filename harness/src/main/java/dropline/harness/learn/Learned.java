package dropline.harness.learn;

import java.util.List;

/**
 * What a pair's frames look like, as far as what was heard tells.
 *
 * @param framing how they begin and end
 * @param check what guards them
 * @param roles who says which
 * @param share of the bytes heard that lie in frames whose check is right, 0..1
 * @param doubts what may be otherwise, each a sentence; empty where nothing else would explain as much
 */
record Learned(Framing framing, CheckPlace check, Walk walk, Roles roles, double share, List<String> doubts) {
    Learned {
        doubts = List.copyOf(doubts);
    }

    /** Bytes at a frame's end that are its check and what follows it. */
    int tail() {
        return check.width() + check.after();
    }

    /** Where the length stands, or -1. */
    int lengthAt() {
        return framing instanceof Framing.ByLength byLength ? byLength.offset() : -1;
    }
}
