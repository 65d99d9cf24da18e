package dropline.harness.record;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;

/** Keeps what a recorder says, for other threads to look at. */
class Listener implements Watcher {
    final List<String> said = new CopyOnWriteArrayList<>();
    final List<String> arrived = new CopyOnWriteArrayList<>();
    volatile @Nullable Tally last;

    @Override
    public void arrived(String message) {
        arrived.add(message);
    }

    @Override
    public void said(String sentence) {
        said.add(sentence);
    }

    @Override
    public void second(Tally tally) {
        last = tally;
    }
}
