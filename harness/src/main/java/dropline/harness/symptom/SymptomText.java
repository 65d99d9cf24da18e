package dropline.harness.symptom;

import dropline.harness.report.Paragraphs;
import dropline.harness.symptom.Symptom.By;
import dropline.harness.symptom.Symptom.Cause;
import dropline.harness.wiring.Cautions;
import java.util.List;

/** Symptoms as plain text, for a terminal. */
public final class SymptomText {
    private SymptomText() {}

    /** A line for each. */
    public static String list(List<Symptom> symptoms) {
        StringBuilder text = new StringBuilder("What do you see? Say it in your own words, such as\n"
                + "  dropline symptoms one panel shows old values\n\n");
        symptoms.forEach(symptom -> text.append("  ").append(symptom.see()).append('\n'));
        return text.toString();
    }

    /** Each with what is likely behind it and the next test, after what to mind. */
    public static String of(List<Symptom> symptoms) {
        StringBuilder text = new StringBuilder();
        Paragraphs paragraphs = new Paragraphs(text);
        for (Symptom symptom : symptoms) {
            paragraphs.add("", symptom.see());
            int number = 1;
            for (Cause cause : symptom.likely()) {
                String mark = "  " + number++ + ". ";
                paragraphs.add(mark, cause.name() + ". " + cause.why());
                paragraphs.add("     ", test(cause));
            }
            text.append('\n');
        }
        text.append("Before you touch a wire\n");
        Cautions.LINES.forEach(line -> paragraphs.add("  - ", line));
        text.append(
                "\nThe likeliest stands first. 'dropline faults NAME' says more of a fault, and how to inject it.\n");
        return text.toString();
    }

    /** How to test a cause. */
    static String test(Cause cause) {
        return switch (cause.by()) {
            case EYE -> "Look: " + cause.test();
            case METER -> "Meter: " + cause.test();
            case SWAP -> "Swap: " + cause.test();
            case COMMAND -> "Command: " + cause.test() + " - " + cause.then();
        };
    }

    /** Whether a test is a command. */
    static boolean isCommand(Cause cause) {
        return cause.by() == By.COMMAND;
    }
}
