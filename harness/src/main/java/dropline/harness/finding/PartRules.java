package dropline.harness.finding;

import static dropline.harness.finding.Confidence.CERTAIN;
import static dropline.harness.finding.Confidence.LIKELY;
import static dropline.harness.finding.Confidence.POSSIBLE;

import dropline.bus.pit.Control;

/** What is wrong with indicators and controls, all tiers seen. */
final class PartRules {
    private static final int FEW = 2;

    private final Scene scene;

    PartRules(Scene scene) {
        this.scene = scene;
    }

    void judge() {
        for (SlotEvidence slot : scene.evidence.slots()) {
            if (slot != null) {
                slot(slot);
            }
        }
        for (ControlEvidence control : scene.evidence.controls()) {
            if (control != null) {
                control(control);
            }
        }
    }

    private void slot(SlotEvidence slot) {
        if (slot.astray.count() > 0) {
            needle(slot);
        } else if (slot.frozen.count() > 0) {
            scene.slot(
                    slot,
                    LIKELY,
                    slot.frozen,
                    "its node had new values and it did not show them for up to "
                            + Words.time(slot.frozen.most()) + ", first noticed at "
                            + Words.time(slot.frozen.firstNanos()),
                    Cause.FROZEN_DISPLAY);
        }
    }

    private void needle(SlotEvidence slot) {
        int shorts = slot.shortUp + slot.shortDown;
        String off = Words.of(slot.astray.count(), slot.moves) + " moves ended up to " + most(slot.astray)
                + " units of the signal's resolution off";
        if (slot.shortUp > 0 && slot.shortDown > 0 && shorts > 0.9 * slot.astray.count()) {
            scene.slot(
                    slot,
                    CERTAIN,
                    slot.astray,
                    "it stopped up to " + most(slot.astray) + " units of the signal's resolution short, " + slot.shortUp
                            + " times from below and " + slot.shortDown + " times from above",
                    Cause.STICKING_NEEDLE);
        } else if (slot.errorChanges.count() == 0) {
            scene.slot(
                    slot, CERTAIN, slot.astray, off + ", all of them, by the same and from the first", Cause.LOST_ZERO);
        } else if (slot.errorChanges.count() == 1) {
            scene.slot(
                    slot,
                    LIKELY,
                    slot.astray,
                    off + ", from one moment on, at " + Words.time(slot.errorChanges.firstNanos()),
                    Cause.NEEDLE_SLIPPED);
        } else {
            scene.slot(
                    slot,
                    slot.errorChanges.count() > FEW ? CERTAIN : LIKELY,
                    slot.astray,
                    off + ", and the error changed " + slot.errorChanges.count() + " times, last at "
                            + Words.time(slot.errorChanges.lastNanos()),
                    Cause.LOST_STEPS);
        }
    }

    private static long most(Sightings astray) {
        return Math.max(Math.abs(astray.least()), Math.abs(astray.most()));
    }

    private void control(ControlEvidence control) {
        Control.Kind kind =
                scene.layout.controls().get(control.control).control().kind();
        if (control.invented.count() > 0) {
            scene.control(
                    control,
                    CERTAIN,
                    control.invented,
                    "its node believed " + control.invented.count() + " changes nobody made, "
                            + Words.seen(control.invented),
                    kind.isContact() ? Cause.SWITCH_FLICKERS : Cause.NOISY_AXIS);
        } else if (control.missed.count() > 0) {
            scene.control(
                    control,
                    kind == Control.Kind.BUTTON && control.missed.count() <= FEW ? POSSIBLE : LIKELY,
                    control.missed,
                    Words.of(control.missed.count(), control.moves) + " moves were not noticed"
                            + (kind == Control.Kind.BUTTON
                                    ? "; a press shorter than its debounce time looks the same"
                                    : ""),
                    Cause.ENCODER_SKIPS);
        }
    }
}
