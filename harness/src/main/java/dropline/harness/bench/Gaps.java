package dropline.harness.bench;

import dropline.harness.verdict.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Reply gaps that were measured. */
final class Gaps {
    private final List<Long> gaps = new ArrayList<>();
    private long slowestNanos;

    /**
     * @param gapNanos end of the request to the reply's first start bit, ns
     * @param answerNanos end of the request to the whole reply, ns
     */
    void add(long gapNanos, long answerNanos) {
        gaps.add(gapNanos);
        slowestNanos = Math.max(slowestNanos, answerNanos);
    }

    int count() {
        return gaps.size();
    }

    long least() {
        return gaps.isEmpty() ? 0 : Collections.min(gaps);
    }

    long most() {
        return gaps.isEmpty() ? 0 : Collections.max(gaps);
    }

    long half() {
        return gaps.isEmpty() ? 0 : sorted().get(gaps.size() / 2);
    }

    List<Long> sorted() {
        return gaps.stream().sorted().toList();
    }

    long slowest() {
        return slowestNanos;
    }

    String words() {
        return Words.time(Math.max(0, least())) + " to " + Words.time(Math.max(0, most()));
    }
}
