package dropline.harness.link;

import io.netty.bootstrap.Bootstrap;
import io.netty.bootstrap.ServerBootstrap;
import io.netty.buffer.ByteBuf;
import io.netty.buffer.Unpooled;
import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.ChannelInitializer;
import io.netty.channel.ChannelOption;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.FixedRecvByteBufAllocator;
import io.netty.channel.WriteBufferWaterMark;
import io.netty.channel.socket.SocketChannel;
import io.netty.channel.socket.nio.NioServerSocketChannel;
import io.netty.channel.socket.nio.NioSocketChannel;
import io.netty.util.ReferenceCountUtil;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * A way over the network, as raw bytes: to a server, or for one that connects. There is one peer at a time; another is
 * turned away. A peer that does not take what it is sent is disconnected, so that it cannot hold anything up.
 */
public final class TcpLink implements Link {
    private static final int CONNECT_MILLIS = 5_000;
    private static final int LARGEST_READ = 8_192;
    private static final WriteBufferWaterMark WRITTEN_AT_MOST = new WriteBufferWaterMark(64_000, 256_000);

    private final EventLoopGroup group = Sockets.oneThread();
    private final long origin = System.nanoTime();
    private final Inbox inbox = new Inbox(this::now);
    private final AtomicReference<@Nullable Channel> peer = new AtomicReference<>();
    private final String where;
    private boolean wasThere;

    private TcpLink(String where) {
        this.where = where;
    }

    /**
     * Connects to a server.
     *
     * @throws IOException if nobody answers there, with words for the person
     */
    public static TcpLink to(InetSocketAddress server) throws IOException {
        TcpLink link = new TcpLink(words(server));
        try {
            Channel opened = Sockets.opened(new Bootstrap()
                    .group(link.group)
                    .channel(NioSocketChannel.class)
                    .option(ChannelOption.CONNECT_TIMEOUT_MILLIS, CONNECT_MILLIS)
                    .option(ChannelOption.TCP_NODELAY, true)
                    .option(ChannelOption.WRITE_BUFFER_WATER_MARK, WRITTEN_AT_MOST)
                    .handler(link.peers())
                    .connect(server));
            // it may be told of its own connection later
            link.peer.compareAndSet(null, opened);
            return link;
        } catch (IOException refused) {
            link.close();
            throw new IOException("nobody answers at " + words(server) + " (" + reason(refused) + ")", refused);
        }
    }

    /**
     * Waits for one that connects.
     *
     * @throws IOException if one cannot listen there, with words for the person
     */
    public static TcpLink at(InetSocketAddress here) throws IOException {
        TcpLink link = new TcpLink("whoever connects to " + words(here));
        try {
            Sockets.opened(new ServerBootstrap()
                    .group(link.group)
                    .channel(NioServerSocketChannel.class)
                    .option(ChannelOption.SO_BACKLOG, 4)
                    .childOption(ChannelOption.TCP_NODELAY, true)
                    .childOption(ChannelOption.WRITE_BUFFER_WATER_MARK, WRITTEN_AT_MOST)
                    .childHandler(link.peers())
                    .bind(here));
            return link;
        } catch (IOException refused) {
            link.close();
            throw new IOException("one cannot listen at " + words(here) + " (" + reason(refused) + ")", refused);
        }
    }

    private static String words(InetSocketAddress address) {
        return address.getHostString() + ":" + address.getPort();
    }

    private static String reason(IOException refused) {
        String message = refused.getMessage();
        return message == null ? "no reason given" : message.toLowerCase(Locale.ROOT);
    }

    private ChannelInitializer<SocketChannel> peers() {
        return new ChannelInitializer<>() {
            @Override
            protected void initChannel(SocketChannel channel) {
                channel.config().setRecvByteBufAllocator(new FixedRecvByteBufAllocator(LARGEST_READ));
                channel.pipeline().addLast(new Peer());
            }
        };
    }

    /** One connection, on the sockets' own thread. */
    private final class Peer extends ChannelInboundHandlerAdapter {
        private final byte[] read = new byte[LARGEST_READ];

        @Override
        public void channelActive(ChannelHandlerContext context) {
            if (!peer.compareAndSet(null, context.channel()) && peer.get() != context.channel()) {
                ChannelFuture unused = context.close();
                return;
            }
            if (wasThere) {
                inbox.back();
            }
            wasThere = true;
        }

        @Override
        public void channelRead(ChannelHandlerContext context, Object message) {
            try {
                ByteBuf bytes = (ByteBuf) message;
                while (bytes.isReadable() && context.channel() == peer.get()) {
                    int length = Math.min(bytes.readableBytes(), read.length);
                    bytes.readBytes(read, 0, length);
                    inbox.received(read, length);
                }
            } finally {
                ReferenceCountUtil.release(message);
            }
        }

        @Override
        public void channelInactive(ChannelHandlerContext context) {
            if (peer.compareAndSet(context.channel(), null)) {
                inbox.lost("the other side has gone");
            }
        }

        @Override
        public void exceptionCaught(ChannelHandlerContext context, Throwable cause) {
            ChannelFuture unused = context.close();
        }
    }

    @Override
    public long now() {
        return System.nanoTime() - origin;
    }

    /** {@inheritDoc} Without a peer what is sent is dropped. */
    @Override
    public long send(byte[] bytes, int offset, int length) {
        Channel channel = peer.get();
        long at = now();
        if (channel == null) {
            return at;
        }
        if (!channel.isWritable()) {
            ChannelFuture unused = channel.close();
            return at;
        }
        ChannelFuture unused =
                channel.writeAndFlush(Unpooled.copiedBuffer(bytes, offset, length), channel.voidPromise());
        return at;
    }

    @Override
    public @Nullable Arrival await(long deadlineNanos) {
        return inbox.await(deadlineNanos);
    }

    /** Whether somebody is on the other side. */
    public boolean isConnected() {
        return peer.get() != null;
    }

    @Override
    public boolean isExact() {
        return false;
    }

    @Override
    public boolean isOnAWire() {
        return false;
    }

    @Override
    public String where() {
        return where;
    }

    @Override
    public void close() {
        Sockets.close(group);
    }
}
