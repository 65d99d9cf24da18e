package dropline.harness.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.layout.LayoutFile;
import dropline.harness.learn.UnknownPair.Family;
import dropline.harness.link.Arrival;
import dropline.protocol.Bytes;
import dropline.protocol.crc.CrcCatalogue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class LearningTest {
    private static final int BAUD = 115_200;

    /** Every check of the catalogue, heard well, with one byte in 200 damaged, and in lumps of 16 ms. */
    @Test
    void mostProtocolsAreLearnedAndNoneIsTakenForAnotherWithoutADoubt() {
        // given
        List<String> checks = new ArrayList<>(List.of("sum8", "sum16", "xor8"));
        CrcCatalogue.all().forEach(crc -> checks.add(crc.name()));
        Family[] families = Family.values();
        int tried = 0;
        int right = 0;
        List<String> wrong = new ArrayList<>();

        for (int i = 0; i < checks.size(); i++) {
            for (int way = 0; way < 3; way++) {
                UnknownPair pair = new UnknownPair(
                        families[(i + way) % families.length], checks.get(i), way == 1, 1000 + 10 * i + way);

                // when
                Optional<Learned> learned = Learning.of(pair.heard(120, way == 1 ? 0.005 : 0, way == 2), BAUD);

                // then
                tried++;
                boolean isRight = learned.isPresent() && pair.isRight(learned.get());
                right += isRight ? 1 : 0;
                if (!isRight) {
                    wrong.add(pair + " way " + way + ": "
                            + learned.map(LearnText::of).orElse("nothing"));
                    assertTrue(
                            learned.isEmpty() || !learned.get().doubts().isEmpty(),
                            "wrong, and sure: " + pair + "\n"
                                    + learned.map(LearnText::of).orElse(""));
                } else {
                    assertDraftIsUnderstood(learned.get(), pair);
                }
            }
        }
        assertTrue(tried >= 30, "tried " + tried);
        assertTrue(right * 30 >= 25 * tried, right + " right of " + tried + "\n" + String.join("\n", wrong));
    }

    private static void assertDraftIsUnderstood(Learned learned, UnknownPair pair) {
        String draft = Draft.of(learned);
        LayoutFile.Result result = LayoutFile.parse("draft.yaml", draft);
        assertTrue(result instanceof LayoutFile.Understood, () -> pair + "\n" + draft + "\n" + result);
    }

    @Test
    void noiseTeachesNothing() {
        byte[] noise = new byte[20_000];
        new Random(7).nextBytes(noise);

        Lesson lesson = Lesson.of(List.of(new Arrival.Received(2_000_000_000L, Bytes.copyOf(noise, 0, 20_000))), BAUD);

        assertEquals(0, lesson.share());
        assertTrue(lesson.draft().isEmpty());
    }

    @Test
    void oneBoardAloneLeavesTheAddressInDoubt() {
        // given
        List<Arrival.Received> heard = new ArrayList<>();
        Random chance = new Random(3);
        for (int i = 0; i < 200; i++) {
            int value = chance.nextInt(256);
            heard.add(new Arrival.Received(i * 10_000_000L, Bytes.of(0xA5, 0x01, value, 0xA5 ^ 0x01 ^ value)));
        }

        // when
        Lesson lesson = Lesson.of(heard, BAUD);

        // then
        assertTrue(lesson.text().contains("No place behaves like an address"), lesson.text());
    }
}
