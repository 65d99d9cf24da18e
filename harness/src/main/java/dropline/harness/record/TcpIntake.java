package dropline.harness.record;

import dropline.harness.link.Sockets;
import io.netty.bootstrap.Bootstrap;
import io.netty.buffer.ByteBuf;
import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInitializer;
import io.netty.channel.ChannelOption;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.channel.socket.nio.NioSocketChannel;
import io.netty.handler.codec.TooLongFrameException;
import io.netty.util.concurrent.Future;
import java.net.InetSocketAddress;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;

/**
 * Receives lines from a server, and connects anew, with growing pauses, when it is not there. Before the first
 * connection it waits for ever; a server that was there and stays away for longer than its patience has ended the
 * stream. All fields belong to the one thread of the sockets.
 */
final class TcpIntake implements Intake {
    /** A simulator that loads another flight may be away for so long. */
    static final long USUAL_PATIENCE_MILLIS = 60_000;

    private static final long FIRST_PAUSE_MILLIS = 250;
    private static final long LONGEST_PAUSE_MILLIS = 4_000;
    private static final int CONNECT_MILLIS = 5_000;

    private final EventLoopGroup group = Sockets.oneThread();
    private final InetSocketAddress server;
    private final Arrivals arrivals;
    private final long patienceNanos;
    private final Bootstrap bootstrap;
    private long pauseMillis = FIRST_PAUSE_MILLIS;
    private boolean everConnected;
    private boolean saidWaiting;
    private long lostNanos;

    private TcpIntake(InetSocketAddress server, Arrivals arrivals, long patienceMillis) {
        this.server = server;
        this.arrivals = arrivals;
        this.patienceNanos = TimeUnit.MILLISECONDS.toNanos(patienceMillis);
        this.bootstrap = new Bootstrap()
                .group(group)
                .channel(NioSocketChannel.class)
                .option(ChannelOption.CONNECT_TIMEOUT_MILLIS, CONNECT_MILLIS)
                .handler(new ChannelInitializer<Channel>() {
                    @Override
                    protected void initChannel(Channel channel) {
                        channel.pipeline().addLast(new Lines(arrivals), new Receiving());
                    }
                });
    }

    /** Begins to connect; does not wait for it. */
    static TcpIntake open(InetSocketAddress server, Arrivals arrivals, long patienceMillis) {
        TcpIntake intake = new TcpIntake(server, arrivals, patienceMillis);
        intake.group.execute(intake::connect);
        return intake;
    }

    private void connect() {
        ChannelFuture unused = bootstrap.connect(server).addListener(this::connected);
    }

    private void connected(Future<? super Void> attempt) {
        if (group.isShuttingDown()) {
            return;
        }
        if (!attempt.isSuccess()) {
            if (!everConnected && !saidWaiting) {
                saidWaiting = true;
                arrivals.note("nobody answers at " + text(server) + " yet; waiting");
            }
            tryAgain();
            return;
        }
        String away = everConnected
                ? String.format(Locale.ROOT, ", after %.1f s", (System.nanoTime() - lostNanos) / 1e9)
                : "";
        arrivals.note("connected to " + text(server) + away);
        everConnected = true;
        pauseMillis = FIRST_PAUSE_MILLIS;
    }

    private void lost() {
        if (group.isShuttingDown()) {
            return;
        }
        lostNanos = System.nanoTime();
        arrivals.lost("the connection to " + text(server) + " was lost; connecting anew");
        tryAgain();
    }

    private void tryAgain() {
        if (everConnected && System.nanoTime() - lostNanos > patienceNanos) {
            arrivals.end("the server has ended the stream");
            return;
        }
        Future<?> unused = group.schedule(this::connect, pauseMillis, TimeUnit.MILLISECONDS);
        pauseMillis = Math.min(LONGEST_PAUSE_MILLIS, pauseMillis * 2);
    }

    private static String text(InetSocketAddress address) {
        return address.getHostString() + ":" + address.getPort();
    }

    @Override
    public String unit() {
        return "line";
    }

    @Override
    public int port() {
        return 0;
    }

    /** TCP itself sees to it that nothing is dropped. */
    @Override
    public OptionalLong systemDrops() {
        return OptionalLong.of(0);
    }

    @Override
    public long forwarded() {
        return 0;
    }

    @Override
    public long notForwarded() {
        return 0;
    }

    @Override
    public void close() {
        Sockets.close(group);
    }

    private final class Receiving extends SimpleChannelInboundHandler<ByteBuf> {
        @Override
        protected void channelRead0(ChannelHandlerContext context, ByteBuf line) {
            byte[] bytes = new byte[line.readableBytes()];
            line.readBytes(bytes);
            arrivals.message(bytes);
        }

        @Override
        public void channelInactive(ChannelHandlerContext context) {
            lost();
        }

        @Override
        public void exceptionCaught(ChannelHandlerContext context, Throwable cause) {
            if (cause instanceof TooLongFrameException) {
                arrivals.broken("a line is longer than " + Lines.LONGEST + " bytes");
            } else {
                ChannelFuture unused = context.close();
            }
        }
    }
}
