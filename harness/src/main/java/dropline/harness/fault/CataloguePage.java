package dropline.harness.fault;

import dropline.bus.pit.Pit;
import dropline.harness.problem.Problems;
import java.util.List;
import java.util.OptionalLong;

/** The parts of {@code docs/faults.md} that are made from the catalogue and from what the reader of faults says. */
final class CataloguePage {
    private static final OptionalLong TEN_MINUTES = OptionalLong.of(600_000_000_000L);

    private CataloguePage() {}

    /** Every kind, as Markdown. */
    static String kinds(Catalogue catalogue) {
        StringBuilder text = new StringBuilder();
        catalogue.entries().forEach(entry -> kind(entry, text));
        return text.toString();
    }

    private static void kind(Entry entry, StringBuilder text) {
        text.append("\n### `").append(entry.kind().word()).append("`\n\n");
        text.append(entry.what()).append("\n\n");
        text.append("- **You see:** ").append(entry.see()).append('\n');
        for (Entry.Sighting sighting : entry.sightings()) {
            text.append("- **")
                    .append(label(sighting.witness()))
                    .append(":** ")
                    .append(sighting.words())
                    .append('\n');
        }
        text.append("- **Strikes:** ")
                .append(entry.strikes())
                .append("; ")
                .append(entry.usualRate())
                .append(" unless said\n");
        if (!entry.usualAmount().isEmpty()) {
            text.append("- **Usual amount:** ").append(entry.usualAmount()).append('\n');
        }
        entry.cautions()
                .forEach(caution ->
                        text.append("- **Caution:** ").append(caution).append('\n'));
        text.append("\n```\n--fault \"").append(entry.inject()).append("\"\n```\n");
    }

    private static String label(String witness) {
        return switch (witness) {
            case "wire" -> "On the wire";
            case "controller" -> "At the controller";
            case "meter" -> "With a meter";
            case "eye" -> "By eye";
            default -> throw new AssertionError(witness);
        };
    }

    /** Every problem, with a fault's text that has it and the message that it leads to in a run of ten minutes. */
    static String problems(Pit demo) {
        StringBuilder text = new StringBuilder("| code | what is wrong |\n| --- | --- |\n");
        for (FaultCode code : FaultCode.values()) {
            text.append("| `").append(code).append("` | ").append(code.words()).append(" |\n");
        }
        text.append("\n```\n");
        boolean first = true;
        for (FaultCode code : FaultCode.values()) {
            text.append(first ? "" : "\n")
                    .append(Problems.text(problemsOf(code, demo).problems()));
            first = false;
        }
        return text.append("```\n").toString();
    }

    static FaultOptions.Read problemsOf(FaultCode code, Pit demo) {
        return FaultOptions.read(List.of(code.example()), demo, TEN_MINUTES);
    }
}
