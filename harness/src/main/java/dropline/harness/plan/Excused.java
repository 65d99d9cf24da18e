package dropline.harness.plan;

import dropline.harness.size.Aside;
import dropline.harness.size.Fared;
import dropline.harness.size.Judging;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What no plan mends, so that it is held against none: panels and controls that miss even on a segment of their own,
 * and laws of copper that a board breaks there.
 *
 * @param aside those that miss their limit, and those that keep it without the margin
 * @param laws names of the rules
 */
record Excused(Aside aside, Set<String> laws) {

    static Excused of(List<Family> families, Fits fits, Judging judging, double margin) throws IOException {
        List<Fared> out = new ArrayList<>();
        List<Fared> whole = new ArrayList<>();
        Set<String> laws = new TreeSet<>();
        for (Family family : families) {
            List<Fits.Alone> each = judging.each(family.boards(), board -> fits.alone(board, family.segments()));
            for (Fits.Alone alone : each) {
                laws.addAll(alone.laws());
                for (Fared fared : alone.each()) {
                    if (!fared.keeps(0)) {
                        out.add(fared);
                    } else if (!fared.keeps(margin)) {
                        whole.add(fared);
                    }
                }
            }
        }
        return new Excused(new Aside(out, whole), laws);
    }
}
