package dropline.harness.pitfile;

import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The presets as a person reads them: every figure with where it comes from, likes written out. */
public final class PresetList {
    private static final String SOURCE = BusKeys.FIGURES_FROM.name();
    private static final String LIKE = BusKeys.LIKE.name();

    private PresetList() {}

    /**
     * A preset.
     *
     * @param group where it stands in a pit file: {@code boards}, {@code kinds.indicators}
     * @param name the name to be like
     * @param figures in the order written, its own before those of what it is like
     */
    public record Preset(String group, String name, List<Figure> figures) {
        public Preset {
            figures = List.copyOf(figures);
        }
    }

    /**
     * One key of a preset.
     *
     * @param key as in a pit file; inside a group with the group before it: {@code profile.loop-pass}
     * @param text as written
     * @param from where it comes from; empty where nothing is said, for words that are no figures
     */
    public record Figure(String key, String text, String from) {}

    /** All of them, group by group in the order of the file. */
    public static List<Preset> all() {
        Tree.Mapping root = Presets.read();
        List<Preset> all = new ArrayList<>();
        for (Shelf shelf : Shelf.values()) {
            Map<String, Tree> named = new LinkedHashMap<>();
            shelf.named(root).forEach(entry -> named.put(entry.key().text(), entry.value()));
            named.forEach((name, tree) -> all.add(new Preset(shelf.path(), name, figures(named, tree))));
        }
        return List.copyOf(all);
    }

    private static List<Figure> figures(Map<String, Tree> named, Tree preset) {
        Map<String, Figure> byKey = new LinkedHashMap<>();
        Tree next = preset;
        while (next instanceof Tree.Mapping mapping) {
            collect(byKey, "", mapping, text(mapping, SOURCE).orElse(""));
            next = text(mapping, LIKE).map(named::get).orElse(null);
        }
        return List.copyOf(byKey.values());
    }

    private static void collect(Map<String, Figure> byKey, String group, Tree.Mapping mapping, String source) {
        for (Tree.Entry entry : mapping.entries()) {
            String key = entry.key().text();
            if (entry.value() instanceof Tree.Mapping inside) {
                collect(byKey, group + key + ".", inside, source);
            } else if (!key.equals(SOURCE) && !(group.isEmpty() && key.equals(LIKE))) {
                String text = entry.value() instanceof Tree.Scalar scalar
                        ? scalar.text()
                        : entry.value().found();
                byKey.putIfAbsent(group + key, new Figure(group + key, text, from(source, key)));
            }
        }
    }

    private static Optional<String> text(Tree.Mapping mapping, String key) {
        return mapping.get(key)
                .map(Tree.Entry::value)
                .filter(Tree.Scalar.class::isInstance)
                .map(value -> ((Tree.Scalar) value).text());
    }

    /** What a source of the form {@code key, key: where; key: where} says of a key. */
    private static String from(String source, String key) {
        for (String part : source.split("; ", -1)) {
            int colon = part.indexOf(": ");
            if (colon > 0 && List.of(part.substring(0, colon).split(", ", -1)).contains(key)) {
                return part.substring(colon + 2);
            }
        }
        return "";
    }
}
