package dropline.harness.pitfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Named groups that may be like one another: adapters, or profiles. A key missing in one is looked up in its like. */
final class Likes {
    private final String what;
    private final Map<String, Block> byName = new LinkedHashMap<>();
    private final List<Block> own;

    /**
     * @param what what they are, for a person: {@code a profile}
     * @param presets those that every file may name
     * @param own those of this file
     */
    Likes(String what, List<Block> presets, List<Block> own) {
        this.what = what;
        this.own = List.copyOf(own);
        presets.forEach(block -> byName.put(block.name(), block));
        own.forEach(block -> byName.putIfAbsent(block.name(), block));
    }

    /** Reports names taken by presets, names of nothing, and rings of likes. */
    void check(Report report) {
        for (Block block : own) {
            if (byName.get(block.name()) != block) {
                String expected = "a name that no preset has";
                report.at(block.nameAt(), block.name(), PitCode.DUPLICATE_NAME, expected, "give it another name");
            }
            checkUse(block, report);
        }
    }

    /** Reports what is wrong with the like of one group, named or not. */
    void checkUse(Block block, Report report) {
        Optional<Tree.Scalar> like = block.written(BusKeys.LIKE);
        if (like.isPresent() && !byName.containsKey(like.get().text())) {
            report.unknownName(like.get(), keyOf(block, like.get()), what, byName.keySet());
        } else if (like.isPresent() && chain(block) == null) {
            String expected = "likes that end somewhere; this one leads back to itself";
            String fix = "write out the figures of one of them and delete its like:";
            report.at(like.get(), "like", PitCode.CIRCULAR, expected, fix);
        }
    }

    /** The key a person wrote: where the like stands in place of its group, the group's own. */
    private static String keyOf(Block block, Tree.Scalar like) {
        return block.place().equals(like) ? block.nameAt().text() : BusKeys.LIKE.name();
    }

    /** The value written in the group or, failing that, in the nearest of its likes. */
    <T> Optional<T> get(Block block, Key<T> key) {
        return holder(block, key).flatMap(b -> b.written(key));
    }

    /** The group that writes the key: this one or one of its likes. */
    Optional<Block> holder(Block block, Key<?> key) {
        return likes(block).stream().filter(b -> b.has(key)).findFirst();
    }

    /** The groups of a section in this group or, failing that, in the nearest of its likes that has any. */
    List<Block> blocks(Block block, Section child) {
        return likes(block).stream()
                .map(b -> b.blocks(child))
                .filter(found -> !found.isEmpty())
                .findFirst()
                .orElse(List.of());
    }

    private List<Block> likes(Block block) {
        List<Block> chain = chain(block);
        return chain == null ? List.of(block) : chain;
    }

    /** The group and its likes, nearest first; null where they go round in a ring. */
    private @Nullable List<Block> chain(Block block) {
        List<Block> chain = new ArrayList<>();
        Block next = block;
        while (next != null) {
            if (chain.contains(next)) {
                return null;
            }
            chain.add(next);
            next = next.written(BusKeys.LIKE).map(l -> byName.get(l.text())).orElse(null);
        }
        return chain;
    }
}
