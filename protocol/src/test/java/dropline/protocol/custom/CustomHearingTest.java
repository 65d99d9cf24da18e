package dropline.protocol.custom;

import dropline.protocol.HearingContract;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;

final class CustomHearingTest {

    /** A node whose signals and controls every example has room for. */
    private abstract static class Example extends HearingContract {
        private final Layout layout;

        Example(Layout layout) {
            this.layout = layout;
        }

        @Override
        protected Protocol protocol() {
            return Examples.custom(layout);
        }

        @Override
        protected NodeWire randomNode(Random random, int address) {
            List<SignalWire> signals = numbers(random, 1 + random.nextInt(3), 0).stream()
                    .map(number -> new SignalWire(number, 2))
                    .toList();
            List<ControlWire> controls = numbers(random, random.nextInt(3), 10).stream()
                    .map(ControlWire::new)
                    .toList();
            return new NodeWire(address, signals, controls);
        }
    }

    @Nested
    final class FramesWithALength extends Example {
        FramesWithALength() {
            super(Examples.COUNTED);
        }
    }

    @Nested
    final class LinesOfText extends Example {
        LinesOfText() {
            super(Examples.LINES);
        }
    }

    @Nested
    final class FramesWithGaps extends Example {
        FramesWithGaps() {
            super(Examples.GAPS);
        }
    }

    @Nested
    final class EscapedFrames extends Example {
        EscapedFrames() {
            super(Examples.ESCAPED);
        }
    }
}
