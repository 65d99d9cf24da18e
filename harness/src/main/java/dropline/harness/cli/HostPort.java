package dropline.harness.cli;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** An option's {@code HOST:PORT}; an IPv6 address stands in brackets. There is no usual host and no usual port. */
final class HostPort implements ITypeConverter<InetSocketAddress> {
    private static final int MOST = 65_535;

    @Override
    public InetSocketAddress convert(String text) {
        int colon = text.lastIndexOf(':');
        String host = colon < 0 ? "" : text.substring(0, colon);
        boolean bracketed = host.startsWith("[") && host.endsWith("]");
        boolean nude = host.indexOf(':') >= 0 && !bracketed;
        if (host.isEmpty() || nude) {
            throw new TypeConversionException("'" + text + "' is no HOST:PORT, as in 192.168.1.20:PORT"
                    + (nude ? "; an IPv6 address stands in brackets" : ""));
        }
        return new InetSocketAddress(
                address(bracketed ? host.substring(1, host.length() - 1) : host), port(text, colon));
    }

    private static InetAddress address(String host) {
        try {
            return InetAddress.getByName(host);
        } catch (UnknownHostException e) {
            throw new TypeConversionException("there is no computer called '" + host + "'; look at its spelling, or"
                    + " write its address in figures");
        }
    }

    private static int port(String text, int colon) {
        String port = text.substring(colon + 1);
        int number = port.matches("[0-9]{1,5}") ? Integer.parseInt(port) : 0;
        if (number < 1 || number > MOST) {
            throw new TypeConversionException(
                    "'" + port + "' is no port; it is a number 1.." + MOST + ", the one that the simulator sends to");
        }
        return number;
    }
}
