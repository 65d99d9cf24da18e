package dropline.harness.baseline;

import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeText;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One thing that stands otherwise in a pit file than it did, includes and all.
 *
 * @param path the keys from the outside in
 * @param was null where it was not there
 * @param is null where it is there no more
 */
public record PitChange(
        List<String> path, @Nullable Tree was, @Nullable Tree is) {
    private static final int LONGEST = 60;

    public PitChange {
        path = List.copyOf(path);
    }

    /** Everything that differs, in the order of the files. */
    public static List<PitChange> between(Tree.Mapping was, Tree.Mapping is) {
        List<PitChange> changes = new ArrayList<>();
        collect(List.of(), was, is, changes);
        return changes;
    }

    private static void collect(List<String> path, Tree.Mapping was, Tree.Mapping is, List<PitChange> changes) {
        for (Tree.Entry entry : is.entries()) {
            List<String> own = joined(path, entry.key().text());
            Tree before = was.get(entry.key().text()).map(Tree.Entry::value).orElse(null);
            if (before instanceof Tree.Mapping old && entry.value() instanceof Tree.Mapping now) {
                collect(own, old, now, changes);
            } else if (before == null || !TreeText.inline(before).equals(TreeText.inline(entry.value()))) {
                changes.add(new PitChange(own, before, entry.value()));
            }
        }
        for (Tree.Entry entry : was.entries()) {
            if (is.get(entry.key().text()).isEmpty()) {
                changes.add(new PitChange(joined(path, entry.key().text()), entry.value(), null));
            }
        }
    }

    private static List<String> joined(List<String> path, String step) {
        List<String> longer = new ArrayList<>(path);
        longer.add(step);
        return longer;
    }

    /** A pit file with these changes made to it. */
    public static Tree.Mapping applied(Tree.Mapping to, List<PitChange> changes) {
        Tree.Mapping made = to;
        for (PitChange change : changes) {
            made = change.appliedAt(0, made);
        }
        return made;
    }

    private Tree.Mapping appliedAt(int depth, Tree.Mapping to) {
        String step = path.get(depth);
        boolean isLast = depth == path.size() - 1;
        List<Tree.Entry> entries = new ArrayList<>();
        boolean found = false;
        for (Tree.Entry entry : to.entries()) {
            if (!entry.key().text().equals(step)) {
                entries.add(entry);
            } else if (!isLast && entry.value() instanceof Tree.Mapping inner) {
                entries.add(new Tree.Entry(entry.key(), appliedAt(depth + 1, inner)));
                found = true;
            } else if (isLast && is != null) {
                entries.add(new Tree.Entry(entry.key(), is));
                found = true;
            } else {
                found = true;
            }
        }
        if (!found && is != null) {
            Tree.Scalar key = new Tree.Scalar(step, true, to.place());
            entries.add(new Tree.Entry(
                    key, isLast ? is : appliedAt(depth + 1, new Tree.Mapping(List.of(), to.place()))));
        }
        return new Tree.Mapping(entries, to.place());
    }

    /** In the words of the pit file. */
    public String words() {
        String at = String.join(".", path.stream().map(PitChange::step).toList());
        if (was == null) {
            return at + ": new" + (is instanceof Tree.Scalar ? ", " + shortened(is) : "");
        }
        return at + ": " + shortened(was) + " -> " + (is == null ? "gone" : shortened(is));
    }

    private static String step(String key) {
        return key.contains(".") || key.contains(" ") ? '"' + key + '"' : key;
    }

    private static String shortened(Tree tree) {
        String text = tree instanceof Tree.Scalar scalar ? scalar.text() : TreeText.inline(tree);
        return text.length() > LONGEST ? text.substring(0, LONGEST) + "..." : text;
    }
}
