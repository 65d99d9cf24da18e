package dropline.harness.bench;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Control;
import dropline.harness.live.Asking;
import dropline.protocol.Heard;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Whether it tells of its controls what they are: none lost, none twice, none of its own accord. */
final class Telling {
    /** From one look at the controls to the next, ns. */
    private static final long STEP_NANOS = 5_000_000;

    private final Bench bench;
    private final List<Control> controls;
    private final Map<Integer, Long> was = new TreeMap<>();
    private int told;
    private int wrong;
    private String first = "";

    Telling(Bench bench) {
        this.bench = bench;
        controls = bench.subject().described().panels().stream()
                .flatMap(panel -> panel.controls().stream())
                .toList();
    }

    /** The controls of a modelled board are moved all the time, and it tells of all of it. */
    void moved() throws IOException {
        Fingers fingers = new Fingers(bench.subject());
        if (controls.isEmpty() || !bench.link().isModelled()) {
            return;
        }
        if (fingers.isIdle()) {
            bench.undecided("controls", "of axes and levers a model does not say how a hand would move them");
            return;
        }
        long until = bench.link().now() + bench.thoroughness().moves * Fingers.PERIOD_NANOS;
        while (bench.link().now() < until) {
            long asked = bench.link().now();
            Asking.Came reply = bench.poll().replyOf(bench.address());
            for (Heard.Value value :
                    reply == null ? List.<Heard.Value>of() : reply.heard().controls()) {
                // a move of which it may or may not know yet
                int before = fingers.valueOf(value.number(), asked - Fingers.PERIOD_NANOS / 2);
                int after = fingers.valueOf(value.number(), bench.link().now());
                if (after >= 0) {
                    count(value.number(), value.value() == before || value.value() == after);
                }
            }
            bench.asking().rest(STEP_NANOS);
        }
        item("while they were moved " + bench.thoroughness().moves + " times");
    }

    /** Takes what a real board, whose controls nobody touches, tells of them; an axis may tremble all the same. */
    void hear(Asking.Came reply) {
        for (Heard.Value value : reply.heard().controls()) {
            if (controls.stream().anyMatch(one -> one.number() == value.number() && one.kind() != Control.Kind.AXIS)) {
                Long before = was.put(value.number(), value.value());
                count(value.number(), before == null || before == value.value());
            }
        }
    }

    /** All has been heard. */
    void still() {
        if (!controls.isEmpty() && !bench.link().isModelled()) {
            item("while nobody touched them");
        }
    }

    private void count(int number, boolean well) {
        told++;
        wrong += well ? 0 : 1;
        if (!well && first.isEmpty()) {
            first = name(number);
        }
    }

    private void item(String meanwhile) {
        if (told == 0) {
            bench.undecided("controls", "its replies tell of no control that could be followed");
            return;
        }
        String says = wrong == 0
                ? "told what its controls were, " + told + " times, " + meanwhile
                : "told " + wrong + " of " + told + " times what was not so, first of " + first + ", " + meanwhile;
        bench.item(
                "controls",
                wrong == 0,
                says,
                told,
                FaultKind.SWITCH_FLICKERS,
                FaultKind.ENCODER_SKIPS,
                FaultKind.NOISY_AXIS,
                FaultKind.DUPLICATE_ADDRESS);
    }

    private String name(int number) {
        return controls.stream()
                .filter(control -> control.number() == number)
                .map(Control::name)
                .findFirst()
                .orElse("a control that the pit file does not name");
    }
}
