package dropline.harness.planned;

import dropline.harness.plan.ShoppingList;
import dropline.harness.plan.ShoppingList.Amps;
import dropline.harness.plan.ShoppingList.Item;
import dropline.harness.plan.ShoppingList.PairLength;
import dropline.harness.report.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What to buy, a sentence each; what the pit file does not say is named, not left out. */
final class ShoppingWords {
    private final @Nullable ShoppingList list;
    private final List<String> lines = new ArrayList<>();

    ShoppingWords(@Nullable ShoppingList list) {
        this.list = list;
    }

    List<String> all() {
        if (list == null) {
            return List.of();
        }
        items("board", "none of the panels' boards is still to come", list.boards());
        items("transceiver", "none beside what is there", list.transceivers());
        if (!list.adapters().isEmpty()) {
            items("USB adapter", "", list.adapters());
        }
        list.cable().forEach(this::cable);
        if (list.wire().isEmpty()) {
            lines.add("Supply wire: not known; the pit file describes no supplies with their runs.");
        }
        list.wire()
                .forEach(wire -> lines.add("Supply wire, " + wire.gauge() + ": " + metres(wire.metres())
                        + " of conductor, there and back, in all runs."));
        list.supplies().forEach(this::supply);
        list.ports()
                .forEach(ports -> lines.add("Hub " + ports.hub() + ": " + Figures.plural(ports.used(), "port")
                        + " in use" + (ports.used() == 0 ? "; no longer needed." : ".")));
        return lines;
    }

    private void items(String what, String none, List<Item> items) {
        if (items.isEmpty()) {
            lines.add(what.substring(0, 1).toUpperCase(Locale.ROOT) + what.substring(1) + "s: " + none + ".");
        }
        for (Item item : items) {
            lines.add(Figures.plural(item.count(), what) + ": "
                    + (item.kind().isEmpty() ? "of which kind, the pit file does not say." : item.kind() + "."));
        }
    }

    private void cable(PairLength pair) {
        String known =
                pair.metres() > 0 || pair.unknown() == 0 ? metres(pair.metres()) + " of pair with a common wire" : "";
        String unknown = pair.unknown() == 0
                ? ""
                : "the length of " + Figures.plural(pair.unknown(), "stretch").replace("stretchs", "stretches")
                        + " is not known (step:, or after: of each board)";
        lines.add("Cable of " + pair.segment() + ": " + known + (known.isEmpty() || unknown.isEmpty() ? "" : "; ")
                + unknown + ".");
    }

    private void supply(Amps amps) {
        lines.add("Supply " + amps.supply() + ": " + Figures.decimal(amps.lasting(), 2) + " A at the worst load that"
                + " lasts, so one rated " + Figures.decimal(amps.ratingWanted(), 2)
                + " A or more, a fifth being left free (common practice)"
                + (amps.unknown() == 0
                        ? "."
                        : "; " + Figures.plural(amps.unknown(), "current") + " not stated come"
                                + (amps.unknown() == 1 ? "s" : "") + " on top."));
    }

    private static String metres(double metres) {
        return Figures.decimal(metres, 1) + " m";
    }
}
