package dropline.harness.link;

import io.netty.channel.Channel;
import io.netty.channel.ChannelFuture;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.nio.NioIoHandler;
import java.io.IOException;
import java.util.concurrent.TimeUnit;

/** What all that speaks over a network needs of the socket library. */
public final class Sockets {
    private Sockets() {}

    /** One thread for all sockets of one use. */
    public static EventLoopGroup oneThread() {
        return new MultiThreadIoEventLoopGroup(1, NioIoHandler.newFactory());
    }

    /** Waits for a channel to open. */
    public static Channel opened(ChannelFuture opening) throws IOException {
        opening.awaitUninterruptibly();
        if (opening.isSuccess()) {
            return opening.channel();
        }
        Throwable cause = opening.cause();
        throw cause instanceof IOException known ? known : new IOException(cause);
    }

    public static void close(EventLoopGroup group) {
        group.shutdownGracefully(0, 2, TimeUnit.SECONDS).awaitUninterruptibly();
    }
}
