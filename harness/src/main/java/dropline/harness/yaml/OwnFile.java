package dropline.harness.yaml;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** A YAML file of the program's own, beside the class that reads it. What is wrong with one is our fault. */
public final class OwnFile {
    private OwnFile() {}

    /** Reads the file of this name beside a class. */
    public static Map<?, ?> read(Class<?> beside, String name) {
        try (InputStream in = beside.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("a file of our own must lie beside its class: file=" + name);
            }
            return map(new Load(LoadSettings.builder().build()).loadFromInputStream(in), name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A group of keys. */
    public static Map<?, ?> map(@Nullable Object value, String what) {
        if (value instanceof Map<?, ?> map) {
            return map;
        }
        throw new IllegalStateException("there must be a group here: " + what);
    }

    /** A list. */
    public static List<?> list(@Nullable Object value, String what) {
        if (value instanceof List<?> list) {
            return list;
        }
        throw new IllegalStateException("there must be a list here: " + what);
    }

    /** A piece of text. */
    public static String text(@Nullable Object value, String what) {
        if (value instanceof String text) {
            return text;
        }
        throw new IllegalStateException("there must be a text here: " + what);
    }
}
