package dropline.harness.recording;

import java.io.IOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** The lines of a file that holds one JSON object in each. */
final class JsonLines implements NamedLines {
    private final SourceStream source;
    private final LineProblems problems;
    private final TextLines text;
    private final JsonObject object;
    private final NamedLine line = new NamedLine();
    private final List<String> losses = new ArrayList<>();

    JsonLines(SourceStream source, Charset charset, ReadOptions options) {
        this.source = source;
        this.problems = new LineProblems(source.name());
        this.text = new TextLines(source, charset);
        this.object = new JsonObject(problems, options.timeUnit());
    }

    @Override
    public @Nullable NamedLine next() throws IOException {
        while (text.next()) {
            if (!text.isWhole() && source.cut()) {
                losses.add(RecordingProblems.cutLine(text.number()));
                return null;
            }
            if (!isBlank()) {
                line.clear(text.number());
                if (text.isTooLong()) {
                    line.problems.add(problems.lineTooLong(line.line));
                } else {
                    object.take(text.characters(), text.length(), line);
                }
                return line;
            }
        }
        return null;
    }

    private boolean isBlank() {
        int at = 0;
        while (at < text.length() && Character.isWhitespace(text.characters()[at])) {
            at++;
        }
        return at == text.length();
    }

    @Override
    public TimeUnit unit() {
        return object.unit();
    }

    @Override
    public List<String> losses() {
        return List.copyOf(losses);
    }
}
