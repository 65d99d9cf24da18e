package dropline.harness.bench;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.harness.link.LoopLink;
import dropline.harness.recording.Moves;
import java.util.ArrayList;
import java.util.List;

/** The modelled board on a bench: alone on its pair. */
public final class Loops {
    private Loops() {}

    /** A link to it, with somebody at its controls; the other boards of its segment are not there. */
    public static LoopLink to(Subject subject, long seed, List<Fault> faults) {
        List<Fault> all = new ArrayList<>(faults);
        all.addAll(othersDead(subject));
        return new LoopLink(subject.pit(), subject.segment(), seed, all, new Moves(new Fingers(subject)));
    }

    /** That nobody else is on its pair. */
    static List<Fault> othersDead(Subject subject) {
        List<Fault> dead = new ArrayList<>();
        List<Layout.NodePlace> places = Layout.of(subject.pit()).nodes();
        for (int n = 0; n < places.size(); n++) {
            if (places.get(n).segment() == subject.segment()
                    && !places.get(n).node().name().equals(subject.name())) {
                dead.add(Fault.deadNode(subject.segment(), n));
            }
        }
        return dead;
    }
}
