package dropline.harness.fault;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What in a pit each kind of fault can strike at all. */
final class Strikable {
    private final Pit pit;
    private final Layout layout;

    Strikable(Pit pit, Layout layout) {
        this.pit = pit;
        this.layout = layout;
    }

    /** Everything a kind can strike, in the order of the pit. */
    List<Struck> all(FaultKind kind) {
        List<Struck> all = new ArrayList<>();
        for (Struck struck : candidates(kind)) {
            if (refusal(kind, struck).isEmpty()) {
                all.add(struck);
            }
        }
        return all;
    }

    /** Everything of the sort that a kind strikes, whether it can strike it or not. */
    List<Struck> candidates(FaultKind kind) {
        List<Struck> all = new ArrayList<>();
        switch (kind.strikes()) {
            case HOST -> all.add(Struck.HOST);
            case SEGMENT -> {
                for (int segment = 0; segment < pit.segments().size(); segment++) {
                    all.add(new Struck(segment, -1, -1));
                }
            }
            case NODE, NODE_AND_OTHER -> {
                for (int node = 0; node < layout.nodes().size(); node++) {
                    all.add(new Struck(layout.nodes().get(node).segment(), node, -1));
                }
            }
            case INDICATOR -> indicators(all);
            case CONTROL -> {
                for (int control = 0; control < layout.controls().size(); control++) {
                    Layout.ControlPlace place = layout.controls().get(control);
                    all.add(new Struck(place.segment(), place.node(), control));
                }
            }
        }
        return all;
    }

    private void indicators(List<Struck> all) {
        Layout.Slot before = null;
        for (int slot = 0; slot < layout.slots().size(); slot++) {
            Layout.Slot now = layout.slots().get(slot);
            boolean same = before != null
                    && before.panel().name().equals(now.panel().name())
                    && before.indicator().name().equals(now.indicator().name());
            if (!same) {
                all.add(new Struck(now.segment(), now.node(), slot));
            }
            before = now;
        }
    }

    /** Why a kind cannot strike this, as the end of a sentence; empty where it can. */
    Optional<String> refusal(FaultKind kind, Struck struck) {
        if (kind.isOfProgram() && struck.node(layout).program() != null) {
            return Optional.of("a node that is modelled: this one's own program is run");
        }
        return switch (kind) {
            case FROZEN_DISPLAY, LOST_STEPS, LOST_ZERO, NEEDLE_SLIPPED, STICKING_NEEDLE ->
                kind.canStrike(indicator(struck).kind()) ? Optional.empty() : Optional.of("an indicator that moves");
            case ENCODER_SKIPS -> control(kind, struck, "an encoder or a button");
            case SWITCH_FLICKERS -> control(kind, struck, "a control made of contacts");
            case NOISY_AXIS -> control(kind, struck, "an axis or a lever");
            case SLOW_ADAPTER ->
                struck.segment(pit).controller().adapter().equals(Adapter.NONE)
                        ? Optional.of("a segment with a USB adapter")
                        : Optional.empty();
            case DUPLICATE_ADDRESS, ANSWERS_ANOTHER, EAVESDROPPER ->
                struck.segment(pit).nodes().size() < 2
                        ? Optional.of("a node that is not alone on its segment")
                        : Optional.empty();
            default ->
                kind.needsPair() && !struck.segment(pit).isShared()
                        ? Optional.of("a node or segment with a pair, not one straight on USB")
                        : Optional.empty();
        };
    }

    private Indicator indicator(Struck struck) {
        return layout.slots().get(struck.part()).indicator();
    }

    private Optional<String> control(FaultKind kind, Struck struck, String words) {
        Control.Kind is = layout.controls().get(struck.part()).control().kind();
        return kind.canStrike(is) ? Optional.empty() : Optional.of(words);
    }
}
