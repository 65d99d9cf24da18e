package dropline.bus.avr.device;

import dropline.bus.avr.part.Twi;

/**
 * Eight outputs at the two-wire bus, all high when power comes (NXP, PCF8574, rev 5: "Quasi-bidirectional I/Os"). A
 * byte is on them with its acknowledgement. Nothing pulls them down from outside.
 */
final class PortExpander implements Twi.Peer {
    private final int address;
    private final Device.Seen seen;
    private int outputs = 0xFF;

    PortExpander(int address, Device.Seen seen) {
        this.address = address;
        this.seen = seen;
    }

    @Override
    public boolean is(int asked) {
        return asked == address;
    }

    @Override
    public boolean written(int value, long cycle) {
        if (value != outputs) {
            outputs = value;
            seen.changed(value, cycle);
        }
        return true;
    }

    @Override
    public int read() {
        return outputs;
    }
}
