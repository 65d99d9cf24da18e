package dropline.scenarios.live;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.harness.link.Link;
import dropline.harness.link.SerialLink;
import dropline.harness.link.SerialPlan;
import dropline.harness.link.TcpLink;
import dropline.harness.live.StandIn;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.Moves;
import dropline.scenarios.peer.Peer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Masters that others wrote, asking the demo's Modbus boards: a fresh pair of pseudo-terminals each, since one keeps
 * its settings and what was not read. The boards' registers stand in the demo's pit file.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
final class ModbusMastersTest {
    private static final Peer SOCAT = new Peer("socat");
    private static final Peer MBPOLL = new Peer("mbpoll");
    private static final Peer PYTHON = new Peer("/usr/bin/python3");

    /** Reads, writes and does both, over a client that is there as {@code c}. */
    private static final String ASKS = """
            c.connect()
            print(c.write_registers(0, [21, 34, 55], slave=2).isError())
            print(c.read_holding_registers(0, 3, slave=2).registers)
            print(c.write_register(8, 1, slave=2).isError())
            both = c.readwrite_registers(
                read_address=8, read_count=2, write_address=9, write_registers=[1], unit=2)
            print(both.registers)
            print(c.read_holding_registers(500, 1, slave=2))
            print(c.read_coils(0, 1, slave=2))
            c.close()
            """;

    private static final List<String> ANSWERS = List.of(
            "False",
            "[21, 34, 55]",
            "False",
            "[1, 1]",
            "Exception Response(131, 3, IllegalAddress)",
            "Exception Response(129, 1, IllegalAddress)");

    @TempDir
    private Path folder;

    private final List<AutoCloseable> opened = new ArrayList<>();

    @AfterEach
    void close() throws Exception {
        for (AutoCloseable one : opened) {
            one.close();
        }
    }

    private static int pedestal(Pit pit) {
        return pit.segments().stream().map(Segment::name).toList().indexOf("pedestal");
    }

    private void play(Pit pit, Link link) {
        AtomicBoolean stop = new AtomicBoolean();
        StandIn boards = new StandIn(pit, pedestal(pit), 1, List.of(), Moves.none(), new TraceSink() {}, link);
        Thread thread = new Thread(
                () -> {
                    try {
                        boards.play(stop::get);
                    } catch (IOException gone) {
                        throw new AssertionError(gone);
                    }
                },
                "boards");
        thread.setDaemon(true);
        thread.start();
        opened.add(() -> {
            stop.set(true);
            thread.join(5_000);
            link.close();
        });
    }

    private static Pit demo() {
        if (PitFile.read(Path.of("demo/pit.yaml")) instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError("the demo pit must be right");
    }

    /** Boards play at one end of a pair; the other is for whoever asks. */
    private Path boardsOnAPort() throws IOException {
        SOCAT.mustBeHere();
        Path near = folder.resolve("near");
        Path far = folder.resolve("far");
        Process socat =
                new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far).start();
        opened.add(socat::destroy);
        await().atMost(10, TimeUnit.SECONDS).until(() -> Files.exists(near) && Files.exists(far));
        Pit pit = demo();
        Segment segment = pit.segments().get(pedestal(pit));
        play(pit, SerialLink.open(new SerialPlan(near.toString(), segment.baud(), segment.format(), true)));
        return far;
    }

    /** Python, with what it needs from a package. */
    private void mustBeHere(String script, String debianPackage) throws IOException, InterruptedException {
        PYTHON.mustBeHere();
        if (!PYTHON.runs(folder, "-c", script)) {
            new Peer(debianPackage).mustBeHere();
        }
    }

    private List<String> python(String... lines) throws IOException, InterruptedException {
        Path script = folder.resolve("asks.py");
        Files.writeString(script, String.join("\n", lines));
        return PYTHON.says(folder, script.toString());
    }

    /** mbpoll, which is built on libmodbus. */
    @Test
    void mbpollReadsAndWritesRegisters() throws Exception {
        MBPOLL.mustBeHere();
        String port = boardsOnAPort().toString();

        MBPOLL.says(
                folder, "-m", "rtu", "-a", "2", "-b", "19200", "-P", "even", "-t", "4", "-0", "-r", "1", port, "77");
        List<String> read = MBPOLL.says(
                folder, "-m", "rtu", "-a", "2", "-b", "19200", "-P", "even", "-t", "4", "-0", "-r", "0", "-c", "3",
                "-1", port);

        assertEquals(
                List.of("[0]: 0", "[1]: 77", "[2]: 0"),
                read.stream()
                        .filter(line -> line.startsWith("["))
                        .map(line -> line.replaceAll("\\s+", " ").strip())
                        .toList());
    }

    /** libmodbus itself, by its C interface. */
    @Test
    void libmodbusWritesAndReadsAtOnce() throws Exception {
        mustBeHere("import ctypes; ctypes.CDLL('libmodbus.so.5')", "libmodbus5");
        Path port = boardsOnAPort();

        List<String> said = python(
                "import ctypes",
                "m = ctypes.CDLL('libmodbus.so.5')",
                "m.modbus_new_rtu.restype = ctypes.c_void_p",
                "i = ctypes.c_int",
                "m.modbus_new_rtu.argtypes = [ctypes.c_char_p, i, ctypes.c_char, i, i]",
                "c = ctypes.c_void_p(m.modbus_new_rtu(b'" + port + "', 19200, b'E', 8, 1))",
                "m.modbus_set_slave(c, 2)",
                "print(m.modbus_connect(c))",
                "out = (ctypes.c_uint16 * 2)(7, 8)",
                "back = (ctypes.c_uint16 * 3)()",
                "print(m.modbus_write_and_read_registers(c, 0, 2, out, 0, 3, back), list(back))",
                "print(m.modbus_read_registers(c, 600, 1, back))");

        assertEquals(List.of("0", "3 [7, 8, 0]", "-1"), said);
    }

    @Test
    void pymodbusIsAnsweredOverAPort() throws Exception {
        mustBeHere("import pymodbus, serial_asyncio", "python3-pymodbus");
        Path port = boardsOnAPort();

        List<String> said = python(
                "from pymodbus.client import ModbusSerialClient",
                "c = ModbusSerialClient(port='" + port + "', baudrate=19200, stopbits=1, bytesize=8," + " timeout=2)",
                ASKS);

        assertEquals(ANSWERS, said);
    }

    @Test
    void pymodbusIsAnsweredOverTheNetwork() throws Exception {
        mustBeHere("import pymodbus", "python3-pymodbus");
        InetSocketAddress here;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            here = new InetSocketAddress(InetAddress.getLoopbackAddress(), socket.getLocalPort());
        }
        TcpLink link = TcpLink.at(here);
        play(demo(), link);
        assertTrue(here.getPort() > 0);

        List<String> said = python(
                "from pymodbus.client import ModbusTcpClient",
                "from pymodbus.framer.rtu_framer import ModbusRtuFramer",
                "c = ModbusTcpClient('127.0.0.1', port=" + here.getPort() + ", framer=ModbusRtuFramer, timeout=2)",
                ASKS);

        assertEquals(ANSWERS, said);
    }
}
