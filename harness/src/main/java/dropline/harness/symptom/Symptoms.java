package dropline.harness.symptom;

import dropline.bus.fault.FaultKind;
import dropline.harness.fault.FaultOptions;
import dropline.harness.symptom.Symptom.By;
import dropline.harness.symptom.Symptom.Cause;
import dropline.harness.yaml.OwnFile;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** All symptoms, from {@code symptoms.yaml} beside this class, and those that fit some words. */
public final class Symptoms {
    /** Words that say nothing about a pit. */
    private static final Set<String> EMPTY = Set.of(
            "a", "an", "and", "are", "at", "but", "by", "do", "does", "has", "have", "i", "in", "is", "it", "its", "me",
            "my", "of", "on", "one", "only", "or", "that", "the", "then", "to", "when", "with");

    /** A word that stands in the symptom itself counts so much more than one of its further words. */
    private static final int IN_NAME = 2;

    private final List<Symptom> all;

    private Symptoms(List<Symptom> all) {
        this.all = List.copyOf(all);
    }

    /** Reads them. */
    public static Symptoms read() {
        List<Symptom> symptoms = new ArrayList<>();
        for (Object one :
                OwnFile.list(OwnFile.read(Symptoms.class, "symptoms.yaml").get("symptoms"), "symptoms")) {
            Map<?, ?> symptom = OwnFile.map(one, "a symptom");
            String see = OwnFile.text(symptom.get("see"), "see");
            List<Cause> likely = new ArrayList<>();
            for (Object cause : OwnFile.list(symptom.get("likely"), see)) {
                likely.add(cause(OwnFile.map(cause, see)));
            }
            symptoms.add(new Symptom(see, OwnFile.text(symptom.get("words"), see), likely));
        }
        return new Symptoms(symptoms);
    }

    private static Cause cause(Map<?, ?> cause) {
        boolean ofCatalogue = cause.containsKey("fault");
        String name = OwnFile.text(cause.get(ofCatalogue ? "fault" : "cause"), "fault or cause");
        By by = By.valueOf(OwnFile.text(cause.get("by"), name).toUpperCase(Locale.ROOT));
        String then = by == By.COMMAND ? OwnFile.text(cause.get("then"), name) : "";
        FaultKind fault = ofCatalogue
                ? FaultOptions.kind(name)
                        .orElseThrow(() -> new IllegalStateException("a cause must be of the catalogue: " + name))
                : null;
        return new Cause(
                fault, name, OwnFile.text(cause.get("why"), name), by, OwnFile.text(cause.get("test"), name), then);
    }

    /** All, in the order in which people meet them. */
    public List<Symptom> all() {
        return all;
    }

    /** Those under which a kind of fault stands. */
    public List<Symptom> of(FaultKind kind) {
        return all.stream()
                .filter(symptom -> symptom.likely().stream().anyMatch(cause -> cause.fault() == kind))
                .toList();
    }

    /** Those that fit best what somebody sees, the best first; none where no word fits. */
    public List<Symptom> like(String seen) {
        Set<String> asked = stems(seen);
        Map<Symptom, Integer> scores = new LinkedHashMap<>();
        for (Symptom symptom : all) {
            Set<String> name = stems(symptom.see());
            Set<String> words = stems(symptom.words());
            int score = 0;
            for (String word : asked) {
                score += name.contains(word) ? IN_NAME : words.contains(word) ? 1 : 0;
            }
            if (score > 0) {
                scores.put(symptom, score);
            }
        }
        int best = scores.values().stream().mapToInt(score -> score).max().orElse(0);
        return scores.entrySet().stream()
                .filter(entry -> 2 * entry.getValue() >= best)
                .sorted(Map.Entry.<Symptom, Integer>comparingByValue(Comparator.reverseOrder()))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** The words that say something, without the endings that change. */
    private static Set<String> stems(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^a-z0-9]+"))
                .filter(word -> !word.isEmpty() && !EMPTY.contains(word))
                .map(Symptoms::stem)
                .collect(Collectors.toSet());
    }

    private static String stem(String word) {
        for (String ending : new String[] {"ing", "ers", "er", "ed", "es", "s", "y"}) {
            if (word.endsWith(ending) && word.length() - ending.length() >= 3) {
                return word.substring(0, word.length() - ending.length());
            }
        }
        return word;
    }
}
