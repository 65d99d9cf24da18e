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

/**
 * What a layout is tried with: every frame of it once.
 *
 * @param address of the node that is spoken to and replies
 * @param counter of the state frame
 * @param values of the signals or controls, numbered from 1
 */
public record Trial(int address, int counter, List<Long> values) {
    public Trial {
        values = List.copyOf(values);
    }

    /** One frame, with as many of the values as fit. */
    CustomFrame frame(Custom protocol, FrameLayout layout) {
        List<Item> items = new ArrayList<>();
        layout.items().ifPresent(some -> {
            int most = Math.min(protocol.room(layout.kind()), values.size());
            for (int i = 0; i < most; i++) {
                items.add(new Item(some.numbered() ? i + 1 : CustomFrame.NONE, values.get(i)));
            }
        });
        return new CustomFrame(layout.kind(), layout.kind() == Kind.STATE ? 0 : address, counter, items);
    }

    /** What of it does not fit in the frames of a protocol, one sentence a problem. */
    public List<String> misfits(Custom protocol) {
        List<String> misfits = new ArrayList<>();
        for (FrameLayout layout : protocol.layout().frames()) {
            for (Field field : layout.fields()) {
                if (field instanceof Field.Address in && layout.kind() != Kind.STATE) {
                    check(misfits, "address " + address, in.form(), (long) address + in.plus());
                } else if (field instanceof Field.Items items) {
                    values(misfits, layout, items);
                }
            }
        }
        return misfits.stream().distinct().toList();
    }

    private void values(List<String> misfits, FrameLayout layout, Field.Items items) {
        for (Field part : items.each()) {
            if (part instanceof Field.Value in) {
                for (long value : values) {
                    check(misfits, "value " + value + " in a " + layout.kind().word(), in.form(), value);
                }
            }
        }
    }

    private static void check(List<String> misfits, String what, NumberForm form, long written) {
        if (!form.holds(written)) {
            misfits.add(what + " does not fit in " + form + ", which holds " + form.least() + ".." + form.most());
        }
    }
}
