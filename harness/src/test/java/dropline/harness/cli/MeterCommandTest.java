package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

final class MeterCommandTest {
    @TempDir
    private Path folder;

    private String pit = "";

    @BeforeEach
    void write() throws IOException {
        pit = SmallPit.write(folder, "150 ms").toString();
    }

    @Test
    void readingsAreShownAndNothingIsWrongYet() {
        Captured run = Captured.run("meter", pit);

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("as it should be"), run::out);
    }

    @Test
    void exitCodeTellsWhetherWhatWasReadIsRight() {
        assertEquals(0, Captured.run("meter", pit, "--read", "ohms=59").exitCode());
        assertEquals(1, Captured.run("meter", pit, "--read", "ohms=40").exitCode());
    }

    @Test
    void unknownSegmentOrReadingIsOneClearProblem() {
        Captured segment = Captured.run("meter", pit, "--segment", "bux");
        Captured reading = Captured.run("meter", pit, "--read", "idel=0");

        assertEquals(2, segment.exitCode());
        assertTrue(segment.err().contains("did you mean bus?"), segment::err);
        assertEquals(2, reading.exitCode());
        assertTrue(reading.err().contains("did you mean idle?"), reading::err);
    }

    @Test
    void documentHoldsEveryReadingAndWhatFits() {
        Captured run = Captured.run("meter", pit, "--read", "ohms=40", "--json", "-");

        JsonNode document = new ObjectMapper().readTree(run.raw());
        JsonNode readings = document.get("pairs").get(0).get("readings");
        assertEquals("ohms", readings.get(0).get("reading").asString());
        assertTrue(readings.get(0).get("sound").get(0).asDouble() < 60);
        assertTrue(readings.get(0).get("sound").get(1).asDouble() > 60);
        assertEquals(
                "there is a terminator too many",
                document.get("diagnosis").get("fits").get(0).asString());
        assertEquals(
                40, document.get("diagnosis").get("taken").get(0).get("value").asDouble());
    }
}
