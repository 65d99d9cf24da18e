package dropline.scenarios.see;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.bus.pit.Pit;
import dropline.harness.capture.CaptureSink;
import dropline.harness.capture.Captures;
import dropline.harness.capture.DriverChange;
import dropline.harness.capture.PcapngFile;
import dropline.harness.capture.Resolution;
import dropline.harness.capture.SentFrame;
import dropline.harness.capture.Stretch;
import dropline.harness.capture.VcdFile;
import dropline.harness.pitfile.PitFile;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.WatchedRun;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A run's files, and what was sent in it.
 *
 * @param vcd the waveforms
 * @param pcapng the packets
 * @param frames what was sent, in the order of the first start bits
 */
record Written(Path vcd, Path pcapng, List<SentFrame> frames) {
    private static final long MS = 1_000_000L;
    private static final int SEED = 3;

    Written {
        frames = List.copyOf(frames);
    }

    /** Runs the load of a small pit with such a segment, and writes a stretch of it. */
    static Written of(Path folder, String baud, String format, String protocol, Resolution resolution, Stretch stretch)
            throws IOException {
        Path file = Files.writeString(folder.resolve("pit.yaml"), pitFile(baud, format, protocol));
        Pit pit = assertInstanceOf(PitFile.Understood.class, PitFile.read(file)).pit();
        Path vcd = folder.resolve("bus.vcd");
        Path pcapng = folder.resolve("bus.pcapng");
        List<SentFrame> sent = new ArrayList<>();
        List<CaptureSink> sinks = List.of(
                VcdFile.create(vcd, pit, "seed " + SEED, List.of(), stretch, resolution),
                PcapngFile.create(pcapng, pit, "seed " + SEED),
                new Kept(sent));
        Captures captures = new Captures(pit, stretch, sinks);
        Pit.Load load = Objects.requireNonNull(pit.load());
        long end = stretch.toNanos() + 1_000 * MS;
        new WatchedRun(pit, () -> Source.load(pit, load, end), SEED, List.of(), 1)
                .run(captures.watchers(), captures, Progress.NONE);
        for (CaptureSink sink : sinks) {
            sink.close();
        }
        return new Written(vcd, pcapng, sent);
    }

    /** All bytes sent by those frames, one after another, in hexadecimal pairs. */
    List<String> bytes(boolean fromController) {
        List<String> bytes = new ArrayList<>();
        frames.stream()
                .filter(frame -> frame.talker() < 0 == fromController)
                .forEach(frame -> bytes.addAll(List.of(frame.bytes().toString().split(" "))));
        return bytes;
    }

    /** All bytes on the pair in their order. */
    List<String> bytes() {
        List<String> bytes = new ArrayList<>();
        frames.forEach(frame -> bytes.addAll(List.of(frame.bytes().toString().split(" "))));
        return bytes;
    }

    /** Keeps what was sent. */
    private record Kept(List<SentFrame> frames) implements CaptureSink {
        @Override
        public void take(int segment, List<SentFrame> more, List<DriverChange> drivers) {
            frames.addAll(more);
        }

        @Override
        public void reached(long horizonNanos) {}

        @Override
        public void close() {}
    }

    private static String pitFile(String baud, String format, String protocol) throws IOException {
        try (InputStream file = Objects.requireNonNull(Written.class.getResourceAsStream("pit.yaml"))) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("BAUD", baud)
                    .replace("FORMAT", format)
                    .replace("PROTOCOL", protocol);
        }
    }
}
