package dropline.harness.cli;

import dropline.harness.json.SchemaJson;
import dropline.harness.layout.LayoutFile;
import dropline.harness.pitfile.PitForm;
import dropline.harness.suite.SuiteFile;
import dropline.harness.yaml.Form;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline schema}: the keys of a kind of file as a JSON Schema. */
@Command(
        name = "schema",
        header = "Print the keys of a kind of file as a JSON Schema, for editors.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        customSynopsis = "dropline schema pit|passport|suite|protocol [--write FILE]",
        descriptionHeading = "%n",
        description = {
            "Draft-07, from the same declarations of keys by which Dropline reads its files. An editor that knows",
            "JSON Schema completes keys by it and marks what is wrong while you write (docs/schema.md)."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline schema pit --write pit.schema.json",
            "  dropline schema suite",
            "",
            "Exit codes:  0 printed   2 there is no such kind   3 our own fault"
        })
final class SchemaCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "KIND", description = "pit, passport, suite or protocol.")
    private Kind kind = Kind.PIT;

    @Option(names = "--write", paramLabel = "FILE", description = "Write it to a file.")
    private @Nullable Path file;

    @Mixin
    final Debug debug = new Debug();

    SchemaCommand(Console console) {
        this.console = console;
    }

    /** A kind of file. */
    enum Kind {
        PIT,
        /** A part of a pit file. */
        PASSPORT,
        SUITE,
        PROTOCOL;

        Form.Keys keys() {
            return switch (this) {
                case PIT, PASSPORT -> PitForm.of();
                case SUITE -> SuiteFile.KEYS;
                case PROTOCOL -> LayoutFile.KEYS;
            };
        }

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    @Override
    public Integer call() throws IOException {
        StringWriter schema = new StringWriter();
        SchemaJson.write(kind.keys(), schema);
        if (file != null) {
            OutputFiles.write(file, schema.toString());
        } else {
            console.raw().write(schema.toString().getBytes(StandardCharsets.UTF_8));
            console.raw().flush();
        }
        return ExitCode.PASS;
    }
}
