package dropline.harness.cli;

import dropline.harness.json.PortsJson;
import dropline.harness.link.Ports;
import dropline.harness.link.Ports.Port;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline ports}: which serial ports there are, and which was just plugged in. */
@Command(
        name = "ports",
        header = "List the serial ports, and say which one was just plugged in.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        optionListHeading = "%n",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Lists serial ports with what tells one from another. Opens none, and writes nothing to any."},
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline ports",
            "  dropline ports --watch      then plug an adapter in: its port is named",
            "",
            "Exit codes:  0 listed   2 the input is wrong   3 our own fault"
        })
final class PortsCommand implements Callable<Integer> {
    private static final long LOOK_MILLIS = 500;

    private final Console console;

    @Option(names = "--watch", description = "Go on, and say what is plugged in or pulled out, until Ctrl-C.")
    private boolean watch;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Mixin
    final Debug debug = new Debug();

    PortsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException, InterruptedException {
        List<Port> ports = Ports.all();
        json.write(console, out -> PortsJson.write(ports, out), text(ports));
        if (watch) {
            watch(ports);
        }
        return ExitCode.PASS;
    }

    private void watch(List<Port> first) throws InterruptedException {
        CountDownLatch stop = new CountDownLatch(1);
        EndOfProcess end = EndOfProcess.watch(stop::countDown, console);
        try {
            console.err().println("Watching; Ctrl-C ends it.");
            List<Port> before = first;
            while (!stop.await(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                List<Port> now = Ports.all();
                news(before, now).forEach(console.out()::println);
                console.out().flush();
                before = now;
            }
            int unused = end.completed(ExitCode.PASS);
        } finally {
            end.release();
        }
    }

    /** What has come, and what has gone. */
    static List<String> news(List<Port> before, List<Port> now) {
        List<String> news = new ArrayList<>();
        for (Port port : now) {
            if (!before.contains(port)) {
                news.add("plugged in:  " + line(port));
            }
        }
        for (Port port : before) {
            if (!now.contains(port)) {
                news.add("pulled out:  " + line(port));
            }
        }
        return news;
    }

    static String text(List<Port> ports) {
        if (ports.isEmpty()) {
            return "There is no serial port.\n"
                    + "If an adapter is plugged in: try another USB cable (some only charge) and another socket;\n"
                    + "on Windows look in the Device Manager for one without a driver.\n";
        }
        StringBuilder text = new StringBuilder();
        ports.forEach(port -> text.append(line(port)).append('\n'));
        return text.toString();
    }

    private static String line(Port port) {
        StringBuilder line = new StringBuilder(port.name());
        add(line, "  ", port.description());
        add(line, "  USB ", port.usb());
        add(line, "  by ", port.manufacturer());
        add(line, "  serial number ", port.serial());
        add(line, "  in socket ", port.location());
        return line.toString();
    }

    private static void add(StringBuilder line, String before, String said) {
        if (!said.isEmpty()) {
            line.append(before).append(said);
        }
    }
}
