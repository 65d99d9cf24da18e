package dropline.harness.cli;

import dropline.harness.record.Tally;
import dropline.harness.record.Watcher;
import dropline.harness.report.Figures;

/** What a person sees of a recording while it runs. */
final class Live implements Watcher {
    private final Console console;
    private final boolean show;
    private long receivedBefore;

    Live(Console console, boolean show) {
        this.console = console;
        this.show = show;
    }

    @Override
    public void arrived(String message) {
        if (show) {
            console.out().println(message);
            console.out().flush();
        }
    }

    @Override
    public void said(String sentence) {
        console.err().println("dropline: " + sentence);
    }

    @Override
    public void second(Tally tally) {
        long rate = tally.received() - receivedBefore;
        receivedBefore = tally.received();
        if (show) {
            long lost = tally.dropped() + tally.systemDrops().orElse(0);
            console.out()
                    .println(Figures.plural(tally.received(), tally.unit()) + ", " + Figures.count(rate) + "/s, "
                            + Figures.plural(tally.names(), "name") + ", " + Figures.count(tally.malformed())
                            + " malformed, " + Figures.count(lost) + " lost");
            console.out().flush();
        }
    }
}
