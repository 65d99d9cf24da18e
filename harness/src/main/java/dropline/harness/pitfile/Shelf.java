package dropline.harness.pitfile;

import dropline.harness.yaml.Tree;
import java.util.List;
import java.util.Optional;

/** Where things that others may be like stand by name: in the file, and among the presets. */
enum Shelf {
    ADAPTERS("an adapter", "adapters"),
    PROFILES("a profile", "profiles"),
    BOARDS("a board", "boards"),
    TRANSCEIVERS("a transceiver", "transceivers"),
    NODES("a kind of node", "kinds.nodes"),
    PANELS("a kind of panel", "kinds.panels"),
    INDICATORS("a kind of indicator", "kinds.indicators"),
    CONTROLS("a kind of control", "kinds.controls");

    private final String each;
    private final String path;

    Shelf(String each, String path) {
        this.each = each;
        this.path = path;
    }

    /** What stands on it, for a person: {@code a profile}. */
    String each() {
        return each;
    }

    /** What stands on it in a file. */
    List<Tree.Entry> named(Tree.Mapping root) {
        Tree.Mapping at = root;
        for (String key : path.split("\\.")) {
            Optional<Tree.Entry> next = at.get(key);
            if (next.isEmpty() || !(next.get().value() instanceof Tree.Mapping mapping)) {
                return List.of();
            }
            at = mapping;
        }
        return at.entries();
    }

    /** Where it stands: {@code kinds.nodes}. */
    String path() {
        return path;
    }
}
