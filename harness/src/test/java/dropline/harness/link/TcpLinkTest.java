package dropline.harness.link;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

final class TcpLinkTest {
    private final List<AutoCloseable> opened = new ArrayList<>();

    private static InetSocketAddress freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return new InetSocketAddress(InetAddress.getLoopbackAddress(), socket.getLocalPort());
        }
    }

    @AfterEach
    void close() throws Exception {
        for (AutoCloseable one : opened) {
            one.close();
        }
    }

    @Nested
    final class ToAServer extends LinkContract {
        @Override
        Link link() throws IOException {
            InetSocketAddress address = freePort();
            opened.add(new PlayedNode(TcpLink.at(address)));
            return TcpLink.to(address);
        }
    }

    @Nested
    final class ForOneThatConnects extends LinkContract {
        @Override
        Link link() throws IOException {
            InetSocketAddress address = freePort();
            TcpLink link = TcpLink.at(address);
            opened.add(new PlayedNode(TcpLink.to(address)));
            await().atMost(10, TimeUnit.SECONDS).until(link::isConnected);
            return link;
        }
    }

    @Test
    void whereNobodyListensOneIsToldSo() throws IOException {
        InetSocketAddress address = freePort();

        IOException refused = assertThrows(IOException.class, () -> TcpLink.to(address));

        assertTrue(String.valueOf(refused.getMessage()).startsWith("nobody answers at "), refused.getMessage());
    }

    @Test
    @Timeout(60)
    void aSecondPeerIsTurnedAway() throws IOException {
        InetSocketAddress address = freePort();
        try (TcpLink link = TcpLink.at(address);
                TcpLink first = TcpLink.to(address)) {
            await().atMost(10, TimeUnit.SECONDS).until(link::isConnected);
            try (Socket second = new Socket(address.getAddress(), address.getPort())) {
                second.setSoTimeout(10_000);

                assertTrue(second.getInputStream().read() < 0);
            }
            assertTrue(first.isConnected());
        }
    }

    @Test
    @Timeout(60)
    void aPeerThatTakesNothingIsLetGo() throws IOException {
        InetSocketAddress address = freePort();
        byte[] much = new byte[8_192];
        try (TcpLink link = TcpLink.at(address);
                Socket deaf = new Socket()) {
            deaf.setReceiveBufferSize(4_096);
            deaf.connect(address);
            await().atMost(10, TimeUnit.SECONDS).until(link::isConnected);

            await().atMost(30, TimeUnit.SECONDS).until(() -> {
                for (int i = 0; i < 200; i++) {
                    link.send(much, 0, much.length);
                }
                return !link.isConnected();
            });
        }
    }
}
