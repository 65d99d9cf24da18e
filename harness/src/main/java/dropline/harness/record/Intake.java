package dropline.harness.record;

import java.io.Closeable;
import java.util.OptionalLong;

/** A socket from which messages come. */
interface Intake extends Closeable {

    /** What one message is called: datagram, line. */
    String unit();

    /** The port it listens on; 0 if it listens on none. */
    int port();

    /** Messages that reached this machine and that the operating system dropped; empty where it does not say. */
    OptionalLong systemDrops();

    /** Messages that could not be passed on. */
    long notForwarded();

    /** Messages that were passed on. */
    long forwarded();

    /** Nothing arrives any more when this returns. */
    @Override
    void close();
}
