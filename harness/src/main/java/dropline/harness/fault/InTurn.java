package dropline.harness.fault;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.util.List;

/** A fault's text without a target, such as {@code reset at 20s}, written out for everything that it can strike. */
public final class InTurn {
    private InTurn() {}

    /**
     * The texts, one for each target in the order of the pit; as it is where it names no kind, so that reading it tells
     * what is wrong.
     */
    public static List<String> texts(String text, Pit pit) {
        String word = text.strip().split("\\s", 2)[0];
        String rest = text.strip().substring(word.length());
        Layout layout = Layout.of(pit);
        return FaultOptions.kind(word)
                .map(kind -> new Strikable(pit, layout)
                        .all(kind).stream()
                                .map(struck -> struck.name(kind, pit, layout))
                                .map(name -> kind.word() + (name.isEmpty() ? "" : " " + Token.written(name)) + rest)
                                .toList())
                .orElse(List.of(text));
    }
}
