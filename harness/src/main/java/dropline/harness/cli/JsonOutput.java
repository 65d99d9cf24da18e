package dropline.harness.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The option that has a result written as one JSON document too, or instead of its text. */
final class JsonOutput {
    @Option(
            names = "--json",
            paramLabel = "FILE|-",
            description = "Write everything as one JSON document; '-' writes it, and nothing else, to standard output.")
    private @Nullable String json;

    /** Writes the document. */
    @FunctionalInterface
    interface Document {
        void write(Writer out) throws IOException;
    }

    boolean isAsked() {
        return json != null;
    }

    /** Where the document goes; null for nowhere, or to standard output. */
    @Nullable
    Path file() {
        return json == null || json.equals("-") ? null : Path.of(json);
    }

    /** Writes the document where it was asked for, and the text unless the document took its place. */
    void write(Console console, Document document, String text) throws IOException {
        writeFile(document);
        if ("-".equals(json)) {
            console.raw().write(textOf(document).getBytes(StandardCharsets.UTF_8));
            console.raw().flush();
        } else {
            console.out().print(Colours.painted(text, console.colour()));
            console.out().flush();
        }
    }

    /** Writes the document into its file, if it was asked for. */
    void writeFile(Document document) throws IOException {
        Path file = file();
        if (file != null) {
            OutputFiles.write(file, textOf(document));
        }
    }

    private static String textOf(Document document) throws IOException {
        StringWriter text = new StringWriter();
        document.write(text);
        return text.toString();
    }
}
