package dropline.bus.avr.chip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import dropline.bus.avr.core.Flash;
import dropline.bus.avr.core.Poke;
import dropline.bus.avr.core.StoppedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Where registers and vectors are, against Debian's avr-libc 2.0.0, whose headers are made from the chips' own files.
 */
final class HeadersTest {
    private static final Path FOLDER = Path.of("/usr/lib/avr/include/avr");
    private static final Pattern REGISTER =
            Pattern.compile("#\\s*define\\s+(\\w+)\\s+_SFR_(IO|MEM)(8|16)\\s*\\((0[xX][0-9A-Fa-f]+)\\)");
    private static final Pattern VECTOR = Pattern.compile("#\\s*define\\s+(\\w+)_vect_num\\s+(\\d+)");
    private static final Pattern OLD_VECTOR = Pattern.compile("#\\s*define\\s+(\\w+)_vect\\s+_VECTOR\\((\\d+)\\)");

    /** RAMPZ and EIND, the stack pointer and SREG stand in a header of their own. */
    private static final int FIRST_OF_ALL = 0x5B;

    private static final int LAST_OF_ALL = 0x5F;

    /** The 32U4's header has the flags of a timer 5 that the chip does not have. */
    private static final int TIFR5 = 0x3A;

    private static String header(Chip chip) throws IOException {
        String name =
                switch (chip) {
                    case ATMEGA2560, ATMEGA1280 -> "iomxx0_1.h";
                    default -> "iom" + chip.word().substring("atmega".length()) + ".h";
                };
        if (!Files.exists(FOLDER.resolve(name))) {
            if ("required".equals(System.getProperty("dropline.peers"))) {
                fail("avr-libc is not installed");
            }
            abort("avr-libc is not installed, so nobody independent checks these tables here");
        }
        return Files.readString(FOLDER.resolve(name), StandardCharsets.ISO_8859_1);
    }

    private static TreeSet<Integer> addresses(String header) {
        TreeSet<Integer> addresses = new TreeSet<>();
        Matcher matcher = REGISTER.matcher(header);
        while (matcher.find()) {
            int address = Integer.decode(matcher.group(4)) + (matcher.group(2).equals("IO") ? 0x20 : 0);
            addresses.add(address);
            if (matcher.group(3).equals("16")) {
                addresses.add(address + 1);
            }
        }
        return addresses;
    }

    private static String read(Microcontroller chip, int address) {
        try {
            return "" + Poke.read(chip.cpu(), address);
        } catch (StoppedException stopped) {
            return String.valueOf(stopped.getMessage());
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyRegisterIsModelledOrRefusedByItsNameAndNothingElseIs(Chip chip) throws IOException {
        TreeSet<Integer> known = addresses(header(chip));
        if (chip.kind == Chip.Kind.USB) {
            known.remove(TIFR5);
        }
        Microcontroller board =
                new Microcontroller(chip, 16_000_000, new Flash(chip.shape().flashWords()), 0);

        for (int address = 0x20; address < chip.ramStart(); address++) {
            String found = read(board, address);
            boolean isRegister = !found.contains("has no register");
            if (address >= FIRST_OF_ALL && address <= LAST_OF_ALL) {
                continue;
            }
            if (known.contains(address)) {
                assertTrue(isRegister, String.format("0x%X of %s: %s", address, chip, found));
            } else {
                boolean isModelled = found.matches("\\d+");
                assertFalse(isModelled, String.format("0x%X of %s is modelled and is none", address, chip));
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theVectorsAreTheirs(Chip chip) throws IOException {
        Map<String, Integer> named = new TreeMap<>();
        for (Pattern pattern : List.of(VECTOR, OLD_VECTOR)) {
            Matcher matcher = pattern.matcher(header(chip));
            while (matcher.find()) {
                named.putIfAbsent(matcher.group(1), Integer.parseInt(matcher.group(2)));
            }
        }
        Vectors vectors = Vectors.of(chip);

        assertEquals(named.get("WDT"), vectors.watchdog());
        assertEquals(named.get("PCINT0"), vectors.pinChange());
        assertEquals(named.get("SPI_STC"), vectors.spi());
        assertEquals(named.get("ADC"), vectors.adc());
        assertEquals(named.get("EE_READY"), vectors.eeprom());
        assertEquals(named.get("TWI"), vectors.twi());
        for (int number : chip.usarts()) {
            String name = chip.kind == Chip.Kind.SMALL ? "USART" : "USART" + number;
            assertEquals(named.get(name + "_RX"), vectors.usart(number), name);
            assertEquals(vectors.usart(number) + 1, named.get(name + "_UDRE"), name);
            assertEquals(vectors.usart(number) + 2, named.get(name + "_TX"), name);
        }
        int[] timers = Timers.vectors(chip);
        for (int number = 0; number < timers.length; number++) {
            int channels = chip.kind == Chip.Kind.SMALL || number == 0 || number == 2 ? 2 : 3;
            Integer capture = named.get("TIMER" + number + "_CAPT");
            Integer first = capture == null ? named.getOrDefault("TIMER" + number + "_COMPA", 0) : capture;
            assertEquals(first, timers[number], "timer " + number);
            if (timers[number] > 0) {
                int overflow = timers[number] + channels + (capture == null ? 0 : 1);
                assertEquals(named.get("TIMER" + number + "_OVF"), overflow, "timer " + number);
            }
        }
    }
}
