package dropline.harness.record;

import io.netty.buffer.ByteBuf;
import io.netty.channel.ChannelHandlerContext;
import io.netty.handler.codec.LineBasedFrameDecoder;
import java.util.List;

/** Cuts what comes in into lines. A last line without an end is torn: half a number must not pass for a whole one. */
final class Lines extends LineBasedFrameDecoder {
    static final int LONGEST = 65_536;

    private final Arrivals arrivals;

    Lines(Arrivals arrivals) {
        super(LONGEST, true, true);
        this.arrivals = arrivals;
    }

    @Override
    protected void decodeLast(ChannelHandlerContext context, ByteBuf in, List<Object> out) throws Exception {
        while (in.isReadable()) {
            int before = in.readableBytes();
            decode(context, in, out);
            if (in.readableBytes() == before) {
                arrivals.broken("the connection ended within a line");
                in.skipBytes(before);
            }
        }
    }
}
