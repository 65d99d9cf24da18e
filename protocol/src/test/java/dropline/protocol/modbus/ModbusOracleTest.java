package dropline.protocol.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.digitalpetri.modbus.Crc16;
import com.digitalpetri.modbus.ModbusPduSerializer.DefaultRequestSerializer;
import com.digitalpetri.modbus.ModbusPduSerializer.DefaultResponseSerializer;
import com.digitalpetri.modbus.pdu.ModbusRequestPdu;
import com.digitalpetri.modbus.pdu.ModbusResponsePdu;
import com.digitalpetri.modbus.pdu.ReadCoilsRequest;
import com.digitalpetri.modbus.pdu.ReadCoilsResponse;
import com.digitalpetri.modbus.pdu.ReadDiscreteInputsRequest;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersResponse;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadWriteMultipleRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadWriteMultipleRegistersResponse;
import com.digitalpetri.modbus.pdu.WriteMultipleCoilsRequest;
import com.digitalpetri.modbus.pdu.WriteMultipleCoilsResponse;
import com.digitalpetri.modbus.pdu.WriteMultipleRegistersRequest;
import com.digitalpetri.modbus.pdu.WriteMultipleRegistersResponse;
import com.digitalpetri.modbus.pdu.WriteSingleCoilRequest;
import com.digitalpetri.modbus.pdu.WriteSingleRegisterRequest;
import dropline.protocol.Bytes;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Agreement, byte for byte, with the library com.digitalpetri.modbus. */
final class ModbusOracleTest {
    private static final long SEED = 23;
    private static final int ROUNDS = 200;

    @Test
    void requestsAreTheLibrarys() throws Exception {
        Random random = new Random(SEED);
        for (int round = 0; round < ROUNDS; round++) {
            int start = random.nextInt(60_000);
            int other = random.nextInt(60_000);
            int bits = 1 + random.nextInt(1968);
            int registers = 1 + random.nextInt(121);
            List<Integer> values = values(random, registers);
            Bytes packed = packed(random, (bits + 7) / 8);
            boolean on = random.nextBoolean();

            agree(new ReadCoilsRequest(start, bits), new ModbusRequest.ReadBits(1, start, bits));
            agree(new ReadDiscreteInputsRequest(start, bits), new ModbusRequest.ReadBits(2, start, bits));
            agree(
                    new ReadHoldingRegistersRequest(start, registers),
                    new ModbusRequest.ReadRegisters(3, start, registers));
            agree(
                    new ReadInputRegistersRequest(start, registers),
                    new ModbusRequest.ReadRegisters(4, start, registers));
            agree(new WriteSingleCoilRequest(start, on), new ModbusRequest.WriteBit(start, on));
            agree(new WriteSingleRegisterRequest(start, other), new ModbusRequest.WriteRegister(start, other));
            agree(
                    new WriteMultipleCoilsRequest(start, bits, packed.toArray()),
                    new ModbusRequest.WriteBits(start, bits, packed));
            agree(
                    new WriteMultipleRegistersRequest(start, registers, big(values)),
                    new ModbusRequest.WriteRegisters(start, values));
            agree(
                    new ReadWriteMultipleRegistersRequest(other, registers, start, registers, big(values)),
                    new ModbusRequest.ExchangeRegisters(other, registers, start, values));
        }
    }

    @Test
    void responsesAreTheLibrarys() throws Exception {
        Random random = new Random(SEED + 1);
        for (int round = 0; round < ROUNDS; round++) {
            int start = random.nextInt(60_000);
            List<Integer> values = values(random, 1 + random.nextInt(125));
            Bytes packed = packed(random, 1 + random.nextInt(250));
            int quantity = 1 + random.nextInt(123);

            agree(new ReadCoilsResponse(packed.toArray()), new ModbusResponse.Bits(1, packed));
            agree(new ReadHoldingRegistersResponse(big(values)), new ModbusResponse.Registers(3, values));
            agree(new ReadWriteMultipleRegistersResponse(big(values)), new ModbusResponse.Registers(23, values));
            agree(
                    new WriteMultipleCoilsResponse(start, quantity),
                    new ModbusResponse.RangeWritten(15, start, quantity));
            agree(
                    new WriteMultipleRegistersResponse(start, quantity),
                    new ModbusResponse.RangeWritten(16, start, quantity));
        }
    }

    @Test
    void checksAreTheLibrarys() {
        Random random = new Random(SEED + 2);
        for (int round = 0; round < ROUNDS; round++) {
            byte[] bytes = packed(random, random.nextInt(254)).toArray();
            Crc16 library = new Crc16();
            library.update(ByteBuffer.wrap(bytes));

            assertEquals(library.getValue(), Adu.check(bytes, bytes.length), "seed " + (SEED + 2) + " round " + round);
        }
    }

    private static void agree(ModbusRequestPdu library, ModbusRequest ours) throws Exception {
        ByteBuffer buffer = ByteBuffer.allocate(260);
        DefaultRequestSerializer.INSTANCE.encode(library, buffer);
        assertArrayEquals(
                Arrays.copyOf(buffer.array(), buffer.position()), ours.pdu().toArray(), ours::toString);
    }

    private static void agree(ModbusResponsePdu library, ModbusResponse ours) throws Exception {
        ByteBuffer buffer = ByteBuffer.allocate(260);
        DefaultResponseSerializer.INSTANCE.encode(library, buffer);
        assertArrayEquals(
                Arrays.copyOf(buffer.array(), buffer.position()), ours.pdu().toArray(), ours::toString);
    }

    private static List<Integer> values(Random random, int count) {
        List<Integer> values = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            values.add(random.nextInt(65_536));
        }
        return values;
    }

    private static Bytes packed(Random random, int length) {
        byte[] bytes = new byte[length];
        random.nextBytes(bytes);
        return Bytes.copyOf(bytes, 0, length);
    }

    private static byte[] big(List<Integer> values) {
        ByteBuffer buffer = ByteBuffer.allocate(2 * values.size());
        values.forEach(value -> buffer.putShort(value.shortValue()));
        return buffer.array();
    }
}
