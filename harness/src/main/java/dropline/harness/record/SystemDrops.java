package dropline.harness.record;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;

/**
 * How many datagrams Linux dropped for want of room in a socket's buffer: the last column of {@code /proc/net/udp} (see
 * proc_net_udp in the kernel's documentation). Other systems keep no such count for a socket.
 */
final class SystemDrops {
    private static final int LOCAL_ADDRESS = 1;

    private SystemDrops() {}

    /** Drops of the sockets bound exactly there; empty where there is no saying. */
    static OptionalLong of(InetSocketAddress bound) {
        boolean four = bound.getAddress() instanceof Inet4Address;
        Path table = Path.of("/proc/net", four ? "udp" : "udp6");
        try {
            return in(Files.readAllLines(table, StandardCharsets.US_ASCII), address(bound));
        } catch (IOException e) {
            return OptionalLong.empty();
        }
    }

    static OptionalLong in(List<String> lines, String address) {
        long drops = 0;
        boolean found = false;
        for (String line : lines) {
            String[] columns = line.strip().split("\\s+");
            String last = columns[columns.length - 1];
            if (columns.length > LOCAL_ADDRESS
                    && columns[LOCAL_ADDRESS].equals(address)
                    && last.matches("[0-9]{1,18}")) {
                drops += Long.parseLong(last);
                found = true;
            }
        }
        return found ? OptionalLong.of(drops) : OptionalLong.empty();
    }

    /** As the kernel prints it: words of 32 bits in the machine's own byte order, then the port. */
    static String address(InetSocketAddress bound) {
        StringBuilder text = new StringBuilder();
        ByteBuffer words = ByteBuffer.wrap(bound.getAddress().getAddress()).order(ByteOrder.nativeOrder());
        while (words.hasRemaining()) {
            text.append(String.format(Locale.ROOT, "%08X", words.getInt()));
        }
        return text.append(String.format(Locale.ROOT, ":%04X", bound.getPort())).toString();
    }
}
