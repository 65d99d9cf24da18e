package dropline.harness.fault;

import dropline.bus.fault.FaultKind;
import dropline.harness.yaml.OwnFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The fault catalogue in words, from {@code catalogue.yaml} beside this class: one entry for each kind. */
public final class Catalogue {
    private static final String FILE = "catalogue.yaml";
    private static final List<String> WITNESSES = List.of("wire", "controller", "meter", "eye");

    private final List<Entry> entries;

    private Catalogue(List<Entry> entries) {
        this.entries = List.copyOf(entries);
    }

    /** Reads it. */
    public static Catalogue read() {
        Map<?, ?> root = OwnFile.read(Catalogue.class, FILE);
        Map<?, ?> cautions = OwnFile.map(root.get("cautions"), "cautions");
        Map<?, ?> faults = OwnFile.map(root.get("faults"), "faults");
        List<Entry> entries = new ArrayList<>();
        for (FaultKind kind : FaultKind.values()) {
            entries.add(entry(kind, OwnFile.map(faults.get(kind.word()), kind.word()), cautions));
        }
        if (faults.size() != entries.size()) {
            throw new IllegalStateException(
                    "every entry must be of a kind of fault, each once: entries=" + faults.keySet());
        }
        return new Catalogue(entries);
    }

    /** All entries, in the order of the kinds. */
    public List<Entry> entries() {
        return entries;
    }

    /** One entry. */
    public Entry of(FaultKind kind) {
        return entries.get(kind.ordinal());
    }

    private static Entry entry(FaultKind kind, Map<?, ?> entry, Map<?, ?> cautions) {
        List<Entry.Sighting> sightings = new ArrayList<>();
        Map<?, ?> seenBy = OwnFile.map(entry.get("seen-by"), kind.word() + ": seen-by");
        for (String witness : WITNESSES) {
            if (seenBy.containsKey(witness)) {
                sightings.add(new Entry.Sighting(witness, OwnFile.text(seenBy.get(witness), witness)));
            }
        }
        if (sightings.size() != seenBy.size()) {
            throw new IllegalStateException("a witness must be one of " + WITNESSES + ": kind=" + kind);
        }
        List<String> minded = new ArrayList<>();
        if (entry.get("cautions") instanceof List<?> names) {
            names.forEach(name -> minded.add(OwnFile.text(cautions.get(name), "caution " + name)));
        }
        return new Entry(
                kind,
                OwnFile.text(entry.get("what"), "what"),
                OwnFile.text(entry.get("see"), "see"),
                sightings,
                OwnFile.text(entry.get("inject"), "inject"),
                minded);
    }
}
