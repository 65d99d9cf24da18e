package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dropline.harness.layout.LayoutFile;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.ProblemChapter;
import dropline.harness.suite.SuiteFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import tools.jackson.databind.ObjectMapper;

/**
 * Holds schemas, parsers and shipped files together, by a validator that nobody here wrote (networknt
 * json-schema-validator, draft-07). {@code -Ddropline.write-manual=true} writes the schemas of the manual anew.
 */
final class SchemaTest {
    private static final Path DOCS = ProblemChapter.docs();
    private static final Path SCENARIOS = DOCS.resolveSibling("scenarios");
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final SchemaRegistry REGISTRY = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_7);
    private static final Map<String, Schema> SCHEMAS =
            Map.of("pit", schema("pit"), "suite", schema("suite"), "protocol", schema("protocol"));

    @TempDir
    private Path folder;

    private static Schema schema(String kind) {
        return REGISTRY.getSchema(Captured.run("schema", kind).raw());
    }

    private static String json(String yaml) {
        return MAPPER.writeValueAsString(new Load(LoadSettings.builder().build()).loadFromString(yaml));
    }

    /** What the validator has against a file. */
    private static List<String> errors(String kind, String yaml) {
        return Objects.requireNonNull(SCHEMAS.get(kind)).validate(json(yaml), InputFormat.JSON).stream()
                .map(error -> error.getInstanceLocation() + " " + error.getMessage())
                .toList();
    }

    private static List<Path> files(String under, String pattern) throws IOException {
        try (Stream<Path> all = Files.walk(SCENARIOS.resolve(under))) {
            return all.filter(file -> file.getFileName().toString().matches(pattern))
                    .filter(file -> !file.toString().contains("target"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"pit", "suite", "protocol"})
    void aSchemaIsOneByTheRulesOfItsDraftAndStandsInTheManual(String kind) throws IOException {
        String printed = Captured.run("schema", kind).raw();
        Path page = DOCS.resolve("schema/" + kind + ".json");
        if (Boolean.getBoolean("dropline.write-manual")) {
            Files.writeString(page, printed);
        }
        Schema meta = REGISTRY.getSchema(SchemaLocation.of("http://json-schema.org/draft-07/schema#"));

        assertEquals(List.of(), meta.validate(printed, InputFormat.JSON));
        assertEquals(Files.readString(page), printed);
    }

    @Test
    void everyShippedFileIsValidAndNamesItsSchema() throws IOException {
        List<Path> pits = new ArrayList<>(files("demo", "pit\\.yaml"));
        pits.addAll(files("reference", ".*\\.yaml"));
        pits.addAll(files("layouts", "pit\\.yaml"));
        pits.addAll(files("cases", "(pit|before|boards|signals|wired|console)\\.yaml"));
        List<Path> suites = files("cases", "(before-)?suite\\.yaml");
        List<Path> layouts = files("layouts", "(counted|gaps|lines)\\.yaml");

        assertTrue(pits.size() >= 25 && suites.size() >= 22 && layouts.size() == 3);
        pits.forEach(file -> mustBeValid("pit", file));
        suites.forEach(file -> mustBeValid("suite", file));
        layouts.forEach(file -> mustBeValid("protocol", file));
    }

    private static void mustBeValid(String kind, Path file) {
        try {
            String text = Files.readString(file);
            assertEquals(List.of(), errors(kind, text), file::toString);
            String first = text.lines().findFirst().orElse("");
            String named = first.replaceFirst("^# yaml-language-server: \\$schema=", "");
            assertTrue(
                    Files.isSameFile(file.resolveSibling(named), DOCS.resolve("schema/" + kind + ".json")),
                    () -> file + " begins with " + first);
        } catch (IOException missing) {
            throw new AssertionError(file.toString(), missing);
        }
    }

    @Test
    void whatDroplineWritesIsValid() throws IOException {
        Captured.run("new", folder.resolve("a").toString());
        Path sheet = SCENARIOS.resolve("spreadsheet/panels.csv");
        Captured.run("new", folder.resolve("b").toString(), "--panels", sheet.toString());
        Path passport = folder.resolve("passport.yaml");
        Captured bench = Captured.run(
                "bench",
                "--pit",
                SCENARIOS.resolve("demo/pit.yaml").toString(),
                "--node",
                "oil-board",
                "--quick",
                "--passport",
                passport.toString());

        for (String made : List.of("a", "b")) {
            assertEquals(List.of(), errors("pit", Files.readString(folder.resolve(made + "/pit.yaml"))));
            assertEquals(List.of(), errors("suite", Files.readString(folder.resolve(made + "/suite.yaml"))));
        }
        assertTrue(Files.exists(passport), bench::toString);
        assertEquals(List.of(), errors("pit", Files.readString(passport)));
    }

    /** In a file that both take for right, each of these is wrong to both. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "baud: 250 kbaud|baud: 250",
                "baud: 250 kbaud|baud: 250 kHz",
                "baud: 250 kbaud|bawd: 250 kbaud",
                "time-out: 10 ms|time-out: 10",
                "time-out: 10 ms|time-out: soon",
                "retries: 1|retries: some",
                "retries: 1|retries: 99",
                "gap: 100 us|gap: 100 ohm",
                "refresh: 5 s|refresh: often",
                "kind: board, adapter: native USB|kind: bord, adapter: native USB",
                "range: 0..300|range: 300",
                "wraps: yes|wraps: maybe",
                "number: 7}|number: seven}",
                "number: 8}|numbr: 8}",
                "address: 4,|address: 248,",
                "resolution: 10,|resolution: fine,",
                "like: LED lamp, shows: gear nose|like: LED lamp, shows: {gear: nose}",
                "update: 150 ms|update: 150 mV",
                "state-rate: as recorded|state-rate: 25",
            })
    void aWrongPitFailsInBoth(String sound, String wrong) throws IOException {
        Captured.run("new", folder.resolve("a").toString());
        String text = Files.readString(folder.resolve("a/pit.yaml"));
        assertTrue(text.contains(sound), sound);
        String spoilt = text.replaceFirst(java.util.regex.Pattern.quote(sound), wrong);

        assertFalse(errors("pit", spoilt).isEmpty(), wrong);
        assertTrue(PitFile.parse("pit.yaml", spoilt) instanceof PitFile.Wrong, wrong);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "suite: An|sweet: An",
                "holds: {known: 500 ms, copper: yes}|holds: {known: 500, copper: yes}",
                "holds: {known: 500 ms, copper: yes}|holds: {known: 500 ms, copper: perhaps}",
                "holds: {known: 500 ms, copper: yes}|holds: {knwon: 500 ms, copper: yes}",
                "from: 200 s|from: noon",
                "to: 230 s|until: 230 s",
                "recovery: 3 s|recovery: 3",
            })
    void aWrongSuiteFailsInBoth(String sound, String wrong) throws IOException {
        Path file = SCENARIOS.resolve("cases/unplugged-panel/suite.yaml");
        String text = Files.readString(file);
        assertTrue(text.contains(sound), sound);
        String spoilt = text.replaceFirst(java.util.regex.Pattern.quote(sound), wrong);
        Path here = Files.writeString(folder.resolve("suite.yaml"), spoilt);

        assertFalse(errors("suite", spoilt).isEmpty(), wrong);
        assertTrue(SuiteFile.read(here) instanceof SuiteFile.Wrong, wrong);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "framing:|framming:",
                "of: |off: ",
                "over: |under: ",
                "frames:|frame:",
            })
    void aWrongProtocolFailsInBoth(String sound, String wrong) throws IOException {
        String text = Files.readString(SCENARIOS.resolve("layouts/counted.yaml"));
        assertTrue(text.contains(sound), sound);
        String spoilt = text.replaceFirst(java.util.regex.Pattern.quote(sound), wrong);

        assertFalse(errors("protocol", spoilt).isEmpty(), wrong);
        assertTrue(LayoutFile.parse("layout.yaml", spoilt) instanceof LayoutFile.Wrong, wrong);
    }
}
