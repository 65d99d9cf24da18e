package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

final class OneBoardTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--protocol dropline",
                "--protocol modbus-rtu",
                "--protocol custom --layout ../scenarios/layouts/counted.yaml",
                "--protocol custom --layout ../scenarios/layouts/gaps.yaml"
            })
    void aPitOfOneBoardIsMade(String protocol) {
        OneBoard board = CommandLine.populateCommand(
                new OneBoard(), (protocol + " --baud 19200 --address 7 --time-out 20ms").split(" "));

        Pit pit = board.described().pit();

        assertEquals(19_200, pit.segments().get(0).baud());
        assertEquals(7, pit.segments().get(0).nodes().get(0).address());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--protocol dropline --baud 19200 --address 7| --port is missing",
                "--protocol custom --baud 19200 --address 7 --port COM7| --protocol custom needs --layout FILE",
                "--protocol dropline --baud 19 --address 7 --port COM7| --baud must be 300..10000000, not 19",
                "--protocol modbus-rtu --baud 19200 --address 300 --port COM7| address",
                "--protocol carrier-pigeon --baud 19200 --address 7 --port COM7| expected: one of: dropline,",
                "--protocol dropline --baud 19200| --address"
            })
    void whatIsMissingOrWrongIsSaid(String options, String expected) {
        Captured run = Captured.run(("bench " + options).split(" "));

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains(expected.strip()), run::err);
    }

    @Test
    void aPitFileAndABoardAloneExcludeEachOther() {
        Captured run = Captured.run(
                "bench",
                "--pit",
                Path.of("pit.yaml").toString(),
                "--node",
                "a",
                "--protocol",
                "dropline",
                "--baud",
                "19200",
                "--address",
                "7");

        assertEquals(2, run.exitCode());
    }

    @ParameterizedTest
    @ValueSource(strings = {"on", "off"})
    void whetherDtrIsRaisedIsSaidInAWord(String word) {
        Captured run = Captured.run(
                "bench",
                "--protocol",
                "dropline",
                "--baud",
                "115200",
                "--address",
                "7",
                "--port",
                "no-such-port",
                "--dtr",
                word);

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("there is no port no-such-port"), run::err);
    }
}
