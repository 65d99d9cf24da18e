/**
 * Modbus RTU. Start from {@link dropline.protocol.modbus.ModbusRtu} and {@link dropline.protocol.modbus.ModbusDecoder}.
 * Follows "MODBUS over serial line V1.02" and "MODBUS application protocol V1.1b3"; measures no time itself.
 */
@NullMarked
package dropline.protocol.modbus;

import org.jspecify.annotations.NullMarked;
