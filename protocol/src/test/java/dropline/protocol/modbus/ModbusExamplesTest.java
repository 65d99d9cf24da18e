package dropline.protocol.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.protocol.Bytes;
import dropline.protocol.modbus.ModbusFrame.Request;
import dropline.protocol.modbus.ModbusFrame.Response;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The examples of the MODBUS application protocol V1.1b3, section 6, at address 1 and with their checks. Each is
 * written and read back, both ways.
 */
final class ModbusExamplesTest {

    /** Section 6.1: request and response happen to be of one length. */
    @Test
    void function1ReadsCoils() {
        exchange(
                new ModbusRequest.ReadBits(1, 0x13, 0x13),
                "01 01 00 13 00 13 8C 02",
                new ModbusResponse.Bits(1, Bytes.ofHex("CD 6B 05")),
                "01 01 03 CD 6B 05 42 82");
    }

    /** Section 6.2. */
    @Test
    void function2ReadsDiscreteInputs() {
        exchange(
                new ModbusRequest.ReadBits(2, 0xC4, 0x16),
                "01 02 00 C4 00 16 B8 39",
                new ModbusResponse.Bits(2, Bytes.ofHex("AC DB 35")),
                "01 02 03 AC DB 35 22 88");
    }

    /** Section 6.3. */
    @Test
    void function3ReadsHoldingRegisters() {
        exchange(
                new ModbusRequest.ReadRegisters(3, 0x6B, 3),
                "01 03 00 6B 00 03 74 17",
                new ModbusResponse.Registers(3, List.of(0x022B, 0, 0x64)),
                "01 03 06 02 2B 00 00 00 64 05 7A");
        assertEquals(
                Bytes.ofHex("11 03 00 6B 00 03 76 87"),
                new Request(0x11, new ModbusRequest.ReadRegisters(3, 0x6B, 3)).encode());
    }

    /** Section 6.4, from memory. */
    @Test
    void function4ReadsInputRegisters() {
        exchange(
                new ModbusRequest.ReadRegisters(4, 8, 1),
                "01 04 00 08 00 01 B0 08",
                new ModbusResponse.Registers(4, List.of(10)),
                "01 04 02 00 0A 39 37");
    }

    /** Section 6.5, from memory. */
    @Test
    void function5WritesOneCoil() {
        exchange(
                new ModbusRequest.WriteBit(0xAC, true),
                "01 05 00 AC FF 00 4C 1B",
                new ModbusResponse.BitWritten(0xAC, true),
                "01 05 00 AC FF 00 4C 1B");
    }

    /** Section 6.6, from memory. */
    @Test
    void function6WritesOneRegister() {
        exchange(
                new ModbusRequest.WriteRegister(1, 3),
                "01 06 00 01 00 03 98 0B",
                new ModbusResponse.RegisterWritten(1, 3),
                "01 06 00 01 00 03 98 0B");
    }

    /** Section 6.11. */
    @Test
    void function15WritesCoils() {
        exchange(
                new ModbusRequest.WriteBits(0x13, 10, Bytes.ofHex("CD 01")),
                "01 0F 00 13 00 0A 02 CD 01 72 CB",
                new ModbusResponse.RangeWritten(15, 0x13, 10),
                "01 0F 00 13 00 0A 24 09");
    }

    /** Section 6.12. */
    @Test
    void function16WritesRegisters() {
        exchange(
                new ModbusRequest.WriteRegisters(1, List.of(0x000A, 0x0102)),
                "01 10 00 01 00 02 04 00 0A 01 02 92 30",
                new ModbusResponse.RangeWritten(16, 1, 2),
                "01 10 00 01 00 02 10 08");
    }

    /** Section 6.17. */
    @Test
    void function23WritesAndReadsRegisters() {
        exchange(
                new ModbusRequest.ExchangeRegisters(3, 6, 14, List.of(0xFF, 0xFF, 0xFF)),
                "01 17 00 03 00 06 00 0E 00 03 06 00 FF 00 FF 00 FF 46 91",
                new ModbusResponse.Registers(23, List.of(0x00FE, 0x0ACD, 1, 3, 13, 0xFF)),
                "01 17 0C 00 FE 0A CD 00 01 00 03 00 0D 00 FF 1D 79");
    }

    /** Section 7. */
    @Test
    void anExceptionHasTheTopBitOfItsFunctionSet() {
        Response refusal = new Response(1, new ModbusResponse.Refusal(3, 2));

        assertEquals(Bytes.ofHex("01 83 02 C0 F1"), refusal.encode());
        assertEquals(Heard.complete(refusal, refusal.encode()), Heard.response(refusal.encode()));
    }

    /** Widely published; all from memory but the last, which a tutorial site shows. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "01 03 00 00 00 0A C5 CD",
                "01 03 00 00 00 01 84 0A",
                "11 03 06 AE 41 56 52 43 40 49 AD",
                "11 01 03 CD 6B 05 40 12",
                "11 01 05 CD 6B B2 0E 1B 45 E6"
            })
    void publishedFramesEndInTheirCheck(String pairs) {
        Bytes frame = Bytes.ofHex(pairs);

        assertEquals(0, Adu.check(frame.toArray(), frame.length()));
        assertEquals(frame, Adu.wrap(frame.at(0), Bytes.copyOf(frame.toArray(), 1, frame.length() - 3)));
    }

    /** MODBUS over serial line V1.02, section 6.2.2: register 0x1241 travels as 41 12. */
    @Test
    void theCheckTravelsLowByteFirst() {
        assertEquals(Bytes.ofHex("02 07 41 12"), Adu.wrap(2, Bytes.of(7)));
    }

    private static void exchange(
            ModbusRequest request, String requestPairs, ModbusResponse response, String responsePairs) {
        Bytes requestBytes = Bytes.ofHex(requestPairs);
        Bytes responseBytes = Bytes.ofHex(responsePairs);
        Request asked = new Request(1, request);
        Response answered = new Response(1, response);

        assertEquals(requestBytes, asked.encode());
        assertEquals(responseBytes, answered.encode());
        assertEquals(Heard.complete(asked, requestBytes), Heard.request(requestBytes));
        assertEquals(Heard.complete(answered, responseBytes), Heard.response(responseBytes));
        assertEquals(responseBytes.length(), request.responseLength());
        assertEquals(request.function(), response.function());
    }
}
