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
                VcdFile.create(vcd, pit, SEED, List.of(), stretch, resolution),
                PcapngFile.create(pcapng, pit, SEED),
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

    private static String pitFile(String baud, String format, String protocol) {
        return """
                pit: Read by others

                host:
                  state-rate: as recorded

                load:
                  every: 25 ms
                  changes: 2

                hubs:
                  board: {kind: board, adapter: none}

                profiles:
                  plain:
                    source: chosen for this test
                    replies-from: interrupt
                    reply-gap: 2 ms + exponential 50 us
                    enable-lead: 20 us
                    release-tail: 30 us

                budgets:
                  update: 1 s
                  control: 1 s
                  source: chosen for this test

                signals:
                  speed: {unit: kt, range: 0..400, number: 1}
                  height: {unit: ft, range: 0..30000, number: 2}
                  course: {unit: deg, range: 0..360, number: 3}

                segments:
                  bus:
                    baud: BAUD
                    format: FORMAT
                    protocol: PROTOCOL
                    controller:
                      hub: board
                      gap: 100 us
                      time-out: 200 ms
                      enable-lead: 15 us
                      release-tail: 10 us

                nodes:
                  node 1: {segment: bus, address: 1, profile: plain}
                  node 2: {segment: bus, address: 2, profile: plain}
                  node 17: {segment: bus, address: 17, profile: plain}

                panels:
                  panel 1:
                    node: node 1
                    indicators:
                      digits: {kind: lamp, shows: speed}
                  panel 2:
                    node: node 2
                    indicators:
                      digits: {kind: lamp, shows: height}
                    controls:
                      switch: {kind: toggle, number: 100}
                  panel 3:
                    node: node 17
                    indicators:
                      digits: {kind: lamp, shows: course}
                """.replace("BAUD", baud).replace("FORMAT", format).replace("PROTOCOL", protocol);
    }
}
