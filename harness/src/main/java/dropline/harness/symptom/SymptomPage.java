package dropline.harness.symptom;

import dropline.harness.symptom.Symptom.Cause;
import java.util.List;
import java.util.Locale;

/** Symptoms as the made part of a page of the manual. */
public final class SymptomPage {
    private SymptomPage() {}

    /** A heading for each, and below it a list of what is likely behind it. */
    public static String of(List<Symptom> symptoms) {
        StringBuilder page = new StringBuilder();
        for (Symptom symptom : symptoms) {
            page.append("### ").append(symptom.see()).append("\n\n");
            int number = 1;
            for (Cause cause : symptom.likely()) {
                page.append(number++)
                        .append(". **")
                        .append(name(cause))
                        .append(".** ")
                        .append(cause.why());
                page.append(
                        SymptomText.isCommand(cause)
                                ? " *Command:* `" + cause.test() + "`. " + cause.then()
                                : " *" + word(cause) + ":* " + cause.test());
                page.append('\n');
            }
            page.append('\n');
        }
        return page.toString();
    }

    private static String name(Cause cause) {
        return cause.fault() == null ? cause.name() : "[" + cause.name() + "](faults.md#" + cause.name() + ")";
    }

    private static String word(Cause cause) {
        String name = cause.by().name();
        return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT);
    }
}
