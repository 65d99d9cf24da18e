package dropline.harness.record;

import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.nio.NioIoHandler;
import java.io.IOException;
import java.util.concurrent.TimeUnit;

/** What both kinds of intake need of the socket library. */
final class Sockets {
    private Sockets() {}

    /** One thread for all sockets of an intake. */
    static EventLoopGroup oneThread() {
        return new MultiThreadIoEventLoopGroup(1, NioIoHandler.newFactory());
    }

    /** Waits for a channel to open. */
    static Channel opened(ChannelFuture opening) throws IOException {
        opening.awaitUninterruptibly();
        if (opening.isSuccess()) {
            return opening.channel();
        }
        Throwable cause = opening.cause();
        throw cause instanceof IOException known ? known : new IOException(cause);
    }

    static void close(EventLoopGroup group) {
        group.shutdownGracefully(0, 2, TimeUnit.SECONDS).awaitUninterruptibly();
    }
}
