package dropline.bus.avr.core;

/** Where the program goes next: jumps, calls, branches and skips; and loops that only wait, which are passed over. */
abstract class Flow extends DataSpace {
    final Shape shape;
    final int mask;
    final Repetition repetition = new Repetition();
    Watchdog watchdog = Watchdog.NONE;
    int pc;
    /** The address of the instruction under way. */
    int begun;
    /** The cycle at which something else than the next instruction may have its turn. */
    long stopAt;
    /** The next instruction comes before any interrupt. */
    boolean isHeld;

    private long skipped;
    private boolean skips = true;

    Flow(Shape shape, Flash flash) {
        super(flash, shape.ramStart(), shape.ramEnd());
        if (flash.size() != shape.flashWords()) {
            throw new IllegalArgumentException("flash must fit the chip: words=" + flash.size());
        }
        this.shape = shape;
        mask = flash.size() - 1;
    }

    /** Whether loops that change nothing may be passed over; nothing else may differ by it. */
    public final void skipLoops(boolean isAllowed) {
        skips = isAllowed;
    }

    /** Cycles that were passed over because nothing changed in them. */
    public final long skippedCycles() {
        return skipped;
    }

    /** The status register is set at a cycle. */
    abstract void status(int value, long cycle);

    final void flow(int op, int bit, int target) {
        int calls = shape.wideCounter() ? 1 : 0;
        switch (op) {
            case Op.RJMP -> jump(target, 2);
            case Op.JMP -> jump(target, 3);
            case Op.RCALL -> call(pc, target, 3 + calls);
            case Op.CALL -> call(pc + 1, target, 4 + calls);
            case Op.RET -> back(4 + calls);
            case Op.RETI -> {
                back(4 + calls);
                status(sreg | I, cycles);
                isHeld = true;
                stopAt = 0;
            }
            case Op.IJMP -> jump(pair(30), 2);
            case Op.ICALL -> call(pc, pair(30), 3 + calls);
            case Op.EIJMP -> jump(pair(30) | eind << 16, 2);
            case Op.EICALL -> call(pc, pair(30) | eind << 16, 4);
            case Op.BRBS -> branch((sreg & bit) != 0, target);
            default -> branch((sreg & bit) == 0, target);
        }
    }

    private void branch(boolean isTaken, int target) {
        if (isTaken) {
            jump(target, 2);
        } else {
            cycles++;
        }
    }

    private void jump(int target, int count) {
        cycles += count;
        pc = target & mask;
        if (pc <= begun && skips && repetition.isAt(this, pc)) {
            long round = repetition.round(cycles);
            long same = Math.max(0, (stopAt - 1 - cycles) / round) * round;
            watchdog.passedOver(cycles - round, same);
            cycles += same;
            skipped += same;
            repetition.goesOn(cycles);
        }
    }

    private void call(int from, int target, int count) {
        cycles += count;
        pushAddress(from & mask);
        pc = target & mask;
    }

    private void back(int count) {
        cycles += count;
        int high = shape.wideCounter() ? pop() << 16 : 0;
        int middle = pop() << 8;
        pc = (high | middle | pop()) & mask;
    }

    final void pushAddress(int address) {
        push(address);
        push(address >> 8);
        if (shape.wideCounter()) {
            push(address >> 16);
        }
    }

    final void skip(boolean isSkipped, int target) {
        if (isSkipped) {
            cycles += target - begun - 1 & mask;
            pc = target;
        }
    }
}
