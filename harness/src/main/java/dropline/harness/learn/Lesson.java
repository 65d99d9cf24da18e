package dropline.harness.learn;

import dropline.harness.link.Arrival;
import dropline.harness.verdict.Words;
import dropline.protocol.Decoded;
import dropline.protocol.frames.FrameDecoder;
import java.util.List;
import java.util.Optional;

/**
 * What a stretch of bytes teaches.
 *
 * @param baud at which they came, bits a second
 * @param share of the bytes that are explained, 0..1
 * @param isSure whether nothing else explains as much, as far as one can tell
 * @param text for the person
 * @param draft a layout file; empty where none is needed, or where too little is known
 */
public record Lesson(int baud, double share, boolean isSure, String text, Optional<String> draft) {
    /** So many bytes are looked at; further ones hardly change the answer. */
    public static final int MOST_BYTES = 60_000;

    private static final double KNOWN = 0.5;

    /** What these arrivals teach; each is dated at the end of its last byte. */
    public static Lesson of(List<Arrival.Received> arrivals, int baud) {
        int bytes = arrivals.stream().mapToInt(a -> a.bytes().length()).sum();
        if (bytes == 0) {
            return new Lesson(
                    baud,
                    0,
                    false,
                    "Nothing was heard. Is the pair connected (A and B), does somebody poll?\n",
                    Optional.empty());
        }
        double own = droplineShare(arrivals, bytes);
        if (own >= KNOWN) {
            return new Lesson(
                    baud,
                    own,
                    true,
                    "These are Dropline frames (" + Words.share(own) + " of what was heard); a pit file says"
                            + " protocol: dropline, and no description is needed.\n",
                    Optional.empty());
        }
        Optional<Learned> learned = Learning.of(arrivals, baud);
        if (learned.isEmpty()) {
            return new Lesson(
                    baud,
                    0,
                    false,
                    "No structure explains what was heard. A wrong baud rate, frames without a check, or frames told\n"
                            + "apart by silences over an adapter that hands bytes on in lumps would look like this.\n",
                    Optional.empty());
        }
        Learned found = learned.get();
        return new Lesson(
                baud,
                found.share(),
                found.doubts().isEmpty(),
                LearnText.of(found) + modbus(found),
                Draft.canBe(found) ? Optional.of(Draft.of(found)) : Optional.empty());
    }

    /** How much of it Dropline's own frames explain. */
    private static double droplineShare(List<Arrival.Received> arrivals, int bytes) {
        FrameDecoder decoder = new FrameDecoder();
        int sound = 0;
        int since = 0;
        for (Arrival.Received arrival : arrivals) {
            for (int i = 0; i < arrival.bytes().length(); i++) {
                since++;
                Decoded<?> decoded = decoder.onByte(arrival.bytes().at(i));
                if (!(decoded instanceof Decoded.NeedMore<?>)) {
                    sound += decoded instanceof Decoded.Complete<?> ? since : 0;
                    since = 0;
                }
            }
        }
        return (double) sound / bytes;
    }

    private static String modbus(Learned found) {
        boolean isLike = found.framing() instanceof Framing.BySilence
                && found.check().sum().toString().equals("CRC-16/MODBUS")
                && found.check().form() == CheckPlace.Form.LITTLE
                && found.check().from() == 0;
        return isLike ? "Modbus RTU looks like this; if it is, a pit file says protocol: modbus-rtu.\n" : "";
    }
}
