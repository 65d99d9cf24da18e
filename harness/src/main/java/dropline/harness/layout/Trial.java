package dropline.harness.layout;

import dropline.protocol.custom.Custom;
import dropline.protocol.custom.CustomFrame;
import dropline.protocol.custom.CustomFrame.Item;
import dropline.protocol.custom.Field;
import dropline.protocol.custom.FrameLayout;
import dropline.protocol.custom.FrameLayout.Kind;
import dropline.protocol.custom.NumberForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a layout is tried with: every frame of it once. The same values are tried as signals and as controls; where a
 * frame cannot hold one, the nearest that it holds goes in its place.
 *
 * @param address of the node that is spoken to and replies
 * @param counter of the state frame
 * @param values of the signals or controls, numbered from 1
 */
public record Trial(int address, int counter, List<Long> values) {
    public Trial {
        values = List.copyOf(values);
    }

    /** One frame, with as many of the values as there is room for. */
    CustomFrame frame(Custom protocol, FrameLayout layout) {
        List<Item> items = new ArrayList<>();
        layout.items().ifPresent(some -> {
            for (long value : tried(protocol, layout)) {
                int number = some.numbered() ? items.size() + 1 : CustomFrame.NONE;
                items.add(new Item(
                        number, form(some).map(form -> nearest(form, value)).orElse(value)));
            }
        });
        return new CustomFrame(layout.kind(), layout.kind() == Kind.STATE ? 0 : address, counter, items);
    }

    /** Which values one frame cannot hold, and what goes in their place, a sentence each. */
    List<String> replaced(Custom protocol, FrameLayout layout) {
        Optional<NumberForm> form = layout.items().flatMap(Trial::form);
        if (form.isEmpty()) {
            return List.of();
        }
        return tried(protocol, layout).stream()
                .distinct()
                .filter(value -> !form.get().holds(value))
                .map(value -> doesNotFit("value " + value, form.get()) + "; " + nearest(form.get(), value)
                        + " goes in its place")
                .toList();
    }

    /** What of it fits in no frame of a protocol, one sentence a problem. */
    public List<String> misfits(Custom protocol) {
        List<FrameLayout> frames = protocol.layout().frames();
        List<String> misfits = new ArrayList<>();
        for (FrameLayout layout : frames) {
            for (Field field : layout.fields()) {
                if (field instanceof Field.Address in
                        && layout.kind() != Kind.STATE
                        && !in.form().holds((long) address + in.plus())) {
                    misfits.add(doesNotFit("address " + address, in.form()));
                }
            }
        }
        List<NumberForm> forms = frames.stream()
                .flatMap(layout -> layout.items().flatMap(Trial::form).stream())
                .toList();
        for (long value : values) {
            if (!forms.isEmpty() && forms.stream().noneMatch(form -> form.holds(value))) {
                forms.forEach(form -> misfits.add(doesNotFit("value " + value, form)));
            }
        }
        return misfits.stream().distinct().toList();
    }

    private List<Long> tried(Custom protocol, FrameLayout layout) {
        return values.subList(0, Math.min(protocol.room(layout.kind()), values.size()));
    }

    /** How a frame writes its values. */
    private static Optional<NumberForm> form(Field.Items items) {
        return items.each().stream()
                .flatMap(part -> part instanceof Field.Value value ? Stream.of(value.form()) : Stream.empty())
                .findFirst();
    }

    private static long nearest(NumberForm form, long value) {
        return Math.max(form.least(), Math.min(form.most(), value));
    }

    private static String doesNotFit(String what, NumberForm form) {
        return what + " does not fit in " + form + ", which holds " + form.least() + ".." + form.most();
    }
}
