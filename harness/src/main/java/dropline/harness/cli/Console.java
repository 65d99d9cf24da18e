package dropline.harness.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Where a command writes: results to {@code out}, everything else to {@code err}. Lines end in {@code \n} everywhere.
 *
 * @param out results
 * @param raw standard output as bytes, for documents that are UTF-8 whatever the terminal speaks
 * @param err progress, problems, log
 * @param terminal whether a person watches {@code err}
 * @param colour whether colour may be used
 */
record Console(PrintWriter out, OutputStream raw, PrintWriter err, boolean terminal, boolean colour) {

    /** The process's own streams. */
    @SuppressWarnings("SystemConsoleNull") // the property set here brings the older behaviour back
    static Console ofProcess() {
        // From JDK 22 on there would be a console object even where nobody watches.
        System.setProperty("jdk.console", "java.base");
        OutputStream raw = new FileOutputStream(FileDescriptor.out);
        boolean terminal = System.console() != null;
        PrintWriter out = new PrintWriter(writer(raw, "stdout"), false);
        PrintWriter err = new PrintWriter(writer(new FileOutputStream(FileDescriptor.err), "stderr"), true);
        return new Console(out, raw, err, terminal, mayUseColour(System.getenv(), terminal));
    }

    /** One that nobody hears. */
    static Console unheard() {
        PrintWriter nobody = new PrintWriter(Writer.nullWriter());
        return new Console(nobody, OutputStream.nullOutputStream(), nobody, false, false);
    }

    /**
     * Whether colour is wanted: on a terminal, unless NO_COLOR is set to anything (no-color.org) or it is a dumb one.
     */
    static boolean mayUseColour(Map<String, String> environment, boolean terminal) {
        String noColour = environment.getOrDefault("NO_COLOR", "");
        return terminal && noColour.isEmpty() && !"dumb".equals(environment.get("TERM"));
    }

    void flush() {
        out.flush();
        err.flush();
    }

    private static Writer writer(OutputStream stream, String name) {
        return new OutputStreamWriter(stream, charset(name));
    }

    /** JDK 19 and newer name a stream's charset one way, JDK 17 another; without either, UTF-8. */
    private static Charset charset(String stream) {
        Charset newer = named(System.getProperty(stream + ".encoding"));
        if (newer != null) {
            return newer;
        }
        Charset older = named(System.getProperty("sun." + stream + ".encoding"));
        return older != null ? older : StandardCharsets.UTF_8;
    }

    private static @Nullable Charset named(@Nullable String name) {
        if (name == null || name.isEmpty()) {
            return null;
        }
        try {
            return Charset.forName(name);
        } catch (UnsupportedCharsetException unknown) {
            return null;
        }
    }
}
