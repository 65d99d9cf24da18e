package dropline.harness.record;

import dropline.harness.link.Sockets;
import io.netty.bootstrap.Bootstrap;
import io.netty.buffer.ByteBuf;
import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.ChannelFutureListener;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.EventLoopGroup;
import io.netty.util.ReferenceCountUtil;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.util.concurrent.atomic.AtomicLong;

/** Passes datagrams on, unchanged, to whoever owned the stream before. Never holds up what comes in. */
final class Forward {
    private final Channel channel;
    private final AtomicLong passed = new AtomicLong();
    private final AtomicLong failed = new AtomicLong();
    private final ChannelFutureListener count = sent -> (sent.isSuccess() ? passed : failed).incrementAndGet();

    private Forward(Channel channel) {
        this.channel = channel;
    }

    static Forward open(InetSocketAddress to, EventLoopGroup group) throws IOException {
        Bootstrap bootstrap = new Bootstrap()
                .group(group)
                .channelFactory(() -> UdpIntake.channel(to))
                .handler(new Ignoring());
        // A connected socket is told when nobody listens at the other end, at least on the same machine.
        return new Forward(Sockets.opened(bootstrap.connect(to)));
    }

    /** Sends what stands in the buffer; the buffer stays the caller's. */
    void pass(ByteBuf datagram) {
        // The socket library sends no empty datagrams.
        if (channel.isWritable() && datagram.isReadable()) {
            ChannelFuture unused =
                    channel.writeAndFlush(datagram.retainedDuplicate()).addListener(count);
        } else {
            failed.incrementAndGet();
        }
    }

    long passed() {
        return passed.get();
    }

    long failed() {
        return failed.get();
    }

    /** Whatever comes back is of no interest; what could not be sent is counted where it is sent. */
    private static final class Ignoring extends ChannelInboundHandlerAdapter {
        @Override
        public void channelRead(ChannelHandlerContext context, Object message) {
            ReferenceCountUtil.release(message);
        }

        @Override
        public void exceptionCaught(ChannelHandlerContext context, Throwable cause) {
            // The operating system reports an unreachable receiver here a second time.
        }
    }
}
