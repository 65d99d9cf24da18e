package dropline.harness.stream;

/** What can be wrong with a datagram file. */
enum DatagramCode {
    UNKNOWN_KEY,
    DUPLICATE_KEY,
    MISSING_KEY,
    UNUSED_KEY,
    WRONG_TYPE,
    OUT_OF_RANGE,
    UNKNOWN_NAME
}
