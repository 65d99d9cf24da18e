package dropline.harness.bench;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.board.Driver;
import dropline.bus.avr.chip.Image;
import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.StoppedException;
import dropline.bus.avr.part.Usart;
import dropline.bus.clock.UartClock;
import dropline.bus.fault.FaultKind;
import dropline.harness.verdict.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** What can be seen only inside an emulated board: its driver's edges, what it lost, its stack, where it lingers. */
public final class Inside {
    /**
     * So many characters come in while interrupts are off, and none is lost: two in the buffer, and the one that
     * follows waits in the shift register (DS40002061, "Data OverRun").
     */
    private static final int SAFE_CHARACTERS = 2;

    private static final int ROOM_BYTES = 32;

    /** MODBUS over serial line V1.02, section 3.2: a device must send with a rate better than this. */
    private static final double MOST_RATE_PERCENT = 1;

    /** The largest chip has 57 vectors of four bytes. */
    private static final int VECTORS_END = 57 * 4;

    /** The instruction JMP, and which of its bits make it one. */
    private static final int JMP = 0x940C;

    private static final int JMP_MASK = 0xFE0E;

    private static final int BUSIEST = 3;
    private static final double WORTH_NAMING = 0.01;

    private final Board board;
    private final Driver driver;
    private final Image image;

    public Inside(Counterpart counterpart, Image image) {
        board = counterpart.board();
        driver = counterpart.driver();
        this.image = image;
    }

    /** Adds what was seen while the board was examined. */
    void tell(Bench bench) {
        program(bench);
        rate(bench);
        driver(bench);
        overruns(bench);
        blackouts(bench);
        stack(bench);
    }

    private long nanos(long cycles) {
        return cycles < 0
                ? -UartClock.ticksToNanos(-cycles, board.chip().hz())
                : UartClock.ticksToNanos(cycles, board.chip().hz());
    }

    private void program(Bench bench) {
        StoppedException stop = board.stop();
        if (stop != null) {
            bench.item(
                    "program",
                    false,
                    "it stopped " + Words.time(nanos(stop.cycle())) + " after power came, in "
                            + image.place(stop.byteAddress()) + ": " + stop.getMessage(),
                    1,
                    FaultKind.DEAD_NODE);
            return;
        }
        long bites = board.chip().bites();
        bench.item(
                "program",
                bites == 0,
                bites == 0
                        ? "ran all the while; its watchdog did not bite" + busiest()
                        : "its watchdog bit " + bites + " times, first "
                                + Words.time(nanos(board.chip().firstBite())) + " after power came, in "
                                + image.place(board.chip().firstBiteAt()),
                1,
                FaultKind.RESET);
    }

    /** The functions that it is most often found in, where the file names them. */
    private String busiest() {
        List<Image.Function> functions = new ArrayList<>(image.functions());
        functions.removeIf(function -> function.size() == 0);
        functions.sort(Comparator.comparingDouble(function -> -share(function)));
        List<String> named = functions.stream()
                .limit(BUSIEST)
                .filter(function -> share(function) >= WORTH_NAMING)
                .map(function -> String.format(Locale.ROOT, "%s %.0f%%", function.name(), 100 * share(function)))
                .toList();
        return named.isEmpty() ? "" : "; most of its time it was in " + String.join(", ", named);
    }

    private double share(Image.Function function) {
        return board.samples().share(function.address(), function.address() + function.size());
    }

    private void rate(Bench bench) {
        Usart usart = board.usart();
        if (board.stop() != null) {
            bench.undecided("rate", "its program had stopped");
            return;
        }
        if (!usart.isTransmitting()) {
            bench.item("rate", false, "its USART's transmitter is off", 1, FaultKind.WRONG_BAUD, FaultKind.DEAD_NODE);
            return;
        }
        double baud = (double) board.chip().hz() / usart.bitCycles();
        double error = 100 * (baud / bench.segment().baud() - 1);
        boolean isAlike = usart.format().equals(bench.segment().format());
        bench.item(
                "rate",
                isAlike && Math.abs(error) <= MOST_RATE_PERCENT,
                String.format(
                        Locale.ROOT,
                        "sends at %.0f baud %s, %+.1f%% off the pair's %d %s; more than %.0f%% must not be",
                        baud,
                        usart.format(),
                        error,
                        bench.segment().baud(),
                        bench.segment().format(),
                        MOST_RATE_PERCENT),
                1,
                FaultKind.WRONG_BAUD,
                FaultKind.CLOCK_OFF);
    }

    private void driver(Bench bench) {
        if (driver.isAutomatic()) {
            bench.undecided(
                    "driver-edges", "no --driver-enable was given: the transceiver is taken to do it by itself");
            return;
        }
        if (driver.transmissions() == 0) {
            bench.item(
                    "driver-edges",
                    false,
                    driver.unsent() > 0
                            ? "it sent " + driver.unsent() + " characters with its driver off"
                            : "its driver was never turned on and anything sent",
                    1,
                    FaultKind.DRIVER_ENABLED_LATE,
                    FaultKind.DEAD_NODE);
            return;
        }
        long least = nanos(driver.leastTail());
        boolean isReleased = driver.mostTail() != Long.MIN_VALUE;
        boolean well = driver.unsent() == 0 && isReleased && least >= 0;
        String lead = "driver on at least " + Words.time(nanos(driver.leastLead())) + " before the first start bit";
        String tail = !isReleased
                ? "it was never turned off again"
                : least < 0
                        ? "off " + Words.time(-least) + " before the last stop bit had ended"
                        : "off " + Words.time(least) + " to " + Words.time(nanos(driver.mostTail()))
                                + " after the last stop bit";
        bench.item(
                "driver-edges",
                well,
                lead + ", " + tail
                        + (driver.unsent() > 0 ? "; " + driver.unsent() + " characters began while it was off" : ""),
                (int) driver.transmissions(),
                suspects(driver, isReleased));
    }

    private static FaultKind[] suspects(Driver driver, boolean isReleased) {
        List<FaultKind> suspects = new ArrayList<>();
        if (driver.unsent() > 0) {
            suspects.add(FaultKind.DRIVER_ENABLED_LATE);
        }
        if (!isReleased) {
            suspects.add(FaultKind.STUCK_DRIVER);
        } else if (driver.leastTail() < 0) {
            suspects.add(FaultKind.DRIVER_RELEASED_EARLY);
        }
        return suspects.toArray(new FaultKind[0]);
    }

    private void overruns(Bench bench) {
        int lost = board.usart().overruns();
        bench.item(
                "no-overrun",
                lost == 0,
                lost == 0
                        ? "its receiver lost no character; each was fetched within "
                                + Words.time(nanos(board.usart().longestWait())) + " of being there"
                        : "its receiver lost " + lost + " characters that nobody fetched in time, first "
                                + Words.time(nanos(board.usart().firstOverrun())) + " after power came",
                1,
                FaultKind.BLACKOUT,
                FaultKind.RING_OVERRUN);
    }

    private void blackouts(Bench bench) {
        Cpu cpu = board.chip().cpu();
        long limit = UartClock.exact(bench.segment().baud())
                .charsNanos(bench.segment().format(), SAFE_CHARACTERS);
        long longest = nanos(cpu.interruptsOff().longest());
        bench.timed(
                "interrupts-off",
                longest,
                limit,
                false,
                longest == 0
                        ? "interrupts were never off once they had been on"
                        : "interrupts were off for " + Words.time(longest) + " at most, from "
                                + place(cpu.interruptsOff().fromByteAddress()) + " on; two characters last "
                                + Words.time(limit),
                1,
                FaultKind.BLACKOUT);
    }

    /** A place in the program; of an interrupt's vector, where it jumps to. */
    private String place(int byteAddress) {
        boolean isVector = byteAddress < VECTORS_END && (board.chip().flash().word(byteAddress / 2) & JMP_MASK) == JMP;
        return image.place(isVector ? 2 * board.chip().flash().word(byteAddress / 2 + 1) : byteAddress);
    }

    private void stack(Bench bench) {
        int lowest = board.chip().cpu().lowestStack();
        int used = board.chip().chip().ramEnd() + 1 - lowest;
        int free = lowest - image.memoryEnd();
        if (image.memoryEnd() == 0) {
            bench.undecided(
                    "stack", "its stack took " + used + " bytes; where its variables end, only an ELF file says");
            return;
        }
        bench.item(
                "stack",
                free >= ROOM_BYTES,
                String.format(
                        Locale.ROOT,
                        "its stack took %d bytes and left %d above its variables; %d are little",
                        used,
                        free,
                        ROOM_BYTES),
                1,
                FaultKind.RESET);
    }
}
