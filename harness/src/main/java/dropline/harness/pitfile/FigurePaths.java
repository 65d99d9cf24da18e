package dropline.harness.pitfile;

import dropline.harness.yaml.Place;
import dropline.harness.yaml.Tree;
import java.util.LinkedHashMap;
import java.util.Map;

/** What each value of a file is of, in words: {@code profile gauge board, reply-gap}. */
final class FigurePaths {
    private final Map<Place, String> paths = new LinkedHashMap<>();

    private FigurePaths() {}

    /** The words for every value in these trees, by its place. */
    static Map<Place, String> of(Tree.Mapping... trees) {
        FigurePaths all = new FigurePaths();
        for (Tree.Mapping tree : trees) {
            all.group(Schema.ROOT, "", tree);
        }
        return all.paths;
    }

    private void group(Section section, String words, Tree tree) {
        if (!(tree instanceof Tree.Mapping mapping)) {
            return;
        }
        for (Tree.Entry entry : mapping.entries()) {
            String key = entry.key().text();
            Section child = section.section(key).orElse(null);
            if (child == null) {
                paths.put(entry.value().place(), joined(words, key));
            } else if (child.shape() == Section.Shape.ONE) {
                group(child, child.keys().isEmpty() ? "kind of" : joined(words, key), entry.value());
            } else if (entry.value() instanceof Tree.Mapping names) {
                for (Tree.Entry named : names.entries()) {
                    String each = child.each() + " " + named.key().text();
                    group(child, words.equals("kind of") ? words + " " + each : joined(words, each), named.value());
                }
            }
        }
    }

    private static String joined(String words, String more) {
        return words.isEmpty() ? more : words + ", " + more;
    }
}
