package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.SAXException;

/** Our JUnit XML against the schema that Apache Maven Surefire publishes for its reports (version 3.0.2). */
final class PublishedJUnitSchemaTest {
    private static final Path SCHEMA = Path.of(
                    "target/published/surefire-3.5.4/maven-surefire-plugin/src/site/resources")
            .resolve("xsd/surefire-test-report.xsd");

    @TempDir
    private Path folder;

    private static void validate(String xml) throws SAXException, IOException {
        Schema published =
                SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI).newSchema(SCHEMA.toFile());
        published.newValidator().validate(new StreamSource(new StringReader(xml)));
    }

    @Test
    void whatACheckWritesIsValid() throws IOException {
        SmallPit.write(folder, "1 us");
        SmallPit.recording(folder);
        Path suite = Files.writeString(folder.resolve("suite.yaml"), """
                suite: "Odd <names> & \\"quotes\\" \\u0007"
                pit: pit.yaml
                live: {ask: {roll-call: bus, port: COM77}}
                runs:
                  tight: {recording: flight.csv}
                  idle: {recording: flight.csv, holds: {budgets: no}}
                """);
        Path junit = folder.resolve("check.xml");

        Captured run = Captured.run("check", suite.toString(), "--junit", junit.toString());

        assertTrue(run.exitCode() == 1 && Files.exists(junit), run::toString);
        String xml = Files.readString(junit);
        assertTrue(xml.contains("<failure ") && xml.contains("<skipped "), xml);
        assertDoesNotThrow(() -> validate(xml), xml);
        assertThrows(SAXException.class, () -> validate(xml.replace("<failure ", "<failing ")));
    }

    @Test
    void whatAnExaminationWritesIsValid() throws IOException {
        Path junit = folder.resolve("bench.xml");

        Captured run = Captured.run(
                "bench",
                "--pit",
                "../scenarios/demo/pit.yaml",
                "--node",
                "oil-board",
                "--quick",
                "--junit",
                junit.toString());

        assertTrue(Files.exists(junit), run::toString);
        assertDoesNotThrow(() -> validate(Files.readString(junit)));
    }
}
