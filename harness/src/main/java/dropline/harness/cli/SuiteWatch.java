package dropline.harness.cli;

import dropline.harness.baseline.Deviation;
import dropline.harness.baseline.Since;
import dropline.harness.baseline.Tracked;
import dropline.harness.checked.SinceText;
import dropline.harness.checked.SuiteText;
import dropline.harness.suite.Suite;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.ClosedWatchServiceException;
import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** {@code dropline check --watch}: looks again whenever a file of the suite is saved, until it is stopped. */
final class SuiteWatch {
    /** Editors save in several steps; what comes within this time belongs together. */
    private static final long SETTLE_MILLIS = 150;

    /** Clears the screen and goes to its top left corner (ECMA-48: CUP, ED). */
    private static final String CLEAR = "\u001b[H\u001b[2J";

    private final Console console;
    private final Checker checker;
    private final Path file;

    SuiteWatch(Console console, Checker checker, Path file) {
        this.console = console;
        this.checker = checker;
        this.file = file;
    }

    /** What is done with every look: it is written where it was asked for. */
    @FunctionalInterface
    interface Written {
        void write(Checker.Look look) throws IOException;
    }

    /** Watches until the process is asked to end; comes back with how the last look ended. */
    int run(Written written) throws IOException {
        try (WatchService service = FileSystems.getDefault().newWatchService()) {
            EndOfProcess end = EndOfProcess.watch(() -> closed(service), console);
            try {
                return end.completed(watch(service, written));
            } finally {
                end.release();
            }
        }
    }

    private static void closed(WatchService service) {
        try {
            service.close();
        } catch (IOException alreadyGone) {
            throw new UncheckedIOException(alreadyGone);
        }
    }

    private int watch(WatchService service, Written written) throws IOException {
        Set<Path> folders = new TreeSet<>();
        Checker.Look last = null;
        int code;
        do {
            look(folders, service);
            Checker.Look now = looked();
            if (now == null) {
                code = ExitCode.WRONG_INPUT;
            } else {
                if (last == null || !last.checkup().equals(now.checkup())) {
                    show(last, now);
                    written.write(now);
                }
                code = now.checkup().passes() ? ExitCode.PASS : ExitCode.FAIL;
                foldersOf(now.suite(), folders);
                look(folders, service);
                last = now;
            }
        } while (isSaved(service));
        return code;
    }

    /** What there is to see now; null, and why, where a file is wrong. */
    private Checker.@Nullable Look looked() throws IOException {
        try {
            return checker.look(checker.read(), true);
        } catch (WrongInput wrong) {
            console.err().println(wrong.getMessage());
            return null;
        }
    }

    private void foldersOf(Suite suite, Set<Path> folders) {
        folders.add(folder(suite.pitFile()));
        suite.pit().tree().texts().keySet().forEach(name -> folders.add(folder(Path.of(name))));
        suite.runs().forEach(run -> run.file().ifPresent(recording -> folders.add(folder(recording))));
    }

    private static Path folder(Path file) {
        Path parent = file.toAbsolutePath().normalize().getParent();
        return parent == null ? file.toAbsolutePath() : parent;
    }

    private void look(Set<Path> folders, WatchService service) throws IOException {
        folders.add(folder(file));
        for (Path folder : folders) {
            WatchKey unused = folder.register(
                    service,
                    StandardWatchEventKinds.ENTRY_CREATE,
                    StandardWatchEventKinds.ENTRY_MODIFY,
                    StandardWatchEventKinds.ENTRY_DELETE);
        }
    }

    /** Waits until something is saved; false where there will be nothing more. */
    private static boolean isSaved(WatchService service) {
        try {
            WatchKey key = service.take();
            while (key != null) {
                key.pollEvents();
                key.reset();
                key = service.poll(SETTLE_MILLIS, TimeUnit.MILLISECONDS);
            }
            return true;
        } catch (ClosedWatchServiceException ended) {
            return false;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private void show(Checker.@Nullable Look last, Checker.Look now) {
        if (console.terminal() && console.colour()) {
            console.out().print(CLEAR);
        }
        String text = last == null
                ? SuiteText.of(now.checkup())
                : SinceText.of(now.checkup(), last.checkup(), deviations(last, now), now.ranAgain());
        console.out().print(Colours.painted(text, console.colour()));
        console.out().flush();
        console.err().println("dropline: watching " + file + " and what it names; Ctrl-C ends it");
    }

    private static List<Deviation> deviations(Checker.Look last, Checker.Look now) {
        List<Deviation> deviations = new ArrayList<>();
        for (Map.Entry<String, List<Tracked>> run : now.figures().entrySet()) {
            List<Tracked> before = last.figures().get(run.getKey());
            if (before != null && now.ranAgain().contains(run.getKey())) {
                deviations.addAll(Since.of(run.getKey(), before, run.getValue()));
            }
        }
        return deviations;
    }
}
