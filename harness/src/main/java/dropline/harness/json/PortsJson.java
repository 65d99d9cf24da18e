package dropline.harness.json;

import dropline.harness.link.Ports.Port;
import java.io.IOException;
import java.io.Writer;
import java.util.List;

/** The serial ports as one JSON document: an array with an object for each. */
public final class PortsJson {
    private PortsJson() {}

    /** Writes it and a line feed, and flushes; does not close. */
    public static void write(List<Port> ports, Writer writer) throws IOException {
        Document.write(writer, json -> {
            json.writeStartArray();
            for (Port port : ports) {
                json.writeStartObject();
                json.writeStringProperty("name", port.name());
                json.writeStringProperty("description", port.description());
                json.writeStringProperty("usb", port.usb());
                json.writeStringProperty("manufacturer", port.manufacturer());
                json.writeStringProperty("serial", port.serial());
                json.writeStringProperty("location", port.location());
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }
}
