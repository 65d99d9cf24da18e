package dropline.harness.record;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** The table's columns are those that Linux prints; the lines are made up after one seen on a machine of ours. */
final class SystemDropsTest {
    private static final List<String> TABLE = List.of(
            "   sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   uid  timeout"
                    + " inode ref pointer drops",
            "  101: 0100007F:A21C 00000000:0000 07 00000000:00000000 00:00000000 00000000     0        0 20 2 0 17",
            "  102: 00000000:A21C 00000000:0000 07 00000000:00000000 00:00000000 00000000     0        0 21 2 0 3");

    @Test
    void theLastColumnOfTheSocketsOwnLineCounts() {
        assertEquals(OptionalLong.of(17), SystemDrops.in(TABLE, "0100007F:A21C"));
        assertEquals(OptionalLong.of(3), SystemDrops.in(TABLE, "00000000:A21C"));
    }

    @Test
    void aSocketThatIsNotThereHasNoCount() {
        assertEquals(OptionalLong.empty(), SystemDrops.in(TABLE, "0100007F:A21D"));
        assertEquals(OptionalLong.empty(), SystemDrops.in(List.of("", "x"), "0100007F:A21D"));
    }

    @Test
    void anAddressIsSpelledAsTheKernelDoes() throws UnknownHostException {
        InetAddress any = InetAddress.getByAddress(new byte[4]);

        assertEquals("00000000:A21C", SystemDrops.address(new InetSocketAddress(any, 0xA21C)));
        assertEquals(
                "0".repeat(32) + ":0050",
                SystemDrops.address(new InetSocketAddress(InetAddress.getByAddress(new byte[16]), 80)));
    }
}
