package dropline.harness.describe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.pitfile.PitFile;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

final class DescribeTest {
    private static final String MODBUS = """
        hubs:
          centre: {adapter: none}
        signals:
          flaps: {unit: deg, range: 0..40, number: 10}
          unused: {range: 0..1, number: 11}
        segments:
          slow:
            baud: 115200 baud
            protocol: modbus-rtu
            controller: {hub: centre}
        nodes:
          levers: {segment: slow, address: 1, profile: 8-bit loop}
        panels:
          flaps:
            node: levers
            indicators:
              needle: {kind: servo, shows: flaps, speed: 20 deg/s}
        """;

    @Test
    void theReferenceBusIsDescribedByItsHandCalculation() {
        String text = describe("bus.yaml");

        // 29 x (8 x 20 + 100 + 8 x 20 + 50) us at least, 29 x 544 us on average
        assertTrue(text.contains("a character takes 20 us"), text);
        assertTrue(text.contains("A round of polls takes at least 13.63 ms, 15.776 ms on average"), text);
    }

    @Test
    void theReferenceBusWithStateSpendsItsShareOnState() {
        String text = describe("bus-with-state.yaml");

        // 4 x (46 x 20 + 50) us of every 25 ms; 15,776 us / (1 - 0.1552)
        assertTrue(
                text.contains("3.88 ms in 4 frames, 15.52 % of the time; the average round is then 18.674 ms."), text);
    }

    @Test
    void whatIsAllowedButOddIsNoted() {
        String text = Describe.table(assertInstanceOf(PitFile.Understood.class, PitFile.parse("modbus.yaml", MODBUS))
                .pit());

        // MODBUS over serial line V1.02, 2.5.1; ATmega640 data sheet, table 109 and the Arduino core: 115200 is 2.1 %
        // fast
        assertTrue(text.contains("Note: a Modbus RTU character has 11 bits"), text);
        assertTrue(text.contains("makes 115200 baud 2.12 % too fast"), text);
        assertTrue(text.contains("No panel shows unused.\n"), text);
    }

    @Test
    void whatSegmentsOfOneBoardShareIsSaid() {
        String two = MODBUS.replace("{adapter: none}", "{adapter: none, turn: 300 us}")
                .replace(
                        "nodes:",
                        "  other: {baud: 500 kbaud, controller: {hub: centre}}\nnodes:\n"
                                + "  more: {segment: other, address: 1, profile: 32-bit}");

        String text = Describe.table(assertInstanceOf(PitFile.Understood.class, PitFile.parse("two.yaml", two))
                .pit());

        assertTrue(text.contains("It shares board centre with segment other: one program"), text);
        assertTrue(text.contains("It shares board centre with segment slow: one program"), text);
        assertTrue(text.contains("The program takes 300 us before each frame it sends"), text);
        assertTrue(text.contains("Board centre polls (dropline"), text);
    }

    @Test
    void columnsLineUp() {
        Table table = new Table("name", "n");
        table.row("longer name", "1");

        assertEquals("name         n\n-----------  -\nlonger name  1\n", table.text());
    }

    @Test
    void figuresAreShort() {
        assertEquals("15.776 ms", Figures.time(15_776_000));
        assertEquals("86.806 us", Figures.time(86_806));
        assertEquals("0 ns", Figures.time(0));
        assertEquals("15.52 %", Figures.percent(0.1552));
        assertEquals("1 node", Figures.count(1, "node"));
    }

    private static String describe(String name) {
        Path file = Path.of("")
                .toAbsolutePath()
                .resolveSibling("scenarios")
                .resolve("reference")
                .resolve(name);
        return Describe.table(
                assertInstanceOf(PitFile.Understood.class, PitFile.read(file)).pit());
    }
}
