package dropline.bus.copper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published tables of stubs and lengths. */
final class LengthRulesTest {

    /**
     * TI SN65HVD10/11/12 (JAJSND7P) table 10-1; SN65HVD3x table 9-1; SN65HVD7x (JAJSH84G) table 5; one way, no halving.
     */
    @ParameterizedTest
    @CsvSource({
        "3e-9, 0.07, 0.005",
        "10e-9, 0.23, 0.005",
        "100e-9, 2.34, 0.005",
        "4e-9, 0.1, 0.05",
        "25e-9, 0.6, 0.05",
        "120e-9, 2.8, 0.05",
        "2e-9, 0.05, 0.005"
    })
    void stubIsATenthOfTheEdge(double edge, double metres, double rounding) {
        assertEquals(metres, StubRule.TENTH_OF_EDGE.metres(edge), rounding);
    }

    @Test
    void rulesForTheSameStubDifferAndAreKeptApart() {
        // CiA 301 V4.2.0 via the ECSS glossary: 50 ns, a third of 5 m; TI's rule for the same edge: 1.17 m
        assertEquals(1.67, StubRule.CAN_OPEN.metres(50e-9), 0.005);
        assertEquals(1.17, StubRule.TENTH_OF_EDGE.metres(50e-9), 0.005);
        // MODBUS over serial line V1.02, 3.4.3
        assertEquals(20, StubRule.MODBUS.metres(50e-9));
        assertEquals(10, StubRule.modbusTapMetres(4));
    }

    @ParameterizedTest
    @CsvSource({"100000, 1000", "10000000, 10", "9600, 1200", "500000, 200"})
    void lengthTimesRateIsGuidance(int baud, double metres) {
        // embedcalc RS-485 tool: 10^8 and at most 1200 m, hence 1000 m at 100 kbit/s; a manual of Teltonika's has 1200
        assertEquals(metres, TrunkRule.LENGTH_TIMES_RATE.metres(baud));
    }

    @Test
    void modbusGivesALengthUpToNineThousandSixHundredBaudOnly() {
        // MODBUS over serial line V1.02, 3.4.3
        assertEquals(1000, TrunkRule.MODBUS.metres(9600));
        assertTrue(Double.isNaN(TrunkRule.MODBUS.metres(19200)));
    }
}
