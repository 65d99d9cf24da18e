package dropline.harness.json;

import dropline.harness.yaml.Form;
import java.io.IOException;
import java.io.Writer;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JsonGenerator;

/** Forms as a JSON Schema of draft-07, which editors understand. */
public final class SchemaJson {
    private static final String DRAFT = "http://json-schema.org/draft-07/schema#";

    private final JsonGenerator json;

    /** What stands more than once, each under a name of its own. */
    private final Map<Form.Keys, String> shared;

    private SchemaJson(JsonGenerator json, Map<Form.Keys, String> shared) {
        this.json = json;
        this.shared = shared;
    }

    /** Writes the schema of a whole file and a line feed, and flushes; does not close. */
    public static void write(Form.Keys file, Writer writer) throws IOException {
        Document.writePretty(writer, json -> {
            json.writeStartObject();
            json.writeStringProperty("$schema", DRAFT);
            new SchemaJson(json, shared(file)).file(file);
            json.writeEndObject();
        });
    }

    private static Map<Form.Keys, String> shared(Form.Keys file) {
        Map<Form.Keys, Integer> counts = new LinkedHashMap<>();
        count(file, counts);
        Map<Form.Keys, String> shared = new LinkedHashMap<>();
        counts.forEach((keys, count) -> {
            if (count > 1) {
                shared.put(keys, "group-" + (shared.size() + 1));
            }
        });
        return shared;
    }

    private static void count(Form form, Map<Form.Keys, Integer> counts) {
        if (form instanceof Form.Keys keys) {
            if (counts.merge(keys, 1, Integer::sum) == 1) {
                keys.entries().forEach(entry -> count(entry.form(), counts));
            }
        } else if (form instanceof Form.Any any) {
            any.forms().forEach(one -> count(one, counts));
        } else if (form instanceof Form.Items items) {
            count(items.each(), counts);
        } else if (form instanceof Form.Named named) {
            count(named.each(), counts);
        }
    }

    private void file(Form.Keys file) {
        keys(file);
        if (!shared.isEmpty()) {
            json.writeObjectPropertyStart("definitions");
            shared.forEach((keys, name) -> {
                json.writeObjectPropertyStart(name);
                keys(keys);
                json.writeEndObject();
            });
            json.writeEndObject();
        }
    }

    private void keys(Form.Keys keys) {
        type("object");
        description(keys.doc());
        json.writeObjectPropertyStart("properties");
        for (Form.Entry entry : keys.entries()) {
            json.writeObjectPropertyStart(entry.name());
            form(entry.form(), entry.doc());
            json.writeEndObject();
        }
        json.writeEndObject();
        List<String> required = keys.entries().stream()
                .filter(Form.Entry::required)
                .map(Form.Entry::name)
                .toList();
        if (!required.isEmpty()) {
            texts("required", required);
        }
        json.writeBooleanProperty("additionalProperties", false);
    }

    /** What is inside the braces of a value's schema. */
    private void form(Form form, String doc) {
        if (form instanceof Form.Keys keys) {
            String name = shared.get(keys);
            if (name == null) {
                keys(keys);
            } else {
                json.writeStringProperty("$ref", "#/definitions/" + name);
            }
            return;
        }
        description(doc);
        if (form instanceof Form.Text) {
            texts("type", List.of("string", "number", "boolean"));
        } else if (form instanceof Form.Pattern pattern) {
            type("string");
            json.writeStringProperty("pattern", "^\\s*" + pattern.pattern() + "\\s*$");
        } else if (form instanceof Form.Choice choice) {
            texts("enum", choice.words());
        } else if (form instanceof Form.Flag) {
            type("boolean");
        } else if (form instanceof Form.Whole whole) {
            type("integer");
            json.writeNumberProperty("minimum", whole.least());
            json.writeNumberProperty("maximum", whole.most());
        } else if (form instanceof Form.Decimal) {
            type("number");
        } else if (form instanceof Form.Items items) {
            type("array");
            json.writeNumberProperty("minItems", items.least());
            inner("items", items.each());
        } else if (form instanceof Form.Any any) {
            json.writeArrayPropertyStart("anyOf");
            for (Form one : any.forms()) {
                json.writeStartObject();
                form(one, "");
                json.writeEndObject();
            }
            json.writeEndArray();
        } else if (form instanceof Form.Named named) {
            type("object");
            inner("additionalProperties", named.each());
        } else if (form instanceof Form.Loose loose) {
            type("object");
            json.writeObjectPropertyStart("patternProperties");
            loose.patterns().forEach((pattern, each) -> inner("^" + pattern + "$", each));
            json.writeEndObject();
            json.writeBooleanProperty("additionalProperties", false);
        }
    }

    private void inner(String name, Form form) {
        json.writeObjectPropertyStart(name);
        form(form, "");
        json.writeEndObject();
    }

    private void type(String name) {
        json.writeStringProperty("type", name);
    }

    private void description(String doc) {
        if (!doc.isEmpty()) {
            json.writeStringProperty("description", doc);
        }
    }

    private void texts(String name, List<String> texts) {
        json.writeArrayPropertyStart(name);
        texts.forEach(json::writeString);
        json.writeEndArray();
    }
}
