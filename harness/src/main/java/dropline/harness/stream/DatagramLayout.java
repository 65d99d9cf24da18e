package dropline.harness.stream;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** How a binary datagram is laid out, as its file says. */
public final class DatagramLayout {
    private final String file;
    private final List<Part> parts;
    private final Map<String, String> names;

    DatagramLayout(String file, List<Part> parts, Map<String, String> names) {
        this.file = file;
        this.parts = List.copyOf(parts);
        this.names = Map.copyOf(names);
    }

    /**
     * Reads a datagram file.
     *
     * @throws DatagramException with all that is wrong with it
     */
    public static DatagramLayout read(Path file) throws IOException, DatagramException {
        String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        return parse(file.toString(), text);
    }

    static DatagramLayout parse(String file, String text) throws DatagramException {
        return DatagramReader.read(file, text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    /** As the person named it. */
    String file() {
        return file;
    }

    List<Part> parts() {
        return parts;
    }

    /** What the values of repeated groups are called: {@code 20.3} or {@code 20} to a name. */
    Map<String, String> names() {
        return names;
    }
}
