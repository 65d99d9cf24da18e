package dropline.protocol.crc;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Checks by name. Names and parameters follow the RevEng catalogue of parametrised CRC algorithms; aliases in common
 * use are understood, ambiguous ones are refused.
 */
public final class CrcCatalogue {
    /** The check of Modbus RTU (MODBUS over serial line V1.02, section 2.5.1.2), sent low byte first. */
    public static final CrcParameters CRC_16_MODBUS = crc("CRC-16/MODBUS", 16, 0x8005, 0xFFFF, true, 0x0000);

    /** Sent high byte first; the check of Dropline frames. */
    public static final CrcParameters CRC_16_IBM_3740 = crc("CRC-16/IBM-3740", 16, 0x1021, 0xFFFF, false, 0x0000);

    /** Starts at zero, so it cannot see zero bytes lost or added at the beginning. */
    public static final CrcParameters CRC_16_XMODEM = crc("CRC-16/XMODEM", 16, 0x1021, 0x0000, false, 0x0000);

    public static final CrcParameters CRC_16_KERMIT = crc("CRC-16/KERMIT", 16, 0x1021, 0x0000, true, 0x0000);
    public static final CrcParameters CRC_16_IBM_SDLC = crc("CRC-16/IBM-SDLC", 16, 0x1021, 0xFFFF, true, 0xFFFF);
    public static final CrcParameters CRC_16_ARC = crc("CRC-16/ARC", 16, 0x8005, 0x0000, true, 0x0000);
    public static final CrcParameters CRC_8_SMBUS = crc("CRC-8/SMBUS", 8, 0x07, 0x00, false, 0x00);
    public static final CrcParameters CRC_8_MAXIM_DOW = crc("CRC-8/MAXIM-DOW", 8, 0x31, 0x00, true, 0x00);

    /** The check of Ethernet and zip files. */
    public static final CrcParameters CRC_32_ISO_HDLC =
            crc("CRC-32/ISO-HDLC", 32, 0x04C1_1DB7L, 0xFFFF_FFFFL, true, 0xFFFF_FFFFL);

    private static final List<CrcParameters> CALLED_CCITT =
            List.of(CRC_16_KERMIT, CRC_16_IBM_3740, CRC_16_XMODEM, CRC_16_IBM_SDLC);

    private static final List<CrcParameters> ALL = List.of(
            CRC_16_MODBUS,
            CRC_16_IBM_3740,
            CRC_16_XMODEM,
            CRC_16_KERMIT,
            CRC_16_IBM_SDLC,
            CRC_16_ARC,
            CRC_8_SMBUS,
            CRC_8_MAXIM_DOW,
            CRC_32_ISO_HDLC);

    private CrcCatalogue() {}

    /** Every check, in the catalogue's order. */
    public static List<CrcParameters> all() {
        return ALL;
    }

    /**
     * The check of this name or alias, upper or lower case.
     *
     * @throws IllegalArgumentException for an unknown name, and for a name that different makers use for different
     *     checks (CRC-CCITT); the message lists the candidates
     */
    public static CrcParameters named(String name) {
        List<CrcParameters> meant = mayMean(name);
        if (meant.size() > 1) {
            throw new IllegalArgumentException(
                    "CRC name must be unambiguous: name=" + name + " may mean " + names(meant));
        }
        if (meant.isEmpty()) {
            throw new IllegalArgumentException("CRC name must be one of " + names(ALL) + ": name=" + name);
        }
        return meant.get(0);
    }

    /** The checks that are called this: one, none, or several where different makers mean different checks. */
    public static List<CrcParameters> mayMean(String name) {
        String key = name.strip().toUpperCase(Locale.ROOT);
        String wanted = unaliased(key);
        for (CrcParameters known : ALL) {
            if (known.name().equals(wanted)) {
                return List.of(known);
            }
        }
        return switch (key.replaceAll("[^A-Z0-9]", "")) {
            case "CCITT", "CRCCCITT", "CRC16CCITT", "CCITT16" -> CALLED_CCITT;
            case "CRC8" -> ofWidth(8);
            case "CRC16" -> ofWidth(16);
            case "CRC32" -> ofWidth(32);
            default -> List.of();
        };
    }

    private static List<CrcParameters> ofWidth(int width) {
        return ALL.stream().filter(known -> known.width() == width).toList();
    }

    private static String unaliased(String key) {
        return switch (key) {
            case "CRC-16/CCITT-FALSE", "CRC-16/AUTOSAR" -> "CRC-16/IBM-3740";
            case "CRC-16/CCITT-TRUE" -> "CRC-16/KERMIT";
            case "CRC-16/X-25" -> "CRC-16/IBM-SDLC";
            case "CRC-8/MAXIM" -> "CRC-8/MAXIM-DOW";
            default -> key;
        };
    }

    private static String names(List<CrcParameters> checks) {
        return checks.stream().map(CrcParameters::name).collect(Collectors.joining(", "));
    }

    private static CrcParameters crc(
            String name, int width, long polynomial, long initial, boolean reflect, long finalXor) {
        return new CrcParameters(name, width, polynomial, initial, reflect, reflect, finalXor);
    }
}
