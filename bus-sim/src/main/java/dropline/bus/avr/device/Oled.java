package dropline.bus.avr.device;

import dropline.bus.avr.part.Twi;

/**
 * A display of 128 by 64 dots with its memory (Solomon Systech, SSD1306, rev 1.1: "I2C-bus Write data", "Command
 * table", "Graphic Display Data RAM"). It shows another picture once a transfer is over that has left its memory, its
 * being on, inverse, its contrast or its first line another than before.
 */
final class Oled implements Twi.Peer {
    private static final int COLUMNS = 128;
    private static final int PAGES = 8;
    private static final int MORE_FOLLOWS = 0x80;
    private static final int IS_DATA = 0x40;
    private static final int HORIZONTAL = 0;
    private static final int VERTICAL = 1;
    private static final int BY_PAGE = 2;

    private final int address;
    private final Device.Seen seen;
    private final byte[] memory = new byte[COLUMNS * PAGES];
    private final int[] arguments = new int[6];
    private boolean isChanged;
    private boolean isControlNext;
    private boolean isOneOnly;
    private boolean isData;
    private int command;
    private int awaited;
    private int given;
    private int mode = BY_PAGE;
    private int firstColumn;
    private int lastColumn = COLUMNS - 1;
    private int firstPage;
    private int lastPage = PAGES - 1;
    private int column;
    private int page;
    private int contrast = 0x7F;
    private int line;
    private int isOn;
    private int isInverse;

    Oled(int address, Device.Seen seen) {
        this.address = address;
        this.seen = seen;
    }

    @Override
    public boolean is(int asked) {
        return asked == address;
    }

    @Override
    public void begun() {
        isControlNext = true;
    }

    @Override
    public boolean written(int value, long cycle) {
        if (isControlNext) {
            isOneOnly = (value & MORE_FOLLOWS) != 0;
            isData = (value & IS_DATA) != 0;
            isControlNext = false;
            return true;
        }
        isControlNext = isOneOnly;
        if (isData) {
            put(value);
        } else if (awaited > 0) {
            arguments[given++] = value;
            if (--awaited == 0) {
                carryOut();
            }
        } else {
            command = value;
            given = 0;
            awaited = arguments(value);
            if (awaited == 0) {
                carryOut();
            }
        }
        return true;
    }

    @Override
    public int read() {
        return isOn == 0 ? 0x40 : 0;
    }

    @Override
    public void ended(long cycle) {
        if (isChanged) {
            isChanged = false;
            seen.changed(0, cycle);
        }
    }

    private static int arguments(int command) {
        return switch (command) {
            case 0x20, 0x81, 0x8D, 0xA8, 0xD3, 0xD5, 0xD9, 0xDA, 0xDB -> 1;
            case 0x21, 0x22, 0xA3 -> 2;
            case 0x29, 0x2A -> 5;
            case 0x26, 0x27 -> 6;
            default -> 0;
        };
    }

    private void carryOut() {
        switch (command) {
            case 0x20 -> mode = arguments[0] & 3;
            case 0x21 -> {
                firstColumn = arguments[0] & COLUMNS - 1;
                lastColumn = arguments[1] & COLUMNS - 1;
                column = firstColumn;
            }
            case 0x22 -> {
                firstPage = arguments[0] & PAGES - 1;
                lastPage = arguments[1] & PAGES - 1;
                page = firstPage;
            }
            case 0x81 -> contrast = becomes(contrast, arguments[0]);
            case 0xA6, 0xA7 -> isInverse = becomes(isInverse, command & 1);
            case 0xAE, 0xAF -> isOn = becomes(isOn, command & 1);
            default -> place();
        }
    }

    /** Commands that are a range of numbers. */
    private void place() {
        switch (command & 0xF0) {
            case 0x00 -> column = mode == BY_PAGE ? column & 0x70 | command & 0x0F : column;
            case 0x10 -> column = mode == BY_PAGE ? column & 0x0F | (command & 0x07) << 4 : column;
            case 0x40, 0x50, 0x60, 0x70 -> line = becomes(line, command & 0x3F);
            case 0xB0 -> page = mode == BY_PAGE ? command & 7 : page;
            default -> {}
        }
    }

    private int becomes(int before, int now) {
        isChanged |= before != now;
        return now;
    }

    private void put(int value) {
        int at = page * COLUMNS + column;
        isChanged |= (memory[at] & 0xFF) != value;
        memory[at] = (byte) value;
        if (mode == VERTICAL) {
            page = page == lastPage ? firstPage : page + 1 & PAGES - 1;
            column = page == firstPage ? nextColumn() : column;
        } else {
            boolean isLast = column == (mode == HORIZONTAL ? lastColumn : COLUMNS - 1);
            column = mode == HORIZONTAL ? nextColumn() : column + 1 & COLUMNS - 1;
            if (isLast && mode == HORIZONTAL) {
                page = page == lastPage ? firstPage : page + 1 & PAGES - 1;
            }
        }
    }

    private int nextColumn() {
        return column == lastColumn ? firstColumn : column + 1 & COLUMNS - 1;
    }
}
