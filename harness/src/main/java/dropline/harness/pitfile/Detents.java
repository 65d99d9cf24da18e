package dropline.harness.pitfile;

import dropline.bus.pit.Control.Detent;
import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The type of a lever's detents: a list of names and positions, such as {@code [idle 0, climb 600, full 1000]}. */
record Detents(String words) implements Type<List<Detent>> {
    private static final Pattern ONE = Pattern.compile("(.*\\S)\\s+([+-]?\\d{1,5})");
    private static final int MOST = 32767;

    Detents() {
        this("list of two or more detents, each a name and a position of -32767..32767, by ascending position");
    }

    @Override
    public Form form() {
        return new Form.Items(new Form.Pattern(ONE.pattern()), 2);
    }

    @Override
    public Optional<List<Detent>> read(Tree tree, String key, Report report) {
        if (!(tree instanceof Tree.Sequence list) || list.items().size() < 2) {
            report.at(tree, key, PitCode.WRONG_TYPE, words, "write them in brackets: [idle 0, full 1000]");
            return Optional.empty();
        }
        List<Detent> detents = new ArrayList<>();
        for (Tree item : list.items()) {
            Matcher matcher = ONE.matcher(item instanceof Tree.Scalar text ? text.text() : "");
            if (!matcher.matches()) {
                report.at(item, key, PitCode.WRONG_TYPE, "a name and a position, such as climb 600", null);
                return Optional.empty();
            }
            int position = Integer.parseInt(matcher.group(2));
            if (Math.abs(position) > MOST) {
                report.at(item, key, PitCode.OUT_OF_RANGE, "a position of -32767..32767", null);
                return Optional.empty();
            }
            if (!detents.isEmpty()
                    && position <= detents.get(detents.size() - 1).position()) {
                report.at(item, key, PitCode.OUT_OF_RANGE, "a position above the one before", "sort them by position");
                return Optional.empty();
            }
            detents.add(new Detent(matcher.group(1), position));
        }
        return Optional.of(detents);
    }
}
