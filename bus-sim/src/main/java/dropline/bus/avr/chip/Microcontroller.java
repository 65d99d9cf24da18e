package dropline.bus.avr.chip;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Flash;
import dropline.bus.avr.part.Adc;
import dropline.bus.avr.part.Control;
import dropline.bus.avr.part.Eeprom;
import dropline.bus.avr.part.ExternalInterrupts;
import dropline.bus.avr.part.PinChanges;
import dropline.bus.avr.part.Plain;
import dropline.bus.avr.part.Port;
import dropline.bus.avr.part.SelfProgramming;
import dropline.bus.avr.part.Settled;
import dropline.bus.avr.part.Spi;
import dropline.bus.avr.part.Twi;
import dropline.bus.avr.part.Usart;
import dropline.bus.avr.part.WatchdogTimer;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** One chip with its parts, for one run. Power comes when it is made; {@link #reset} begins its program. */
public final class Microcontroller {
    /** Who wants to know what a program writes to a general-purpose register. */
    @FunctionalInterface
    public interface Noted {
        void written(int value, long cycle);
    }

    /** Why it was reset: bits of MCUSR. */
    public static final int POWER_ON = 1;

    public static final int EXTERNAL = 2;
    public static final int BROWN_OUT = 4;
    public static final int WATCHDOG = 8;

    /** Low, lock, extended, high: as boards with an external 16 MHz crystal leave the factory. */
    private static final int[] FUSES = {0xFF, 0xFF, 0xFD, 0xDE};

    /** GPIOR0 to GPIOR2. */
    private static final int[] GENERAL = {0x3E, 0x4A, 0x4B};

    private final Chip chip;
    private final long hz;
    private final int beginsAtWord;
    private final Cpu cpu;
    private final Flash flash;
    private final Map<Character, Port> ports = new TreeMap<>();
    private final Map<Integer, Usart> usarts = new TreeMap<>();
    private final Eeprom eeprom;
    private final Adc adc;
    private final Spi spi;
    private final Twi twi;
    private final Plain general;
    private final Resets resets;
    private long bites;
    private long firstBite = -1;
    private int firstBiteAt;

    /**
     * @param hz cycles a second
     * @param flash its program
     * @param beginsAtByte where the program begins after a reset: 0, or the boot section where the fuse says so
     */
    public Microcontroller(Chip chip, long hz, Flash flash, int beginsAtByte) {
        this.chip = chip;
        this.hz = hz;
        this.flash = flash;
        beginsAtWord = beginsAtByte / 2;
        cpu = new Cpu(chip.shape(), flash, address -> Names.wrong(chip, address));
        for (char letter : chip.ports().toCharArray()) {
            ports.put(letter, new Port(cpu, Chip.portBase(letter)));
        }
        Vectors vectors = Vectors.of(chip);
        WatchdogTimer watchdog = new WatchdogTimer(cpu, hz, vectors.watchdog(), this::bitten);
        Control control = new Control(cpu, watchdog);
        Timers timers = new Timers(cpu, chip, ports);
        PinChanges pinChanges = pinChanges(vectors);
        ExternalInterrupts external = external();
        for (int number : chip.usarts()) {
            usarts.put(number, usart(number, vectors));
        }
        eeprom = new Eeprom(cpu, hz, chip.eepromBytes(), vectors.eeprom());
        adc = new Adc(cpu, vectors.adc());
        spi = new Spi(cpu, vectors.spi());
        twi = new Twi(cpu, vectors.twi());
        SelfProgramming programming = new SelfProgramming(cpu, flash, hz, chip.pageWords, chip.signature(), FUSES);
        general = new Plain(cpu, GENERAL);
        Plain kept = new Plain(cpu, Names.kept(chip));
        for (int address : Names.settled(chip)) {
            new Settled(cpu, address, Names.of(address));
        }
        resets = cause -> {
            control.reset(cause);
            watchdog.reset(cause == WATCHDOG);
            timers.reset();
            pinChanges.reset();
            external.reset();
            programming.reset();
            general.reset();
            kept.reset();
        };
    }

    /** What else begins anew. */
    @FunctionalInterface
    private interface Resets {
        void reset(int cause);
    }

    private Usart usart(int number, Vectors vectors) {
        int base = number == 3 ? 0x130 : 0xC0 + 8 * number;
        char letter =
                switch (number) {
                    case 0 -> chip.kind == Chip.Kind.LARGE ? 'E' : 'D';
                    case 1 -> 'D';
                    case 2 -> 'H';
                    default -> 'J';
                };
        return new Usart(cpu, base, vectors.usart(number), port(letter), number == 1 ? 3 : 1);
    }

    private PinChanges pinChanges(Vectors vectors) {
        switch (chip.kind) {
            case SMALL -> {
                PinChanges made = new PinChanges(cpu, vectors.pinChange(), 3);
                made.connect(port('B'), 0xFF, 0, 0);
                made.connect(port('C'), 0x7F, 1, 0);
                made.connect(port('D'), 0xFF, 2, 0);
                return made;
            }
            case LARGE -> {
                PinChanges made = new PinChanges(cpu, vectors.pinChange(), 3);
                made.connect(port('B'), 0xFF, 0, 0);
                made.connect(port('E'), 0x01, 1, 0);
                made.connect(port('J'), 0x7F, 1, 1);
                made.connect(port('K'), 0xFF, 2, 0);
                return made;
            }
            default -> {
                PinChanges made = new PinChanges(cpu, vectors.pinChange(), 1);
                made.connect(port('B'), 0xFF, 0, 0);
                return made;
            }
        }
    }

    private ExternalInterrupts external() {
        ExternalInterrupts made = new ExternalInterrupts(cpu, 1, chip.kind != Chip.Kind.SMALL);
        int first = chip.kind == Chip.Kind.SMALL ? 2 : 0;
        for (int number = 0; number < (chip.kind == Chip.Kind.SMALL ? 2 : 4); number++) {
            made.connect(number, port('D'), first + number);
        }
        for (int number = 4; chip.kind == Chip.Kind.LARGE && number < 8; number++) {
            made.connect(number, port('E'), number);
        }
        if (chip.kind == Chip.Kind.USB) {
            made.connect(6, port('E'), 6);
        }
        return made;
    }

    private void bitten() {
        if (bites++ == 0) {
            firstBite = cpu.cycles();
            firstBiteAt = cpu.byteAddress();
        }
        reset(WATCHDOG);
    }

    /** Its program begins anew. */
    public void reset(int cause) {
        cpu.reset(beginsAtWord);
        ports.values().forEach(port -> port.reset(cpu.cycles()));
        usarts.values().forEach(Usart::reset);
        eeprom.reset();
        adc.reset();
        spi.reset();
        twi.reset();
        resets.reset(cause);
    }

    /** How often its watchdog has reset it. */
    public long bites() {
        return bites;
    }

    /** When it did so first, in cycles since power came; -1 for never. */
    public long firstBite() {
        return firstBite;
    }

    /** Where the program was then, in bytes. */
    public int firstBiteAt() {
        return firstBiteAt;
    }

    public Chip chip() {
        return chip;
    }

    /** Cycles a second. */
    public long hz() {
        return hz;
    }

    public Cpu cpu() {
        return cpu;
    }

    /** Its program. */
    public Flash flash() {
        return flash;
    }

    /** A port by its letter. */
    public Port port(char letter) {
        Port port = ports.get(letter);
        if (port == null) {
            throw new IllegalArgumentException(chip.word() + " has ports " + chip.ports() + ": port=" + letter);
        }
        return port;
    }

    /** A USART by its number. */
    public Usart usart(int number) {
        Usart usart = usarts.get(number);
        if (usart == null) {
            throw new IllegalArgumentException(
                    chip.word() + " has USARTs " + List.copyOf(usarts.keySet()) + ": usart=" + number);
        }
        return usart;
    }

    /** Tells of all that is written to a general-purpose register, by its number. */
    public void note(int register, Noted noted) {
        general.watch((address, value, cycle) -> {
            if (address == GENERAL[register]) {
                noted.written(value, cycle);
            }
        });
    }

    public Eeprom eeprom() {
        return eeprom;
    }

    public Adc adc() {
        return adc;
    }

    public Spi spi() {
        return spi;
    }

    public Twi twi() {
        return twi;
    }
}
