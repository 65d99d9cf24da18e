package dropline.harness.record;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.recording.LimitedDisk;
import dropline.harness.stream.StreamReader;
import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

final class UdpRecordingTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Test
    void whatIsSentStandsInTheRecording() throws Exception {
        Path out = folder.resolve("flight.csv");
        Listener listener = new Listener();
        try (Recorder recorder = Recorder.open(plan(null, out), listener)) {
            Running running = new Running(recorder);
            try (Sender sender = new Sender(recorder.port())) {
                sender.send("time=10,altitude=1204.5,gear=on");
                sender.send("time=10.04,altitude=1204.9,title=Dunlin");
                sender.send("time=10.08,altitude=1205,flaps=2");
            }
            await().until(() -> recorder.tally().received() == 3);
            assertEquals(Ending.ASKED, running.stopped());

            assertEquals(
                    "time_s,altitude,gear,title,flaps\n".replace("title,", "")
                            + "0,1204.5,1,\n0.04,1204.9,1,\n0.08,1205,1,2\n",
                    Files.readString(out));
            assertEquals(List.of("title=Dunlin"), recorder.tally().noNumberExamples());
            assertEquals(3, recorder.tally().names());
            assertFalse(Files.exists(Take.part(out)));
            assertTrue(Files.readString(folder.resolve("flight.csv.log")).contains("3 datagrams received, 3 read."));
        }
    }

    @Test
    void everythingReceivedIsReadOrCountedAndNumbersTellWhatNeverCame() throws Exception {
        try (Recorder recorder = Recorder.open(plan(null, folder.resolve("f.dlr")), new Listener())) {
            Running running = new Running(recorder);
            int sent = 0;
            try (Sender sender = new Sender(recorder.port())) {
                for (int i = 0; i < 1_000; i++) {
                    boolean lost = i % 50 == 7;
                    if (!lost) {
                        sender.send(i % 100 == 3 ? "\u0001\u0002" : "seq=" + i + ",a=" + i);
                        sent++;
                    }
                    if (i == 500) {
                        sender.send("seq=499,a=1");
                        sent++;
                    }
                }
            }
            int all = sent;
            await().until(() -> recorder.tally().received() == all);
            running.stopped();

            Tally tally = recorder.tally();
            assertEquals(all, tally.read() + tally.malformed() + tally.repeated() + tally.dropped());
            assertEquals(10, tally.malformed());
            assertEquals(1, tally.repeated());
            assertEquals(20 + 10, tally.missing());
        }
    }

    @Test
    void whatFindsNoRoomIsCounted() throws Exception {
        CountDownLatch go = new CountDownLatch(1);
        Listener held = new Listener() {
            @Override
            public void arrived(String message) {
                try {
                    go.await();
                } catch (InterruptedException e) {
                    throw new AssertionError(e);
                }
            }
        };
        Arrivals arrivals = new Arrivals(1_000, System::nanoTime);
        try (UdpIntake intake = UdpIntake.open(Sender.anyPort(), null, arrivals);
                Recorder recorder =
                        new Recorder(intake, arrivals, StreamReader.guessing(), null, held, System::nanoTime)) {
            Running running = new Running(recorder);
            try (Sender sender = new Sender(intake.port())) {
                for (int i = 0; i < 100; i++) {
                    sender.send("a=" + i);
                }
            }
            await().until(() -> arrivals.received() == 100);
            go.countDown();
            running.stopped();

            Tally tally = recorder.tally();
            assertEquals(100, tally.read() + tally.dropped());
            assertTrue(tally.dropped() >= 80, () -> "dropped " + tally.dropped());
        }
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void whatTheOperatingSystemDropsIsReportedSoThatReceivedPlusLostIsSent() throws Exception {
        CountDownLatch go = new CountDownLatch(1);
        AtomicLong calls = new AtomicLong();
        Arrivals slow = new Arrivals(Arrivals.USUAL_BYTES, () -> {
            // Asked for the time of the first arrival, on the socket's own thread: nothing is read meanwhile.
            if (calls.incrementAndGet() == 1) {
                try {
                    go.await();
                } catch (InterruptedException e) {
                    throw new AssertionError(e);
                }
            }
            return System.nanoTime();
        });
        try (UdpIntake intake = UdpIntake.open(Sender.anyPort(), null, slow, 4_096)) {
            try (Sender sender = new Sender(intake.port())) {
                for (int i = 0; i < 500; i++) {
                    sender.send("a=" + "1".repeat(200));
                }
            }
            go.countDown();

            await().until(() -> slow.received() + intake.systemDrops().orElse(0) == 500);
            assertTrue(intake.systemDrops().orElse(0) > 100, () -> "dropped " + intake.systemDrops());
            long drops = intake.systemDrops().orElse(0);
            end(intake);
            assertEquals(OptionalLong.of(drops), intake.systemDrops());
        }
    }

    @Test
    void everyDatagramIsPassedOnUnchanged() throws Exception {
        try (DatagramSocket owner = new DatagramSocket(Sender.anyPort());
                Recorder recorder = Recorder.open(
                        plan((InetSocketAddress) owner.getLocalSocketAddress(), folder.resolve("f.dlr")),
                        new Listener())) {
            Running running = new Running(recorder);
            owner.setSoTimeout(20_000);
            try (Sender sender = new Sender(recorder.port())) {
                for (String text : List.of("a=1", "no state at all", "\u0000\u0001")) {
                    sender.send(text);
                    DatagramPacket packet = new DatagramPacket(new byte[100], 100);
                    owner.receive(packet);
                    assertEquals(text, new String(packet.getData(), 0, packet.getLength(), StandardCharsets.UTF_8));
                }
            }
            await().until(() -> recorder.tally().forwarded() == 3);
            running.stopped();
        }
    }

    @Test
    void nobodyToPassOnToDoesNotStopTheRecording() throws Exception {
        int free;
        try (DatagramSocket socket = new DatagramSocket(Sender.anyPort())) {
            free = socket.getLocalPort();
        }
        InetSocketAddress nobody = new InetSocketAddress(InetAddress.getLoopbackAddress(), free);
        try (Recorder recorder = Recorder.open(plan(nobody, folder.resolve("f.dlr")), new Listener())) {
            Running running = new Running(recorder);
            try (Sender sender = new Sender(recorder.port())) {
                for (int i = 0; i < 50; i++) {
                    sender.send("a=" + i);
                }
            }
            await().until(() -> recorder.tally().received() == 50
                    && recorder.tally().forwarded() + recorder.tally().notForwarded() == 50);
            running.stopped();
            assertEquals(50, recorder.tally().states());
        }
    }

    @Test
    void aFullDiskEndsTheRecordingAndSaysWhatIsSafe() throws Exception {
        Arrivals arrivals = new Arrivals(Arrivals.USUAL_BYTES, System::nanoTime);
        Listener listener = new Listener();
        LimitedDisk disk = new LimitedDisk(200_000);
        try (UdpIntake intake = UdpIntake.open(Sender.anyPort(), null, arrivals);
                Take take = Take.begin(folder.resolve("flight.dlr"), disk);
                Recorder recorder =
                        new Recorder(intake, arrivals, StreamReader.guessing(), take, listener, System::nanoTime)) {
            Running running = new Running(recorder);
            try (Sender sender = new Sender(intake.port())) {
                for (int i = 0; i < 50_000 && listener.said.stream().noneMatch(s -> s.contains("STOPPED")); i++) {
                    sender.send("a=" + i + ",b=" + i * 0.1);
                }
            }

            assertEquals(Ending.NOT_WRITABLE, running.ended());
            String last = listener.said.get(listener.said.size() - 1);
            assertTrue(last.contains("No space left on device. Safe in "), last);
            assertTrue(last.contains(Long.toString(take.safeStates()).replaceAll("(\\d)(\\d{3})$", "$1,$2")), last);
            Files.write(Take.part(folder.resolve("flight.dlr")), disk.held());
        }
        Listener next = new Listener();
        Recorder.open(plan(null, folder.resolve("flight.dlr")), next).close();
        assertTrue(next.said.get(0).contains("was cut off; recovered "), next.said::toString);
    }

    @Test
    void aRecordingThatWasCutOffIsRecoveredByTheNextOne() throws Exception {
        Path out = folder.resolve("flight.dlr");
        try (Recorder killed = Recorder.open(plan(null, out), new Listener())) {
            Running running = new Running(killed);
            try (Sender sender = new Sender(killed.port())) {
                sender.send("a=1");
                sender.send("a=2");
            }
            await().until(() -> killed.tally().states() == 2 && Files.size(Take.part(out)) > 20);
            Files.copy(Take.part(out), folder.resolve("copy"));
            running.stopped();
        }
        Files.delete(out);
        Files.move(folder.resolve("copy"), Take.part(out));
        Listener listener = new Listener();

        Recorder.open(plan(null, out), listener).close();

        assertTrue(listener.said.get(0).contains("cut off; recovered 2 states of it to"), listener.said::toString);
        assertTrue(Files.exists(folder.resolve("recovered-flight.dlr")));
    }

    @Test
    void aRecordingThatIsThereOrBeingMadeIsNotOverwritten() throws Exception {
        Path out = folder.resolve("flight.dlr");
        try (Recorder first = Recorder.open(plan(null, out), new Listener())) {
            assertTrue(first.port() > 0);
            RefusedException busy =
                    assertThrows(RefusedException.class, () -> Recorder.open(plan(null, out), new Listener()));
            assertTrue(String.valueOf(busy.getMessage()).startsWith("another Dropline is recording to"));
        }
        Files.writeString(out, "a flight");

        assertThrows(RefusedException.class, () -> Recorder.open(plan(null, out), new Listener()));
        assertEquals("a flight", Files.readString(out));
    }

    @Test
    void aPortInUseIsRefusedAndLeavesNothingBehind() throws IOException {
        Path out = folder.resolve("flight.dlr");
        try (DatagramSocket taken = new DatagramSocket(Sender.anyPort())) {
            Plan plan = new Plan(false, (InetSocketAddress) taken.getLocalSocketAddress(), null, null, out);

            RefusedException refused = assertThrows(RefusedException.class, () -> Recorder.open(plan, new Listener()));

            assertTrue(String.valueOf(refused.getMessage()).contains("--forward"));
            assertFalse(Files.exists(Take.part(out)));
        }
    }

    private static void end(Intake intake) {
        intake.close();
    }

    private static Plan plan(@Nullable InetSocketAddress forward, Path out) {
        return new Plan(false, Sender.anyPort(), forward, null, out);
    }
}
