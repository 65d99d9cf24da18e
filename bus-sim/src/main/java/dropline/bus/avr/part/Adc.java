package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;
import java.util.function.IntUnaryOperator;

/**
 * The converter of analog inputs (DS40002061, "Analog-to-Digital Converter"), started by the program or running freely.
 */
public final class Adc implements Registers, Served {
    private static final int ADCL = 0x78;
    private static final int ADCSRA = 0x7A;
    private static final int ADCSRB = 0x7B;
    private static final int ADMUX = 0x7C;
    private static final int ADEN = 0x80;
    private static final int ADSC = 0x40;
    private static final int ADATE = 0x20;
    private static final int ADIF = 0x10;
    private static final int ADIE = 0x08;
    private static final int ADLAR = 0x20;
    private static final int FIRST = 25;
    private static final int OTHERS = 13;

    private final Cpu cpu;
    private final int vector;
    private final int alarm;
    private IntUnaryOperator inputs = channel -> 0;
    private int control;
    private int more;
    private int mux;
    private int value;
    private boolean isFirst;

    public Adc(Cpu cpu, int vector) {
        this.cpu = cpu;
        this.vector = vector;
        alarm = cpu.add(this::converted);
        cpu.claim(this, ADCL, ADCL + 1, ADCSRA, ADCSRB, ADMUX);
        cpu.own(vector, this);
    }

    /** What stands at a channel, 0..1023. */
    public void inputs(IntUnaryOperator atChannel) {
        inputs = atChannel;
    }

    public void reset() {
        control = 0;
        more = 0;
        mux = 0;
        value = 0;
        cpu.due(alarm, Long.MAX_VALUE);
    }

    private void begin(long cycle) {
        int divisor = Math.max(2, 1 << (control & 7));
        cpu.due(alarm, cycle + (long) divisor * (isFirst ? FIRST : OTHERS));
        isFirst = false;
    }

    private void converted(long cycle) {
        int channel = mux & 31 | (more & 8) << 2;
        value = inputs.applyAsInt(channel) & 0x3FF;
        control |= ADIF;
        if ((control & ADATE) != 0) {
            begin(cycle);
        } else {
            control &= ~ADSC;
        }
        ask();
    }

    private void ask() {
        cpu.request(vector, (control & ADIE) != 0 && (control & ADIF) != 0);
    }

    @Override
    public void served(int ofVector) {
        control &= ~ADIF;
        ask();
    }

    @Override
    public int read(int address, long cycle) {
        int placed = (mux & ADLAR) != 0 ? value << 6 : value;
        return switch (address) {
            case ADCL -> placed & 0xFF;
            case ADCL + 1 -> placed >> 8;
            case ADCSRA -> control;
            case ADCSRB -> more;
            default -> mux;
        };
    }

    @Override
    public void write(int address, int written, long cycle) {
        cpu.acted();
        switch (address) {
            case ADCSRA -> control(written, cycle);
            case ADCSRB -> more = written;
            case ADMUX -> mux = written;
            default -> {
                // the result is read only
            }
        }
    }

    private void control(int written, long cycle) {
        if ((written & ADATE) != 0 && (more & 7) != 0) {
            throw cpu.stop("conversions that something else starts (ADTS in ADCSRB) are not modelled");
        }
        boolean isRunning = (control & ADSC) != 0;
        isFirst |= (control & ADEN) == 0;
        control = written & ~(ADIF | ADSC) | control & ADIF & ~written;
        if ((written & ADEN) == 0) {
            cpu.due(alarm, Long.MAX_VALUE);
        } else if (isRunning || (written & ADSC) != 0) {
            control |= ADSC;
            if (!isRunning) {
                begin(cycle);
            }
        }
        ask();
    }
}
