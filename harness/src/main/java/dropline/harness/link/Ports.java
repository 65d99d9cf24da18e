package dropline.harness.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The serial ports that are plugged in. Opens none of them. */
public final class Ports {
    private Ports() {}

    /**
     * One port, and what tells it from others; a text is empty where the system says nothing.
     *
     * @param name as one opens it: {@code COM7}, {@code /dev/ttyUSB0}
     * @param description what the system calls it
     * @param usb the maker's and the product's number, as {@code 1a86:7523}
     * @param serial the adapter's serial number
     * @param location where it is plugged in: the same socket is the same location
     */
    public record Port(
            String name, String description, String usb, String manufacturer, String serial, String location) {}

    /** All of them, by name. */
    public static List<Port> all() {
        List<Port> ports = new ArrayList<>();
        for (SerialPort port : SerialPort.getCommPorts()) {
            boolean isUsb = port.getVendorID() > 0 && port.getProductID() > 0;
            ports.add(new Port(
                    port.getSystemPortPath().startsWith("/") ? port.getSystemPortPath() : port.getSystemPortName(),
                    known(port.getPortDescription()),
                    isUsb
                            ? String.format(java.util.Locale.ROOT, "%04x:%04x", port.getVendorID(), port.getProductID())
                            : "",
                    known(port.getManufacturer()),
                    known(port.getSerialNumber()),
                    known(port.getPortLocation())));
        }
        ports.sort(Comparator.comparing(Port::name));
        return ports;
    }

    private static String known(String said) {
        return said == null || said.startsWith("Unknown") || said.equals("0-0") ? "" : said;
    }
}
