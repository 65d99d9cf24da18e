package dropline.protocol.custom;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Decoded;
import dropline.protocol.custom.CustomFrame.Item;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** What a decoder makes of bytes, a silence of ten characters after each piece. */
final class Stream {
    private final CustomDecoder decoder;
    private final List<CustomFrame> frames = new ArrayList<>();
    private long dropped;
    private long used;

    Stream(Layout layout, Kind... kinds) {
        decoder = Examples.custom(layout).decoder(19_200, CharacterFormat.EIGHT_N_ONE, kinds);
        decoder.onSilence(1000);
    }

    Stream hear(Bytes bytes) {
        for (int i = 0; i < bytes.length(); i++) {
            Decoded<CustomFrame> heard = decoder.onByte(bytes.at(i));
            while (!(heard instanceof Decoded.NeedMore<CustomFrame>)) {
                note(heard);
                heard = decoder.more();
            }
        }
        note(decoder.onSilence(1000));
        return this;
    }

    List<CustomFrame> frames() {
        return frames;
    }

    /** Characters rejected or used. */
    long accounted() {
        return dropped + used;
    }

    private void note(Decoded<CustomFrame> heard) {
        if (heard instanceof Decoded.Complete<CustomFrame> complete) {
            frames.add(complete.frame());
            used += complete.bytesUsed();
        } else if (heard instanceof Decoded.Rejected<CustomFrame> rejected) {
            dropped += rejected.bytesDropped();
        }
    }

    /** A frame of this layout with values that fit. */
    static CustomFrame random(Layout layout, Random random) {
        FrameLayout frame = layout.frames().get(random.nextInt(layout.frames().size()));
        List<Item> items = new ArrayList<>();
        if (frame.items().isPresent()) {
            Field.Items some = frame.items().get();
            int room = Math.min(6, Fit.room(layout, frame));
            for (int i = random.nextInt(room + 1); i > 0; i--) {
                items.add(new Item(
                        some.numbered() ? random.nextInt(256) : CustomFrame.NONE,
                        random.nextInt(frame.kind() == Kind.REPLY ? 65_536 : 100_000)));
            }
        }
        boolean counts = frame.first(Field.Counter.class).isPresent();
        return new CustomFrame(
                frame.kind(),
                frame.kind() == Kind.STATE ? 0 : 1 + random.nextInt(247),
                counts ? random.nextInt(256) : CustomFrame.NONE,
                items);
    }
}
