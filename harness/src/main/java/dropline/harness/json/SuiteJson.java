package dropline.harness.json;

import dropline.harness.baseline.Checkup;
import dropline.harness.baseline.Deviation;
import dropline.harness.suite.Breach;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.StepOutcome;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;
import tools.jackson.core.JsonGenerator;

/** What became of a suite as one JSON document; documented in {@code docs/baselines.md}. */
public final class SuiteJson {
    private SuiteJson() {}

    /** Writes it and a line feed, and flushes; does not close. */
    public static void write(Checkup checkup, Writer writer) throws IOException {
        Document.write(writer, json -> {
            json.writeStartObject();
            json.writeNumberProperty("version", 1);
            json.writeStringProperty("suite", checkup.suite());
            runs(json, checkup);
            steps(json, checkup);
            deviations(json, checkup);
            json.writeEndObject();
        });
    }

    private static void runs(JsonGenerator json, Checkup checkup) {
        json.writeArrayPropertyStart("runs");
        for (RunOutcome run : checkup.runs()) {
            json.writeStartObject();
            json.writeStringProperty("run", run.run());
            json.writeNumberProperty("seed", run.seed());
            json.writeStringProperty("digest", run.digest());
            json.writeStringProperty("outcome", word(run.outcome()));
            json.writeArrayPropertyStart("breaches");
            for (Breach breach : run.breaches()) {
                json.writeStartObject();
                json.writeStringProperty("rule", word(breach.rule()));
                json.writeStringProperty("name", breach.name());
                if (breach.value() == Breach.NEVER) {
                    json.writeNullProperty("value");
                } else {
                    json.writeNumberProperty("value", breach.value());
                }
                json.writeNumberProperty("limit", breach.limit());
                json.writeStringProperty("after", breach.after());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void steps(JsonGenerator json, Checkup checkup) {
        json.writeArrayPropertyStart("steps");
        for (StepOutcome step : checkup.steps()) {
            json.writeStartObject();
            json.writeStringProperty("step", step.step());
            json.writeStringProperty("standing", word(step.standing()));
            json.writeStringProperty("checked", step.checked());
            json.writeArrayPropertyStart("words");
            for (String words : step.words()) {
                json.writeString(words);
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void deviations(JsonGenerator json, Checkup checkup) {
        json.writeArrayPropertyStart("deviations");
        for (Deviation deviation : checkup.standings().deviations()) {
            json.writeStartObject();
            json.writeStringProperty("run", deviation.run());
            json.writeStringProperty("kind", word(deviation.subject().kind()));
            json.writeStringProperty("name", deviation.subject().name());
            json.writeStringProperty("figure", deviation.figure() == null ? "" : word(deviation.figure()));
            json.writeStringProperty("standing", word(deviation.standing()));
            json.writeNumberProperty("was", deviation.was());
            json.writeNumberProperty("is", deviation.is());
            json.writeNumberProperty("strength", deviation.strength());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
