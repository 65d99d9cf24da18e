package dropline.harness.record;

import dropline.harness.link.Sockets;
import io.netty.bootstrap.Bootstrap;
import io.netty.buffer.ByteBuf;
import io.netty.buffer.Unpooled;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelOption;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.FixedRecvByteBufAllocator;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.channel.socket.DatagramPacket;
import io.netty.channel.socket.SocketProtocolFamily;
import io.netty.channel.socket.nio.NioDatagramChannel;
import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/** Receives datagrams. */
final class UdpIntake implements Intake {
    private static final int LONGEST = 65_536;

    /** Asked for; the system may give less. */
    private static final int BUFFER = 8 << 20;

    /**
     * Read before any is handed on, each into a buffer of the longest: few, for many buffers take fresh memory each
     * time, and the socket's thread then never makes up for a delay.
     */
    private static final int MOST_AT_ONCE = 8;

    private static final int MOST_PASSES = 100;

    private final EventLoopGroup group;
    private final InetSocketAddress bound;
    private final Arrivals arrivals;
    private final @Nullable Forward forward;
    private OptionalLong dropsAtTheEnd = OptionalLong.empty();
    private boolean closed;

    private UdpIntake(EventLoopGroup group, InetSocketAddress bound, Arrivals arrivals, @Nullable Forward forward) {
        this.group = group;
        this.arrivals = arrivals;
        this.bound = bound;
        this.forward = forward;
    }

    /**
     * Binds and begins to receive.
     *
     * @param to where every datagram is passed on to; null for nowhere
     */
    static UdpIntake open(InetSocketAddress at, @Nullable InetSocketAddress to, Arrivals arrivals) throws IOException {
        return open(at, to, arrivals, BUFFER);
    }

    static UdpIntake open(InetSocketAddress at, @Nullable InetSocketAddress to, Arrivals arrivals, int buffer)
            throws IOException {
        EventLoopGroup group = Sockets.oneThread();
        try {
            Forward forward = to == null ? null : Forward.open(to, group);
            rehearse(group);
            Channel channel = bind(group, at, arrivals, forward, buffer);
            return new UdpIntake(group, (InetSocketAddress) channel.localAddress(), arrivals, forward);
        } catch (IOException | RuntimeException e) {
            Sockets.close(group);
            throw e;
        }
    }

    private static Channel bind(
            EventLoopGroup group, InetSocketAddress at, Arrivals arrivals, @Nullable Forward forward, int buffer)
            throws IOException {
        Bootstrap bootstrap = new Bootstrap()
                .group(group)
                .channelFactory(() -> channel(at))
                .option(ChannelOption.SO_RCVBUF, buffer)
                .option(
                        ChannelOption.RECVBUF_ALLOCATOR,
                        new FixedRecvByteBufAllocator(LONGEST).maxMessagesPerRead(MOST_AT_ONCE))
                .handler(new Receiving(arrivals, forward));
        return Sockets.opened(bootstrap.bind(at));
    }

    /**
     * Receives one datagram of its own. Else the first real ones would wait, up to a second on a slow machine, while
     * Java loads what receiving takes, and their times of arrival be wrong.
     */
    private static void rehearse(EventLoopGroup group) throws IOException {
        Arrivals own = new Arrivals(Arrivals.USUAL_BYTES, System::nanoTime);
        Channel channel = bind(group, new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), own, null, BUFFER);
        InetSocketAddress itself = (InetSocketAddress) channel.localAddress();
        channel.writeAndFlush(new DatagramPacket(Unpooled.wrappedBuffer(new byte[] {0}), itself))
                .awaitUninterruptibly();
        settle(group, own);
        channel.close().awaitUninterruptibly();
    }

    /** Lets the socket's thread read until it finds nothing more, or for so long that more must still be coming. */
    private static void settle(EventLoopGroup group, Arrivals arrivals) {
        long before;
        int passes = 0;
        do {
            before = arrivals.received();
            // A task runs after the sockets were looked at; the first may come from a look that began before.
            group.submit(() -> {}).awaitUninterruptibly();
            group.submit(() -> {}).awaitUninterruptibly();
        } while (arrivals.received() != before && ++passes < MOST_PASSES);
    }

    static NioDatagramChannel channel(InetSocketAddress for4or6) {
        boolean four = for4or6.getAddress() instanceof Inet4Address;
        return new NioDatagramChannel(four ? SocketProtocolFamily.INET : SocketProtocolFamily.INET6);
    }

    @Override
    public String unit() {
        return "datagram";
    }

    @Override
    public int port() {
        return bound.getPort();
    }

    @Override
    public OptionalLong systemDrops() {
        return closed ? dropsAtTheEnd : SystemDrops.of(bound);
    }

    @Override
    public long forwarded() {
        return forward == null ? 0 : forward.passed();
    }

    @Override
    public long notForwarded() {
        return forward == null ? 0 : forward.failed();
    }

    @Override
    public void close() {
        if (!closed) {
            settle(group, arrivals);
            dropsAtTheEnd = SystemDrops.of(bound);
            closed = true;
            Sockets.close(group);
        }
    }

    /** Passes on first, for that is what others wait for. */
    private static final class Receiving extends SimpleChannelInboundHandler<DatagramPacket> {
        private final Arrivals arrivals;
        private final @Nullable Forward forward;

        Receiving(Arrivals arrivals, @Nullable Forward forward) {
            this.arrivals = arrivals;
            this.forward = forward;
        }

        @Override
        protected void channelRead0(ChannelHandlerContext context, DatagramPacket packet) {
            ByteBuf content = packet.content();
            if (forward != null) {
                forward.pass(content);
            }
            byte[] bytes = new byte[content.readableBytes()];
            content.readBytes(bytes);
            arrivals.message(bytes);
        }

        @Override
        public void exceptionCaught(ChannelHandlerContext context, Throwable cause) {
            arrivals.note("the socket reported: " + cause.getMessage());
        }
    }
}
