package dropline.harness.record;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;

/** Somebody who sends datagrams to this machine. */
final class Sender implements AutoCloseable {
    private final DatagramSocket socket;
    private final int port;

    Sender(int port) throws IOException {
        this.socket = new DatagramSocket();
        this.port = port;
    }

    static InetSocketAddress anyPort() {
        return new InetSocketAddress(InetAddress.getLoopbackAddress(), 0);
    }

    void send(String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        socket.send(new DatagramPacket(bytes, bytes.length, InetAddress.getLoopbackAddress(), port));
    }

    @Override
    public void close() {
        socket.close();
    }
}
