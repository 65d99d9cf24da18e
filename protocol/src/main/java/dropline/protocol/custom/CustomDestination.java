package dropline.protocol.custom;

import dropline.protocol.Bytes;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.PendingSlots;
import dropline.protocol.custom.CustomFrame.Item;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One node, or all of them, spoken to in frames of a builder's own. */
final class CustomDestination implements Destination {
    private final Custom custom;
    private final int address;
    private final int[] numbers;
    private final int[] controlNumbers;
    private final @Nullable FrameLayout plain;
    private final @Nullable FrameLayout stateful;
    private final @Nullable FrameLayout reply;
    private final boolean sendsAll;
    private final int most;
    private final int[] statefulChars;
    private final int plainChars;
    private final int replyChars;
    private final int longestRequest;
    private final int longestReply;

    /**
     * @param plain a poll that carries nothing; null where there is none
     * @param stateful a frame that carries state; null where there is none
     * @param reply null where nobody replies
     */
    CustomDestination(
            Custom custom,
            NodeWire wire,
            @Nullable FrameLayout plain,
            @Nullable FrameLayout stateful,
            @Nullable FrameLayout reply) {
        this.custom = custom;
        this.address = wire.address();
        this.plain = plain;
        this.stateful = stateful;
        this.reply = reply;
        numbers = wire.signals().stream().mapToInt(NodeWire.SignalWire::number).toArray();
        controlNumbers =
                wire.controls().stream().mapToInt(NodeWire.ControlWire::number).toArray();
        sendsAll = stateful != null && !stateful.items().orElseThrow().numbered();
        most = stateful == null ? 0 : Math.min(numbers.length, Fit.room(custom.layout(), stateful));
        statefulChars = new int[most + 1];
        int longest = 0;
        for (int count = 0; stateful != null && count <= most; count++) {
            statefulChars[count] = mean(stateful, sent(stateful, count));
            longest = Math.max(longest, most(stateful, sent(stateful, count)));
        }
        plainChars = plain == null ? 0 : mean(plain, sent(plain, 0));
        replyChars = reply == null ? 0 : mean(reply, sent(reply, controlNumbers.length));
        longestRequest = Math.max(longest, plain == null ? 0 : most(plain, sent(plain, 0)));
        longestReply = reply == null ? 0 : most(reply, sent(reply, controlNumbers.length));
    }

    @Override
    public int pick(long[] pending, int from, int[] picked) {
        int slots = numbers.length;
        int first = stateful == null ? -1 : PendingSlots.nextWrapping(pending, from, slots);
        if (first < 0) {
            return 0;
        }
        if (sendsAll) {
            for (int i = 0; i < slots; i++) {
                picked[i] = (first + i) % slots;
            }
            return slots;
        }
        int count = 0;
        int slot = first;
        do {
            picked[count++] = slot;
            slot = PendingSlots.nextWrapping(pending, slot + 1, slots);
        } while (slot != first && count < most);
        return count;
    }

    @Override
    public int requestChars(int[] picked, int count) {
        return count == 0 ? plainChars : statefulChars[count];
    }

    @Override
    public int replyChars(int[] picked, int count, double draw) {
        return replyChars;
    }

    @Override
    public int longestRequestChars() {
        return longestRequest;
    }

    @Override
    public int longestReplyChars() {
        return longestReply;
    }

    /**
     * {@inheritDoc}
     *
     * <p>A poll that always carries all of a node's signals carries zeros where nothing waits to be sent, since what it
     * sent before is not known here.
     */
    @Override
    public Bytes encodeRequest(int sequence, int[] picked, int count, long[] values) {
        FrameLayout layout = count == 0 ? plain : stateful;
        if (layout == null) {
            throw new IllegalArgumentException("there must be something to send: count=" + count);
        }
        List<Item> items = new ArrayList<>();
        boolean all =
                layout.items().isPresent() && !layout.items().orElseThrow().numbered();
        if (all) {
            long[] bySlot = new long[numbers.length];
            for (int i = 0; i < count; i++) {
                bySlot[picked[i]] = values[i];
            }
            for (int slot = 0; slot < numbers.length; slot++) {
                items.add(new Item(CustomFrame.NONE, bySlot[slot]));
            }
        } else {
            for (int i = 0; i < count; i++) {
                items.add(new Item(numbers[picked[i]], values[i]));
            }
        }
        return custom.encode(new CustomFrame(layout.kind(), address, sequence, items));
    }

    @Override
    public Bytes encodeReply(NodeStatus status, int[] picked, int count, int[] controlValues) {
        if (reply == null) {
            throw new UnsupportedOperationException("nobody replies to a broadcast");
        }
        if (controlValues.length != controlNumbers.length) {
            throw new IllegalArgumentException("control values must be one per control: controls="
                    + controlNumbers.length + " values=" + controlValues.length);
        }
        List<Item> items = new ArrayList<>();
        for (int i = 0; reply.items().isPresent() && i < controlNumbers.length; i++) {
            items.add(new Item(controlNumbers[i], controlValues[i] & 0xFFFF));
        }
        return custom.encode(new CustomFrame(reply.kind(), address, status.lastSequence(), items));
    }

    /** Items on the wire, where so many are to be sent. */
    private int sent(FrameLayout frame, int count) {
        if (frame.items().isEmpty()) {
            return 0;
        }
        Field.Items items = frame.items().orElseThrow();
        if (items.slots() > 0) {
            return items.slots();
        }
        return items.numbered() || frame.kind() == FrameLayout.Kind.REPLY ? count : numbers.length;
    }

    private int mean(FrameLayout frame, int items) {
        return chars(frame, items) + EscapeCount.of(custom.layout(), frame).mean(items);
    }

    private int most(FrameLayout frame, int items) {
        return chars(frame, items) + EscapeCount.of(custom.layout(), frame).most(items);
    }

    private int chars(FrameLayout frame, int items) {
        return custom.layout().wrapping() + frame.chars(items);
    }
}
