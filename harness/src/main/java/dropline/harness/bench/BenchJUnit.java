package dropline.harness.bench;

import dropline.harness.report.JUnitXml;
import dropline.harness.verdict.Outcome;

/** An examination for build servers: one case an item, undecided ones skipped. */
public final class BenchJUnit {
    private BenchJUnit() {}

    public static String of(BenchResult result) {
        return JUnitXml.of(
                "bench " + result.subject(),
                result.items().stream()
                        .map(item -> new JUnitXml.Case(
                                result.subject(),
                                item.name(),
                                item.outcome() == Outcome.FAIL ? item.says() : null,
                                item.outcome() == Outcome.UNDECIDED ? item.says() : null))
                        .toList());
    }
}
