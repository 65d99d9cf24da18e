package dropline.harness.layout;

import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.custom.Boundary.Gap;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.CustomDecoder;
import dropline.protocol.custom.CustomFrame;
import dropline.protocol.custom.CustomFrame.Item;
import java.util.ArrayList;
import java.util.List;

/**
 * Bytes somebody has seen on the wire, read by a layout.
 *
 * @param text one line a frame or a stretch that is none
 * @param allSound whether every byte belongs to a frame
 */
public record Deciphered(String text, boolean allSound) {
    /** Only the order of magnitude matters: every silence handed over is longer than any gap. */
    private static final int BAUD = 115_200;

    /** Reads pieces of a stream with a silence before, between and after them. */
    public static Deciphered of(Custom protocol, List<Bytes> pieces) {
        Reading reading = new Reading(protocol);
        for (Bytes piece : pieces) {
            reading.hear(piece);
        }
        return reading.result();
    }

    private static final class Reading {
        private final CustomDecoder decoder;
        private final int silence;
        private final List<Integer> held = new ArrayList<>();
        private final StringBuilder text = new StringBuilder();
        private boolean allSound = true;

        Reading(Custom protocol) {
            decoder = protocol.decoder(BAUD, LayoutText.format());
            silence = protocol.layout().boundary() instanceof Gap gap ? gap.tenthsOfBit(BAUD, LayoutText.format()) : 0;
            decoder.onSilence(silence);
        }

        void hear(Bytes piece) {
            for (int i = 0; i < piece.length(); i++) {
                held.add(piece.at(i));
                Decoded<CustomFrame> heard = decoder.onByte(piece.at(i));
                while (!(heard instanceof Decoded.NeedMore<CustomFrame>)) {
                    tell(heard);
                    heard = decoder.more();
                }
            }
            tell(decoder.onSilence(silence));
        }

        Deciphered result() {
            if (!held.isEmpty()) {
                allSound = false;
                line(held.size(), "not the end of any frame yet");
            }
            return new Deciphered(text.toString(), allSound);
        }

        private void tell(Decoded<CustomFrame> heard) {
            if (heard instanceof Decoded.Complete<CustomFrame> complete) {
                line(complete.bytesUsed(), words(complete.frame()));
            } else if (heard instanceof Decoded.Rejected<CustomFrame> rejected) {
                allSound = false;
                line(rejected.bytesDropped(), "no frame: " + words(rejected.reason()));
            }
        }

        private void line(int count, String words) {
            int[] bytes = new int[Math.min(count, held.size())];
            for (int i = 0; i < bytes.length; i++) {
                bytes[i] = held.remove(0);
            }
            text.append(Bytes.of(bytes)).append("\n    ").append(words).append('\n');
        }
    }

    private static String words(CustomFrame frame) {
        StringBuilder words = new StringBuilder(frame.kind().word());
        if (frame.address() != CustomFrame.NONE) {
            words.append(", address ").append(frame.address());
        }
        if (frame.counter() != CustomFrame.NONE) {
            words.append(", counter ").append(frame.counter());
        }
        int place = 0;
        for (Item item : frame.items()) {
            place++;
            boolean numbered = item.number() != CustomFrame.NONE;
            words.append(numbered ? ", no. " + item.number() : ", in place " + place)
                    .append(" = ")
                    .append(item.value());
        }
        return words.toString();
    }

    private static String words(Reason reason) {
        return switch (reason) {
            case NOT_SYNCHRONISED -> "no frame begins so";
            case TOO_SHORT -> "it ends before all fields are there";
            case TOO_LONG -> "longer than the longest frame";
            case GAP_INSIDE -> "a silence inside it";
            case BAD_STUFFING -> "an escape byte with nothing after it";
            case BAD_CHECK -> "the check does not match; is its range right, and its kind?";
            case BAD_KIND -> "a constant is another than in any frame of the layout";
            case BAD_ADDRESS -> "an address that this kind of frame cannot have";
            case BAD_LENGTH -> "the length does not fit what is there; does it count what the layout says?";
            case BAD_VALUE -> "a character that the number there cannot have";
        };
    }
}
