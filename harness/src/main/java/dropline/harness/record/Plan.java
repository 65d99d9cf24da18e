package dropline.harness.record;

import dropline.harness.stream.DatagramLayout;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * What shall be recorded.
 *
 * @param tcp whether to connect to a server that sends lines; else datagrams are received
 * @param address of the server, or where to receive
 * @param forward where every datagram is passed on to; null for nowhere
 * @param datagram what is in a binary datagram; null to find out in which form text is
 * @param out the recording; null to write none
 */
public record Plan(
        boolean tcp,
        InetSocketAddress address,
        @Nullable InetSocketAddress forward,
        @Nullable DatagramLayout datagram,
        @Nullable Path out) {}
