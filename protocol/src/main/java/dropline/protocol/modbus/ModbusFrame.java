package dropline.protocol.modbus;

import dropline.protocol.Bytes;

/** A whole frame: an address, what is said, a check (MODBUS over serial line V1.02, section 2.5.1). */
public sealed interface ModbusFrame {

    /** The longest frame, address and check included. */
    int LONGEST = 256;

    /** The highest address of a node; 0 is all of them, 248..255 are reserved. */
    int HIGHEST_ADDRESS = 247;

    /** The node addressed or answering; 0 for all nodes. */
    int address();

    /**
     * From the controller.
     *
     * @param address 0..247; 0 only for requests that read nothing
     */
    record Request(int address, ModbusRequest request) implements ModbusFrame {
        public Request {
            Pdu.requireRange(request.mayBroadcast() ? 0 : 1, HIGHEST_ADDRESS, address, "address");
        }

        /** The bytes on the wire. */
        public Bytes encode() {
            return Adu.wrap(address, request.pdu());
        }
    }

    /**
     * From a node.
     *
     * @param address 1..247
     */
    record Response(int address, ModbusResponse response) implements ModbusFrame {
        public Response {
            Pdu.requireRange(1, HIGHEST_ADDRESS, address, "address");
        }

        /** The bytes on the wire. */
        public Bytes encode() {
            return Adu.wrap(address, response.pdu());
        }
    }

    /**
     * A request that arrived sound and asks for what no node may do: the node addressed answers with an exception.
     *
     * @param address 1..247
     * @param function 1..127
     * @param code the exception code to answer with
     */
    record Unacceptable(int address, int function, int code) implements ModbusFrame {
        public Unacceptable {
            Pdu.requireRange(1, HIGHEST_ADDRESS, address, "address");
            Pdu.requireRange(1, 127, function, "function");
        }

        /** What the node answers. */
        public Response answer() {
            return new Response(address, new ModbusResponse.Refusal(function, code));
        }
    }
}
