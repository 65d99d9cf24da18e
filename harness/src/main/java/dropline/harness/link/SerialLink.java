package dropline.harness.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jspecify.annotations.Nullable;

/**
 * A serial port. One thread reads; another opens and closes, since a driver may take its time or never come back. A
 * port that vanishes is sought again by its name until it is back.
 */
public final class SerialLink implements Link {
    private static final long OPEN_SECONDS = 6;
    private static final long SEEK_MILLIS = 500;
    private static final long DTR_MILLIS = 100;
    private static final int READ_MILLIS = 100;
    private static final int LARGEST_READ = 4_096;

    private final SerialPlan plan;
    private final long origin = System.nanoTime();
    private final Inbox inbox = new Inbox(this::now);
    private final Thread reader;
    private final boolean isPseudoTerminal;
    private volatile SerialPort port;
    private final CountDownLatch closing = new CountDownLatch(1);
    private volatile boolean closed;
    private volatile boolean isThere = true;

    private SerialLink(SerialPlan plan, SerialPort port) {
        this.plan = plan;
        this.port = port;
        isPseudoTerminal = isPseudoTerminal(plan.port());
        reader = new Thread(this::read, "reader of " + plan.port());
        reader.setDaemon(true);
    }

    /**
     * Opens a port.
     *
     * @throws IOException if that cannot be done, with words for the person
     */
    public static SerialLink open(SerialPlan plan) throws IOException {
        SerialLink link = new SerialLink(plan, opened(plan));
        link.reader.start();
        return link;
    }

    private static SerialPort opened(SerialPlan plan) throws IOException {
        CompletableFuture<SerialPort> opening = new CompletableFuture<>();
        aside("opens " + plan.port(), () -> {
            try {
                opening.complete(openedHere(plan));
            } catch (IOException | RuntimeException | LinkageError failed) {
                opening.completeExceptionally(failed);
            }
        });
        try {
            return opening.get(OPEN_SECONDS, TimeUnit.SECONDS);
        } catch (ExecutionException failed) {
            throw failed.getCause() instanceof IOException known ? known : new IOException(failed.getCause());
        } catch (TimeoutException late) {
            throw new IOException(
                    plan.port() + " does not open: its driver has not answered for " + OPEN_SECONDS
                            + " s; unplug the adapter, plug it in again",
                    late);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IOException("opening " + plan.port() + " was broken off", interrupted);
        }
    }

    private static void aside(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    private static SerialPort openedHere(SerialPlan plan) throws IOException {
        SerialPort port;
        try {
            port = SerialPort.getCommPort(plan.port());
        } catch (SerialPortInvalidPortException missing) {
            throw new IOException(missing(plan.port()), missing);
        }
        CharacterFormat format = plan.format();
        port.setComPortParameters(plan.baud(), format.dataBits(), stop(format), parity(format));
        port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
        boolean unused = plan.dtr() ? port.setDTR() : port.clearDTR();
        if (!port.openPort(0)) {
            throw new IOException(refused(plan, port.getLastErrorCode()));
        }
        return port;
    }

    private static int stop(CharacterFormat format) {
        return format.stopBits() == 1 ? SerialPort.ONE_STOP_BIT : SerialPort.TWO_STOP_BITS;
    }

    private static int parity(CharacterFormat format) {
        return switch (format.parity()) {
            case NONE -> SerialPort.NO_PARITY;
            case EVEN -> SerialPort.EVEN_PARITY;
            case ODD -> SerialPort.ODD_PARITY;
        };
    }

    private static String missing(String name) {
        List<String> there = new ArrayList<>();
        for (SerialPort port : SerialPort.getCommPorts()) {
            there.add(port.getSystemPortName());
        }
        return "there is no port " + name + "; "
                + (there.isEmpty() ? "no serial port is plugged in" : "there are: " + String.join(", ", there));
    }

    /** What an error number of the system means; those of Linux, macOS and Windows that matter differ. */
    private static String refused(SerialPlan plan, int code) {
        boolean windows = System.getProperty("os.name", "").startsWith("Windows");
        if (windows ? code == 2 : !Files.exists(Path.of(plan.port()))) {
            return missing(plan.port());
        }
        if (windows ? code == 5 || code == 32 : code != 13 && code != 22) {
            return plan.port() + " is in use by another program; close that first";
        }
        if (!windows && code == 13) {
            return "you may not open " + plan.port() + "; on Linux add yourself to the group that owns it"
                    + " (often dialout), then log in again";
        }
        if (code == 22 || code == 87) {
            return plan.port() + " does not take " + plan.baud() + " baud, " + plan.format()
                    + "; its adapter may not do that rate";
        }
        return plan.port() + " does not open at " + plan.baud() + " baud, " + plan.format()
                + (code == 0 ? "; it may be in use by another program" : " (the system's error " + code + ")");
    }

    private void read() {
        byte[] buffer = new byte[LARGEST_READ];
        while (!closed) {
            int count = port.readBytes(buffer, buffer.length);
            if (count > 0) {
                inbox.received(buffer, count);
            } else if (count < 0 && !closed) {
                seek();
            }
        }
    }

    /** The port has vanished: waits for it. */
    private void seek() {
        isThere = false;
        inbox.lost(plan.port() + " has vanished: was the adapter unplugged?");
        closeHere(port);
        while (!closed && !isThere) {
            try {
                if (closing.await(SEEK_MILLIS, TimeUnit.MILLISECONDS)) {
                    return;
                }
                port = openedHere(plan);
                isThere = true;
                inbox.back();
            } catch (IOException stillGone) {
                // sought again
            } catch (InterruptedException interrupted) {
                closed = true;
            }
        }
    }

    private static void closeHere(SerialPort port) {
        boolean unused = port.closePort();
    }

    @Override
    public long now() {
        return System.nanoTime() - origin;
    }

    @Override
    public long send(byte[] bytes, int offset, int length) {
        long at = now();
        if (isThere) {
            int unused = port.writeBytes(bytes, length, offset);
        }
        return at;
    }

    @Override
    public @Nullable Arrival await(long deadlineNanos) {
        return inbox.await(deadlineNanos);
    }

    /** {@inheritDoc} Many boards restart when DTR is raised; it is let go for a moment first. */
    @Override
    public boolean restart() {
        if (isPseudoTerminal || !isThere || !port.clearDTR()) {
            return false;
        }
        try {
            boolean unused = closing.await(DTR_MILLIS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
        return port.setDTR();
    }

    /** {@inheritDoc} On a pseudo-terminal bytes come at whatever rate. */
    @Override
    public boolean tune(int baud) {
        return !isPseudoTerminal && isThere && port.setBaudRate(baud);
    }

    @Override
    public boolean isExact() {
        return false;
    }

    /** {@inheritDoc} A pseudo-terminal hands them on at once. */
    @Override
    public boolean isOnAWire() {
        return !isPseudoTerminal;
    }

    private static boolean isPseudoTerminal(String port) {
        try {
            return Path.of(port).toRealPath().startsWith("/dev/pts");
        } catch (IOException | InvalidPathException notAFile) {
            return false;
        }
    }

    @Override
    public String where() {
        return plan.port() + " at " + plan.baud() + " baud";
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        closing.countDown();
        Thread closer = new Thread(() -> closeHere(port), "closes " + plan.port());
        closer.setDaemon(true);
        closer.start();
        try {
            closer.join(TimeUnit.SECONDS.toMillis(OPEN_SECONDS));
            reader.join(TimeUnit.SECONDS.toMillis(1));
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
