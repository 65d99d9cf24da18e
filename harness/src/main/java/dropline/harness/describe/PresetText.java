package dropline.harness.describe;

import dropline.harness.pitfile.PresetList.Figure;
import dropline.harness.pitfile.PresetList.Preset;
import java.util.List;
import java.util.Map;

/** Presets as plain text, for a terminal. */
public final class PresetText {
    private static final int WIDTH = 100;

    private static final Map<String, String> GROUPS = Map.of(
            "adapters", "USB adapters            in a hub:         adapter: NAME",
            "profiles", "Firmware timings        in a node:        profile: NAME",
            "boards", "Boards                  in a node:        board: NAME",
            "transceivers", "Transceivers            in a node:        transceiver: NAME",
            "kinds.indicators", "Indicators              in an indicator:  like: NAME",
            "kinds.controls", "Controls                in a control:     like: NAME");

    private PresetText() {}

    /** One line for each, by group. */
    public static String list(List<Preset> presets) {
        StringBuilder text = new StringBuilder();
        int widest = presets.stream().mapToInt(p -> p.name().length()).max().orElse(0);
        String group = "";
        for (Preset preset : presets) {
            if (!preset.group().equals(group)) {
                group = preset.group();
                text.append(text.isEmpty() ? "" : "\n")
                        .append(GROUPS.getOrDefault(group, group))
                        .append('\n');
            }
            String name = preset.name() + " ".repeat(widest - preset.name().length());
            text.append(shortened("  " + name + "  " + figures(preset))).append('\n');
        }
        return text.toString();
    }

    private static String figures(Preset preset) {
        StringBuilder row = new StringBuilder();
        for (Figure figure : preset.figures()) {
            row.append(row.isEmpty() ? "" : ", ")
                    .append(figure.key())
                    .append(' ')
                    .append(figure.text());
        }
        return row.toString();
    }

    private static String shortened(String line) {
        return line.length() <= WIDTH ? line : line.substring(0, WIDTH - 4).stripTrailing() + " ...";
    }

    /** Each whole, with where its figures come from. */
    public static String whole(List<Preset> presets) {
        StringBuilder text = new StringBuilder();
        for (Preset preset : presets) {
            text.append(text.isEmpty() ? "" : "\n").append(preset.name());
            text.append("   (").append(preset.group()).append(")\n");
            Table table = new Table("key", "value", "where it comes from");
            preset.figures().forEach(figure -> table.row(figure.key(), figure.text(), figure.from()));
            text.append(table.text());
        }
        return text.toString();
    }
}
