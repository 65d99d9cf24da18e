package dropline.protocol.custom;

import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.List;
import java.util.Optional;

/**
 * A protocol of a builder's own, laid out. {@link LayoutRules} says what is wrong with one.
 *
 * @param name what its builder calls it
 * @param boundary how a receiver knows where a frame begins and ends
 * @param longest the most characters a frame may have, start and end bytes included, escapes not; 1..65535
 * @param frames at most one of each kind; requests and replies there must be
 */
public record Layout(String name, Boundary boundary, int longest, List<FrameLayout> frames) {

    public Layout {
        frames = List.copyOf(frames);
        if (longest < 1 || longest > 65_535) {
            throw new IllegalArgumentException("the longest frame must have 1..65535 characters: longest=" + longest);
        }
    }

    /** The frames of a kind: one or none. */
    public Optional<FrameLayout> frame(Kind kind) {
        return frames.stream().filter(f -> f.kind() == kind).findFirst();
    }

    /** The highest address that fits in every frame that holds one. */
    int highestAddress() {
        long highest = 65_535;
        for (FrameLayout frame : frames) {
            Optional<Field.Address> address = frame.first(Field.Address.class);
            if (address.isPresent()) {
                highest = Math.min(
                        highest, address.get().form().most() - address.get().plus());
            }
        }
        return (int) Math.max(0, highest);
    }

    /** Characters before a frame's first field: 1 with a start byte, else 0. */
    int lead() {
        return boundary instanceof Delimiters delimiters && delimiters.start() != Delimiters.NO_START ? 1 : 0;
    }

    /** Start and end bytes of a frame. */
    int wrapping() {
        return boundary instanceof Delimiters ? lead() + 1 : 0;
    }
}
