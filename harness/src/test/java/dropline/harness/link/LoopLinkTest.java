package dropline.harness.link;

import dropline.harness.recording.Moves;
import java.util.List;

final class LoopLinkTest extends LinkContract {
    @Override
    Link link() {
        return new LoopLink(OneNode.pit(), 0, 1, List.of(), Moves.none());
    }
}
