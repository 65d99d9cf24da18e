package dropline.harness.timeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceSink;
import dropline.harness.capture.PlayedBus;
import dropline.harness.capture.Stretch;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class TimelineTest {
    private static final long US = 1_000;
    private static final int CONTROLLER = TraceSink.CONTROLLER;
    private static final Stretch ALL = new Stretch(0, 1_000_000 * US);

    @TempDir
    private Path folder;

    @Test
    void marginsStandInMicrosecondsAndBitTimes() throws IOException {
        String svg = drawn(healthy());

        assertTrue(svg.contains(">20.0 us<") && svg.contains(">5.0 bits<"), svg);
        assertTrue(svg.contains(">38.0 us<") && svg.contains(">9.5 bits<"), svg);
        assertTrue(svg.contains("20.0 us, 5.0 bits"), svg);
    }

    @Test
    void aDriverThatLetsGoTooSoonCutsItsFrameAndHasANegativeTail() throws IOException {
        PlayedBus bus = bus().frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 0, 0, 160 * US, Bytes.of(1, 2, 3, 4))
                .frame(0, TraceSink.REPLY, 0, 1, 280 * US, 300 * US, 422 * US, Bytes.of(5, 6, 7, 8));

        String svg = drawn(bus);

        assertTrue(svg.contains("-38.0 us, -9.5 bits"), svg);
        assertTrue(svg.contains("class=\"cut\" x="), svg);
    }

    @Test
    void aCollisionIsMarkedByShapePatternAndWord() throws IOException {
        String svg = drawn(colliding());

        assertTrue(svg.contains("class=\"clash\" x="), svg);
        assertTrue(svg.contains("class=\"mark\" d="), svg);
        assertTrue(svg.contains(">clash, 80.0 us<"), svg);
        assertTrue(svg.contains("clash with node 2, not taken: timed out"), svg);
    }

    @Test
    void aFrameThatIsNotReceivedAsSentBearsASign() throws IOException {
        PlayedBus bus = healthy().at(740 * US, sink -> sink.receivedWrong(740 * US, CONTROLLER, 0, 1));

        String svg = drawn(bus);

        assertTrue(svg.contains("received wrong by controller"), svg);
        assertTrue(svg.contains("class=\"lost\" x=") && svg.contains(">!<"), svg);
    }

    @Test
    void theDrawingIsWellFormedAndFollowsTheReadersColourScheme() throws Exception {
        String svg = drawn(colliding());

        var document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(folder.resolve("t.svg").toFile());
        assertEquals("svg", document.getDocumentElement().getTagName());
        assertTrue(svg.contains("prefers-color-scheme: dark"));
    }

    @Test
    void moreFramesThanCanBeReadAreCountedAndLeftOut() throws IOException {
        PlayedBus bus = bus();
        int frames = Timeline.MOST_FRAMES + 3;
        for (int i = 0; i < frames; i++) {
            long at = i * 1_000L * US;
            bus.frame(CONTROLLER, TraceSink.REQUEST, 0, i + 1, at, at, at + 160 * US, Bytes.of(1, 2, 3, 4));
        }

        String svg = drawn(bus);

        assertTrue(svg.contains("The first 60 of 63 frames; the next begins at 0.060000000 s."), svg);
        assertFalse(svg.contains(">61<"), svg);
    }

    @Test
    void aStretchWithoutAFrameSaysSo() throws IOException {
        assertTrue(drawn(bus()).contains("No frame begins in this stretch."));
    }

    @Test
    void namesAreEscaped() {
        assertEquals("&lt;a&gt; &amp; &quot;b&quot;", Svg.escaped("<a> & \"b\""));
    }

    private static PlayedBus bus() {
        return new PlayedBus(3, 250_000, CharacterFormat.EIGHT_N_ONE);
    }

    private static PlayedBus healthy() {
        return bus().frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 0, 20 * US, 184 * US, Bytes.of(1, 2, 3, 4))
                .frame(0, TraceSink.REPLY, 0, 1, 480 * US, 500 * US, 778 * US, Bytes.of(5, 6, 7, 8, 9, 10))
                .at(738 * US, sink -> sink.answered(738 * US, 0, 1, 1, 316 * US));
    }

    /** Two nodes answer; the second one begins 80 us before the first one lets go. */
    private static PlayedBus colliding() {
        return bus().frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 0, 20 * US, 184 * US, Bytes.of(1, 2, 3, 4))
                .frame(0, TraceSink.REPLY, 0, 1, 480 * US, 500 * US, 778 * US, Bytes.of(5, 6, 7, 8, 9, 10))
                .at(698 * US, sink -> sink.clash(698 * US, 1, 0))
                .frame(1, TraceSink.REPLY, 0, 1, 698 * US, 700 * US, 962 * US, Bytes.of(5, 6, 7, 8, 9, 10))
                .at(2_180 * US, sink -> sink.timedOut(2_180 * US, 0, 1, 1))
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 2_200 * US, 2_220 * US, 2_384 * US, Bytes.of(1, 2, 3, 4));
    }

    private String drawn(PlayedBus bus) throws IOException {
        Path file = folder.resolve("t.svg");
        bus.play(ALL, 2_000_000 * US, Timeline.create(file, bus.pit(), 0, "seed 1"));
        return Files.readString(file);
    }
}
