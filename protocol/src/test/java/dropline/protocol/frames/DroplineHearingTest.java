package dropline.protocol.frames;

import dropline.protocol.HearingContract;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import java.util.List;
import java.util.Random;

final class DroplineHearingTest extends HearingContract {
    private static final int[] WIDTHS = {1, 2, 4};

    @Override
    protected Protocol protocol() {
        return DroplineFrames.create();
    }

    @Override
    protected NodeWire randomNode(Random random, int address) {
        List<SignalWire> signals = numbers(random, 1 + random.nextInt(6), 0).stream()
                .map(number -> new SignalWire(number, WIDTHS[random.nextInt(3)]))
                .toList();
        List<ControlWire> controls = numbers(random, random.nextInt(8), random.nextInt(400)).stream()
                .map(ControlWire::new)
                .toList();
        return new NodeWire(address, signals, controls);
    }
}
