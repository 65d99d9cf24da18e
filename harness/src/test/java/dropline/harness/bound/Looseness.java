package dropline.harness.bound;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** How far bounds lie above the slowest that was seen, by kind. */
final class Looseness {
    private final Map<String, List<Double>> ratios = new TreeMap<>();

    void add(String kind, long boundNanos, long seenNanos) {
        ratios.computeIfAbsent(kind, any -> new ArrayList<>()).add((double) boundNanos / seenNanos);
    }

    double percentile(String kind, int percent) {
        List<Double> sorted =
                ratios.getOrDefault(kind, List.of()).stream().sorted().toList();
        return sorted.get(Math.min(sorted.size() - 1, sorted.size() * percent / 100));
    }

    int count(String kind) {
        return ratios.getOrDefault(kind, List.of()).size();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (String kind : ratios.keySet()) {
            text.append(String.format(
                    Locale.ROOT,
                    "%-26s %6d bounds   / slowest seen: least %.2f, median %.2f, p95 %.2f%n",
                    kind,
                    count(kind),
                    percentile(kind, 0),
                    percentile(kind, 50),
                    percentile(kind, 95)));
        }
        return text.toString();
    }
}
