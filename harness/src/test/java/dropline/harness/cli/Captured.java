package dropline.harness.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;

/** A command that was run, with all that it wrote. */
record Captured(int exitCode, String out, String raw, String err) {

    static Captured run(String... arguments) {
        return run(false, arguments);
    }

    /** @param terminal whether a person watches and types */
    static Captured run(boolean terminal, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        ByteArrayOutputStream raw = new ByteArrayOutputStream();
        Console console = new Console(new PrintWriter(out), raw, new PrintWriter(err), terminal, false);
        int code = CommandLines.run(console, arguments);
        console.flush();
        return new Captured(code, out.toString(), raw.toString(StandardCharsets.UTF_8), err.toString());
    }
}
