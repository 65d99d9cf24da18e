package dropline.harness.record;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/** A recorder at work in a thread of its own. */
final class Running {
    private final Recorder recorder;
    private final CompletableFuture<Ending> ending;

    Running(Recorder recorder) {
        this.recorder = recorder;
        this.ending = CompletableFuture.supplyAsync(() -> {
            try {
                return recorder.run(TimeUnit.HOURS.toNanos(1));
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        });
    }

    /** Waits until it ends by itself. */
    Ending ended() {
        return ending.orTimeout(60, TimeUnit.SECONDS).join();
    }

    /** Asks it to stop, and waits. */
    Ending stopped() {
        recorder.stop();
        return ended();
    }
}
