package dropline.protocol.custom;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether a node's address, signals and controls fit in the frames of a layout. */
final class Fit {
    private final Layout layout;
    private final List<String> problems = new ArrayList<>();

    Fit(Layout layout) {
        this.layout = layout;
    }

    List<String> problems() {
        return List.copyOf(problems);
    }

    void address(int address) {
        for (FrameLayout frame : layout.frames()) {
            Optional<Field.Address> field = frame.first(Field.Address.class);
            if (field.isEmpty() || frame.kind() == FrameLayout.Kind.STATE) {
                continue;
            }
            Field.Address in = field.get();
            holds(frame, in.name(), in.form(), in.plus(), address);
            if (layout.frame(FrameLayout.Kind.STATE).isPresent() && address == in.toAll()) {
                add("address " + address + " stands for all nodes in this layout");
            }
        }
    }

    /** @param numbers of what the frame may carry, ascending */
    void frame(FrameLayout frame, int count, int[] numbers) {
        Optional<Field.Items> field = frame.items();
        if (field.isEmpty()) {
            return;
        }
        Field.Items items = field.get();
        String what = frame.kind() == FrameLayout.Kind.REPLY ? "controls" : "signals";
        if (items.slots() > 0 && count > items.slots()) {
            add("a " + frame.kind().word() + " has slots for " + items.slots() + " " + what + ": " + what + "="
                    + count);
            return;
        }
        int room = items.slots() > 0 ? items.slots() : room(layout, frame);
        boolean picks = items.numbered() && frame.kind() != FrameLayout.Kind.REPLY;
        if (!picks && items.slots() == 0 && count > room) {
            add("a " + frame.kind().word() + " carries all " + what + " each time, and at most " + room + " fit in "
                    + layout.longest() + " characters and what its length can say: " + what + "=" + count);
        }
        if (picks && count > 0 && room < 1) {
            add("not one signal fits in a " + frame.kind().word() + " of at most " + layout.longest() + " characters");
        }
        items.each().stream()
                .filter(Field.ItemNumber.class::isInstance)
                .map(Field.ItemNumber.class::cast)
                .forEach(number -> {
                    if (numbers.length > 0) {
                        holds(frame, "number", number.form(), number.plus(), numbers[0]);
                        holds(frame, "number", number.form(), number.plus(), numbers[numbers.length - 1]);
                    }
                });
    }

    /** The most items that fit in a frame: by the longest frame, by what its length field can say, and by its limit. */
    static int room(Layout layout, FrameLayout frame) {
        Field.Items items = frame.items().orElseThrow();
        int room = (layout.longest() - layout.wrapping() - frame.fixedChars()) / items.eachChars();
        if (items.most() > 0) {
            room = Math.min(room, items.most());
        }
        for (int i = 0; i < frame.fields().size(); i++) {
            if (frame.fields().get(i) instanceof Field.Length length) {
                while (room > 0 && !length.form().holds(written(frame, i, length, room))) {
                    room--;
                }
            }
        }
        return room;
    }

    /** What a length field says of a frame with so many items. */
    static long written(FrameLayout frame, int index, Field.Length length, int items) {
        int payload = items * frame.items().map(Field.Items::eachChars).orElse(0);
        int after = frame.fields().subList(index + 1, frame.fields().size()).stream()
                .mapToInt(Field::chars)
                .sum();
        int rest = after + (frame.itemsIndex() > index ? payload : 0);
        return LengthCount.of(length, items, payload, rest, frame.chars(items)) + length.plus();
    }

    private void holds(FrameLayout frame, String what, NumberForm form, int plus, int value) {
        if (!form.holds((long) value + plus)) {
            String with = plus == 0 ? "" : " (with " + plus + " added)";
            add("the " + what + " of a " + frame.kind().word() + " is " + form + ", which does not hold " + value
                    + with);
        }
    }

    private void add(String problem) {
        if (!problems.contains(problem)) {
            problems.add(problem);
        }
    }
}
