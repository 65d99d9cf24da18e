package dropline.harness.suite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problem;
import dropline.harness.problem.ProblemChapter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SuiteFileTest {
    private static final Path FOLDER = ProblemChapter.docs().resolve("problems/suite");

    @Test
    void aHealthyRunIsHeldToBudgetsAndOneWithFaultsIsNot() throws IOException {
        Suite suite = understood("""
                suite: Lamps
                pit: pit.yaml
                runs:
                  healthy: {recording: flight.csv}
                  silent: {recording: flight.csv, faults: ["dead-node 'alarm board' at 1s for 1s"]}
                """);

        assertEquals("Lamps", suite.name());
        assertEquals(
                new Holds(true, true, Within.ANY, Within.ANY_TIME),
                suite.runs().get(0).holds());
        assertEquals(List.of(1L), suite.runs().get(0).seeds());
        assertEquals(
                new Holds(false, true, Within.ANY, Within.ANY_TIME),
                suite.runs().get(1).holds());
        assertEquals(
                1, suite.runs().get(1).turns(suite.pit().pit()).get(0).faults().size());
    }

    @Test
    void whatARunDoesNotSayOfItsHoldsTheSuiteDoes() throws IOException {
        Suite suite = understood("""
                suite: Lamps
                pit: pit.yaml
                holds: {budgets: yes, cycle: 50 ms}
                runs:
                  silent: {recording: flight.csv, faults: "dead-node 'alarm board'", holds: {controls: no}}
                  slower: {recording: flight.csv, from: 1 s, to: 2m, seeds: 7, holds: {cycle: 80 ms}}
                """);

        assertEquals(
                new Holds(true, false, 50_000_000L, Within.ANY_TIME),
                suite.runs().get(0).holds());
        assertEquals(
                new Holds(true, true, 80_000_000L, Within.ANY_TIME),
                suite.runs().get(1).holds());
        assertEquals(List.of(7L), suite.runs().get(1).seeds());
    }

    @Test
    void aWrongFaultIsAProblemOfTheSuiteWhereItStands() throws IOException {
        List<Problem> problems = wrong("""
                suite: Lamps
                pit: pit.yaml
                runs:
                  silent:
                    recording: flight.csv
                    to: 3 s
                    faults:
                      - dead-node 'alarm bord'
                      - dead-node 'alarm board' at 4s
                """);

        assertEquals(
                List.of("suite.yaml:8:9 faults UNKNOWN_NAME", "suite.yaml:9:9 faults, at AFTER_END"),
                problems.stream()
                        .map(problem -> problem.where() + " " + problem.key() + " " + problem.code())
                        .toList());
    }

    @Test
    void theProblemsOfSuitePitAndRecordingAreToldInOneGo(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("pit.yaml"), "pit: Nothing\nsegmints: {}\n");
        Path suite = Files.writeString(folder.resolve("suite.yaml"), """
                suite: Lamps
                pit: pit.yaml
                holds: {budgits: no}
                runs: {flight: {recording: nowhere.csv}}
                """);

        List<String> files = assertInstanceOf(SuiteFile.Wrong.class, SuiteFile.read(suite)).problems().stream()
                .map(problem -> Path.of(problem.file()).getFileName() + " " + problem.code())
                .distinct()
                .toList();

        assertEquals(
                List.of("pit.yaml UNKNOWN_KEY", "suite.yaml UNKNOWN_KEY", "suite.yaml NO_SUCH_FILE"),
                files.stream().filter(line -> !line.contains("MISSING_KEY")).toList());
    }

    @Test
    void aRecordingThatIsNoneIsAProblemOfItsOwn(@TempDir Path folder) throws IOException {
        Files.copy(FOLDER.resolve("pit.yaml"), folder.resolve("pit.yaml"));
        Files.writeString(folder.resolve("flight.csv"), "");
        Path suite = Files.writeString(
                folder.resolve("suite.yaml"), "suite: a\npit: pit.yaml\nruns: {flight: {recording: flight.csv}}\n");

        List<Problem> problems =
                assertInstanceOf(SuiteFile.Wrong.class, SuiteFile.read(suite)).problems();

        assertEquals(1, problems.size(), problems::toString);
        assertEquals("flight.csv", Path.of(problems.get(0).file()).getFileName().toString());
    }

    @Test
    void aPitGivenAsASuiteAndASuiteGivenAsAPitAreToldInOneProblem() throws IOException {
        List<Problem> pit = wrong(Files.readString(FOLDER.resolve("pit.yaml")));
        PitFile.Wrong suite = assertInstanceOf(
                PitFile.Wrong.class,
                PitFile.parse("suite.yaml", "suite: a\npit: pit.yaml\nruns: {flight: {recording: flight.csv}}\n"));

        assertEquals(
                List.of("dropline describe reads it"),
                pit.stream().map(problem -> String.valueOf(problem.fix())).toList());
        assertEquals(
                List.of("dropline check reads it"),
                suite.problems().stream()
                        .map(problem -> String.valueOf(problem.fix()))
                        .toList());
    }

    private static Suite understood(String text) throws IOException {
        SuiteFile.Result result = SuiteFile.parse("suite.yaml", FOLDER.resolve("suite.yaml"), text);
        return assertInstanceOf(SuiteFile.Understood.class, result, result::toString)
                .suite();
    }

    private static List<Problem> wrong(String text) throws IOException {
        SuiteFile.Result result = SuiteFile.parse("suite.yaml", FOLDER.resolve("suite.yaml"), text);
        return assertInstanceOf(SuiteFile.Wrong.class, result, result::toString).problems();
    }
}
