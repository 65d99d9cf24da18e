package dropline.bus.avr.device;

import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.core.Cpu;
import java.util.Arrays;

/**
 * LEDs with a controller each (Worldsemi, WS2812B: "Data transfer time"): a bit is a pulse, short for a zero (0.4 us)
 * and long for a one (0.8 us); a line that stays low for 50 us makes them show what they were sent.
 */
final class AddressableLeds {
    private static final double ONE_FROM_SECONDS = 0.6e-6;
    private static final double SHOWN_AFTER_SECONDS = 50e-6;
    private static final int MOST_BITS = 24 * 1024;

    private final Device.Seen seen;
    private final Cpu cpu;
    private final int alarm;
    private final long oneFromCycles;
    private final long shownAfterCycles;
    private final byte[] sent = new byte[MOST_BITS];
    private byte[] shown = {};
    private int count;
    private long roseAt;

    AddressableLeds(Pin pin, Microcontroller chip, Device.Seen seen) {
        this.seen = seen;
        cpu = chip.cpu();
        alarm = cpu.add(this::over);
        oneFromCycles = (long) Math.ceil(ONE_FROM_SECONDS * chip.hz());
        shownAfterCycles = (long) Math.ceil(SHOWN_AFTER_SECONDS * chip.hz());
        chip.port(pin.port()).watch((levels, changed, cycle) -> {
            if ((changed & 1 << pin.bit()) != 0) {
                turned((levels & 1 << pin.bit()) != 0, cycle);
            }
        });
    }

    private void turned(boolean isHigh, long cycle) {
        if (isHigh) {
            roseAt = cycle;
            cpu.due(alarm, Long.MAX_VALUE);
        } else {
            if (count < MOST_BITS) {
                sent[count++] = (byte) (cycle - roseAt >= oneFromCycles ? 1 : 0);
            }
            cpu.due(alarm, cycle + shownAfterCycles);
        }
    }

    private void over(long cycle) {
        cpu.due(alarm, Long.MAX_VALUE);
        byte[] now = Arrays.copyOf(sent, count);
        count = 0;
        // those behind the last one that was sent something keep what they show
        if (now.length > shown.length || !Arrays.equals(now, 0, now.length, shown, 0, now.length)) {
            byte[] all = Arrays.copyOf(shown, Math.max(shown.length, now.length));
            System.arraycopy(now, 0, all, 0, now.length);
            shown = all;
            seen.changed(0, cycle);
        }
    }
}
