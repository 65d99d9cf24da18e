package dropline.harness.learn;

import java.util.ArrayList;
import java.util.List;

/** The frames found in a sample in one way of looking, and how much of it they take. */
final class Walk {
    private static final double MOSTLY = 0.9;

    private final List<byte[]> frames = new ArrayList<>();
    private final List<Integer> taken = new ArrayList<>();
    private int covered;

    /** Adds a frame without its end byte, escapes undone; {@code takes} bytes of the sample are explained by it. */
    void add(byte[] frame, int takes) {
        frames.add(frame);
        taken.add(takes);
        covered += takes;
    }

    /** Those of them whose check is right. */
    Walk sound(CheckPlace check) {
        Walk sound = new Walk();
        for (int i = 0; i < frames.size(); i++) {
            if (check.holds(frames.get(i), 0, frames.get(i).length)) {
                sound.add(frames.get(i), taken.get(i));
            }
        }
        return sound;
    }

    List<byte[]> frames() {
        return frames;
    }

    /** Bytes of the sample that lie in frames. */
    int covered() {
        return covered;
    }

    /** Whether nearly every frame is text that a person can read; noise may have hit some. */
    boolean isText() {
        long readable = frames.stream().filter(Walk::isText).count();
        return !frames.isEmpty() && readable >= MOSTLY * frames.size();
    }

    private static boolean isText(byte[] frame) {
        for (byte b : frame) {
            if ((b < 0x20 || b > 0x7E) && b != '\r' && b != '\t') {
                return false;
            }
        }
        return true;
    }
}
