package dropline.bus.avr.part;

import org.jspecify.annotations.Nullable;

/** The pins of a timer's outputs, and what they are doing (COMnx, FOCnx). */
final class Outputs {
    private final @Nullable Port[] ports;
    private final int[] bits;
    private final int[] levels;

    Outputs(int channels) {
        ports = new Port[channels];
        bits = new int[channels];
        levels = new int[channels];
    }

    void connect(int channel, Port port, int bit) {
        ports[channel] = port;
        bits[channel] = bit;
    }

    private static int action(int channel, int controlA, TimerMode mode) {
        int action = controlA >> 6 - 2 * channel & 3;
        return action == 1 && mode.isPwm() && (channel != 0 || !mode.togglesA()) ? 0 : action;
    }

    boolean isAny(int controlA) {
        return (controlA & 0xFC) != 0;
    }

    void choose(int controlA, TimerMode mode, long cycle) {
        for (int channel = 0; channel < levels.length; channel++) {
            show(channel, action(channel, controlA, mode) != 0, cycle);
        }
    }

    private void show(int channel, boolean isOn, long cycle) {
        Port port = ports[channel];
        if (port != null && isOn) {
            port.takeOutput(bits[channel], levels[channel], cycle);
        } else if (port != null) {
            port.giveBack(bits[channel], cycle);
        }
    }

    void matched(int channel, int controlA, TimerMode mode, boolean isUp, long cycle) {
        int action = action(channel, controlA, mode);
        if (action != 0) {
            int level = action == 1 ? levels[channel] ^ 1 : action == 3 == isUp ? 1 : 0;
            levels[channel] = level;
            show(channel, true, cycle);
        }
    }

    void bottom(int controlA, TimerMode mode, long cycle) {
        for (int channel = 0; mode.isPwm() && !mode.isDual() && channel < levels.length; channel++) {
            int action = action(channel, controlA, mode);
            if (action > 1) {
                levels[channel] = action == 2 ? 1 : 0;
                show(channel, true, cycle);
            }
        }
    }

    void force(int value, int controlA, TimerMode mode, long cycle) {
        for (int channel = 0; !mode.isPwm() && channel < levels.length; channel++) {
            if ((value >> 7 - channel & 1) != 0) {
                matched(channel, controlA, mode, true, cycle);
            }
        }
    }
}
