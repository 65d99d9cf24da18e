package dropline.harness.json;

import java.io.IOException;
import java.io.Writer;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.exc.JacksonIOException;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;

/** How every JSON document is written. */
final class Document {
    private static final JsonFactory FACTORY =
            JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();

    private Document() {}

    /** Writes one document and a line feed, and flushes; does not close. */
    static void write(Writer writer, Consumer<JsonGenerator> content) throws IOException {
        write(writer, ObjectWriteContext.empty(), content);
    }

    /** The same, indented for people. */
    static void writePretty(Writer writer, Consumer<JsonGenerator> content) throws IOException {
        DefaultIndenter indent = new DefaultIndenter("  ", "\n");
        PrettyPrinter printer =
                new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent);
        write(
                writer,
                new ObjectWriteContext.Base() {
                    @Override
                    public PrettyPrinter getPrettyPrinter() {
                        return printer;
                    }

                    @Override
                    public boolean hasPrettyPrinter() {
                        return true;
                    }
                },
                content);
    }

    private static void write(Writer writer, ObjectWriteContext context, Consumer<JsonGenerator> content)
            throws IOException {
        try (JsonGenerator json = FACTORY.createGenerator(context, writer)) {
            content.accept(json);
        } catch (JacksonIOException e) {
            throw new IOException("the JSON could not be written: " + e.getOriginalMessage(), e);
        }
        writer.write('\n');
        writer.flush();
    }
}
