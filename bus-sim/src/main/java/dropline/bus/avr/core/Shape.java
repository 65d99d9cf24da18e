package dropline.bus.avr.core;

/**
 * What processors of the family differ in.
 *
 * @param flashWords a power of two
 * @param ramStart first address of memory in the data space
 * @param ramEnd last address of memory
 * @param wideCounter whether the program counter has more than 16 bits: calls push three bytes
 * @param vectorWords words from one interrupt vector to the next: 1 or 2
 * @param responseCycles from an interrupt's acceptance to its vector's first instruction
 * @param wakeCycles that are added if it woke the processor up
 */
public record Shape(
        int flashWords,
        int ramStart,
        int ramEnd,
        boolean wideCounter,
        int vectorWords,
        int responseCycles,
        int wakeCycles) {}
