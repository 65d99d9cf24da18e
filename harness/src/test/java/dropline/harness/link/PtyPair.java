package dropline.harness.link;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** Two pseudo-terminals, each the other's far end, as long as it is open. Needs socat. */
public final class PtyPair implements AutoCloseable {
    private final Process socat;
    private final Path near;
    private final Path far;

    /** Skips the test where socat is missing, unless {@code -Ddropline.peers=required}. */
    public static void mustBePossible() {
        boolean there = Files.isExecutable(Path.of("/usr/bin/socat"));
        assumeTrue(there || "required".equals(System.getProperty("dropline.peers")), "socat is not installed");
        assertTrue(there, "socat must be installed: -Ddropline.peers=required");
    }

    /** @param name of its files in the folder */
    public PtyPair(Path folder, String name) throws IOException {
        near = folder.resolve(name + "-near");
        far = folder.resolve(name + "-far");
        socat = new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
                .inheritIO()
                .start();
        await().atMost(10, TimeUnit.SECONDS).until(() -> Files.exists(near) && Files.exists(far));
    }

    public Path near() {
        return near;
    }

    public Path far() {
        return far;
    }

    /** It takes its links away as it ends: until then nobody else may clear the folder. */
    @Override
    public void close() {
        socat.destroy();
        socat.onExit().orTimeout(10, TimeUnit.SECONDS).join();
    }
}
