package dropline.harness.pitfile;

import dropline.harness.yaml.Report;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which keys of a part go with which of its kinds: those a kind must have, and those it may have. */
final class KindUses<K extends Enum<K>> {
    private record Use<K>(Key<?> key, Set<K> may, Set<K> must) {}

    private final Key<K> kindKey;
    private final Map<String, K> kindWords;
    private final List<Use<K>> uses = new ArrayList<>();

    /** @param kindWords every kind by the word for it */
    KindUses(Key<K> kindKey, Map<String, K> kindWords) {
        this.kindKey = kindKey;
        this.kindWords = kindWords;
    }

    /** A key that these kinds must have. */
    KindUses<K> must(Key<?> key, Set<K> kinds) {
        return with(key, kinds, kinds);
    }

    /** A key that these kinds may have. */
    KindUses<K> may(Key<?> key, Set<K> kinds) {
        return with(key, kinds, Set.of());
    }

    /** A key that some kinds may have, and some of those must. */
    KindUses<K> with(Key<?> key, Set<K> may, Set<K> must) {
        uses.add(new Use<>(key, may, must));
        return this;
    }

    /** Reports what is missing and what is of no use. */
    void check(Block block, Report report) {
        Optional<K> kind = block.written(kindKey);
        if (kind.isEmpty()) {
            return;
        }
        for (Use<K> use : uses) {
            if (use.must().contains(kind.get()) && !block.has(use.key())) {
                String why = "since kind is " + block.at(kindKey).found() + " ("
                        + block.at(kindKey).line(block.nameAt()) + ")";
                needs(block, use.key(), why, report);
            } else if (!use.may().contains(kind.get()) && block.has(use.key())) {
                String expected = use.key().name() + " only for " + words(use.may()) + "; kind is "
                        + block.at(kindKey).found();
                report.at(
                        block.at(use.key()),
                        use.key().name(),
                        PitCode.UNUSED_KEY,
                        expected,
                        "delete it, or correct kind:");
            }
        }
    }

    private String words(Set<K> kinds) {
        return String.join(
                ", ",
                kindWords.entrySet().stream()
                        .filter(entry -> kinds.contains(entry.getValue()))
                        .map(Map.Entry::getKey)
                        .toList());
    }

    /** Reports a key that is missing, and why it is needed. */
    static void needs(Block block, Key<?> key, String why, Report report) {
        if (!block.isWhole()) {
            return;
        }
        String expected = key.name() + ": " + key.type().words() + ", " + why;
        String found = block.name() + " without " + key.name();
        report.at(block.nameAt(), key.name(), PitCode.MISSING_KEY, found, expected, null);
    }
}
