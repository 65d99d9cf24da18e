package dropline.harness.cli;

import java.util.logging.ConsoleHandler;
import java.util.logging.Level;
import java.util.logging.Logger;
import picocli.CommandLine.Option;

/** The option that opens the log, on standard error. Without it nothing is logged there. */
final class Debug {
    private static final Logger LOG = Logger.getLogger("dropline");

    @Option(names = "--debug", description = "Write the log, with stack traces, to standard error.", order = 90)
    void set(boolean on) {
        if (on && LOG.getHandlers().length == 0) {
            ConsoleHandler handler = new ConsoleHandler();
            handler.setLevel(Level.ALL);
            LOG.addHandler(handler);
            LOG.setUseParentHandlers(false);
            LOG.setLevel(Level.FINE);
        }
    }
}
