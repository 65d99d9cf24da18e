package dropline.harness.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Ctrl-C (and whatever else ends a process in an orderly way) as a request to stop: the process then ends only when the
 * work is complete, with the work's own exit code.
 */
final class EndOfProcess {
    /** Long enough to put an hour's recording into its place; the journal is safe in any case. */
    private static final long PATIENCE_SECONDS = 120;

    private final CountDownLatch done = new CountDownLatch(1);
    private final Console console;
    private final Thread hook;
    private volatile boolean ending;
    private volatile int exitCode = ExitCode.OUR_FAULT;

    private EndOfProcess(Runnable stop, Console console) {
        this.console = console;
        this.hook = new Thread(() -> end(stop), "end of process");
    }

    static EndOfProcess watch(Runnable stop, Console console) {
        EndOfProcess watch = new EndOfProcess(stop, console);
        Runtime.getRuntime().addShutdownHook(watch.hook);
        return watch;
    }

    private void end(Runnable stop) {
        ending = true;
        stop.run();
        try {
            if (!done.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException e) {
            return;
        }
        console.flush();
        Runtime.getRuntime().halt(exitCode);
    }

    /** The work is complete and ends with this code; tells it again. */
    int completed(int code) {
        exitCode = code;
        return code;
    }

    /** The process may end. */
    void release() {
        done.countDown();
        if (!ending) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException e) {
                // It ends at this very moment, and nothing holds it up any more.
            }
        }
    }
}
