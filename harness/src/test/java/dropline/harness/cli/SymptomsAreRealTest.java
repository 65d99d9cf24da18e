package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What stands first under a symptom brings that symptom about when it is injected into a pit that has none. */
final class SymptomsAreRealTest {
    private static final Path CASES = Path.of("../scenarios/cases");
    private static final String PIT = CASES.resolve("unplugged-panel/pit.yaml").toString();
    private static final String FLIGHT = "../scenarios/demo/flight.dlr";
    private static final double MILLIS = 1e-3;

    private static String replay(String fault) {
        Captured run = fault.isEmpty()
                ? Captured.run("replay", PIT, FLIGHT, "--from", "200s", "--to", "230s")
                : Captured.run("replay", PIT, FLIGHT, "--from", "200s", "--to", "230s", "--fault", fault);
        assertTrue(run.exitCode() <= 1, run::toString);
        return run.out();
    }

    /** By how much a panel keeps within its limit, s; below 0 where it does not, what was never shown included. */
    private static double margin(String report, String panel) {
        Matcher row = Pattern.compile(
                        "(?m)^ {2}\\S+ +" + panel + " +dash +\\d.* ([+-][0-9.]+) (us|ms|s) +\\S+( \\S+)?$")
                .matcher(report);
        assertTrue(row.find(), report);
        return seconds(row.group(1), row.group(2));
    }

    private static double seconds(String number, String unit) {
        return Double.parseDouble(number) * (unit.equals("s") ? 1 : unit.equals("ms") ? MILLIS : MILLIS * MILLIS);
    }

    private static double meanCycle(String report) {
        Matcher words = Pattern.compile("a round of polls takes ([0-9.]+) (us|ms|s) on\\s+average")
                .matcher(report);
        assertTrue(words.find(), report);
        return seconds(words.group(1), words.group(2));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "One panel shows old values|frozen-display Altimeter/needle at 2s|Altimeter|Torque",
                "One panel is dark or dead|dead-node 'altitude board' at 2s|Altimeter|Torque",
            })
    void onePanelIsWrongAndTheOthersAreWell(String symptom, String fault, String struck, String other) {
        String report = replay(fault);

        assertTrue(margin(report, struck) < -1, symptom + "\n" + report);
        assertTrue(margin(report, other) > 0.05, symptom + "\n" + report);
    }

    @Test
    void everythingStopsWithASilentHost() {
        String report = replay("silent-host at 10s for 10s");

        assertTrue(margin(report, "Torque") < -5 && margin(report, "Altimeter") < -5, report);
    }

    @Test
    void aSlowAdapterMakesEveryRoundSlow() {
        String pit = CASES.resolve("adapter-at-16-ms/pit.yaml").toString();
        String before = Captured.run("replay", pit, FLIGHT, "--from", "200s", "--to", "215s")
                .out();
        String after = Captured.run(
                        "replay", pit, FLIGHT, "--from", "200s", "--to", "215s", "--fault", "slow-adapter dash by 16ms")
                .out();

        assertTrue(meanCycle(after) > 2 * meanCycle(before), after);
    }

    @Test
    void aKnobThatSkipsLosesSteps() {
        String report = replay("encoder-skips heading-bug rate 30%");

        assertTrue(
                Pattern.compile("steps of \\d+ of\\s+heading-bug never reached the host")
                        .matcher(report)
                        .find(),
                report);
        assertTrue(!replay("").contains("never reached the host"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "Two panels show the same|duplicate-address 'oil board' as 'turbine board'|oil board",
                "One board replies with garbage|driver-released-early 'oil board' by 80us rate 50%|oil board",
            })
    void whatIsWrongNamesTheBoard(String symptom, String fault, String board) {
        String report = replay(fault);
        int wrong = report.indexOf("What is wrong");

        assertTrue(wrong >= 0 && report.indexOf(board, wrong) > wrong, symptom + "\n" + report);
    }
}
