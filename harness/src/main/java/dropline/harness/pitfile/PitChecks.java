package dropline.harness.pitfile;

import dropline.harness.yaml.Report;

/** What no key can know by itself: names, clashes, and keys that need or exclude each other. */
final class PitChecks {
    private PitChecks() {}

    static void check(Parts parts, Report report) {
        SignalChecks.check(parts, report);
        new BusChecks(parts, report).check();
        new CableChecks(parts, report).check();
        new PairChecks(parts, report).check();
        new SupplyChecks(parts, report).check();
        new PanelChecks(parts, report).check();
        new Programs(parts, report).check();
    }
}
