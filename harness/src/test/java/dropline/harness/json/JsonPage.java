package dropline.harness.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.databind.JsonNode;

/** A page of the manual that describes a JSON document: a heading for each shape, a row for each key. */
final class JsonPage {
    private static final Pattern HEADING = Pattern.compile("## (\\w+)");
    private static final Pattern ROW = Pattern.compile("\\| `(\\w+)` \\| (.+?) \\| .* \\|");
    private static final Pattern LINK = Pattern.compile(".*\\[(\\w+)]\\(#\\w+\\)");

    private final Map<String, Map<String, String>> shapes;
    private final Set<String> nullable;

    private JsonPage(Map<String, Map<String, String>> shapes, Set<String> nullable) {
        this.shapes = shapes;
        this.nullable = nullable;
    }

    /** @param nullable keys that may be null */
    static JsonPage read(String name, Set<String> nullable) throws IOException {
        return new JsonPage(described(name), nullable);
    }

    /** Holds a document to the page; tells which described shapes it did not hold. */
    Set<String> hold(JsonNode document) {
        Set<String> seen = new LinkedHashSet<>();
        compare(document, "Document", seen, "");
        Set<String> unseen = new LinkedHashSet<>(shapes.keySet());
        unseen.removeAll(seen);
        return unseen;
    }

    private void compare(JsonNode node, String shape, Set<String> seen, String path) {
        Map<String, String> keys = shapes.get(shape);
        assertNotNull(keys, "no description of " + shape);
        seen.add(shape);
        assertEquals(new ArrayList<>(keys.keySet()), new ArrayList<>(node.propertyNames()), path);
        for (Map.Entry<String, String> key : keys.entrySet()) {
            JsonNode value = node.get(key.getKey());
            String at = path + "/" + key.getKey();
            Matcher link = LINK.matcher(key.getValue());
            if (value.isNull()) {
                assertTrue(nullable.contains(key.getKey()), at);
            } else if (key.getValue().startsWith("list of ")) {
                assertTrue(value.isArray(), at);
                for (JsonNode item : value) {
                    if (link.matches()) {
                        compare(item, link.group(1), seen, at);
                    } else {
                        assertTrue(item.isString(), at);
                    }
                }
            } else if (link.matches()) {
                compare(value, link.group(1), seen, at);
            } else {
                assertTrue(isOfType(value, key.getValue()), at + " is no " + key.getValue());
            }
        }
    }

    private static boolean isOfType(JsonNode value, String type) {
        return switch (type) {
            case "integer" -> value.isIntegralNumber();
            case "number" -> value.isNumber();
            case "text", "word" -> value.isString();
            case "true or false" -> value.isBoolean();
            default -> throw new AssertionError("unknown type: " + type);
        };
    }

    private static Map<String, Map<String, String>> described(String name) throws IOException {
        Map<String, Map<String, String>> shapes = new LinkedHashMap<>();
        Map<String, String> current = new LinkedHashMap<>();
        for (String line : Files.readAllLines(Path.of("..", "docs", name), StandardCharsets.UTF_8)) {
            Matcher heading = HEADING.matcher(line);
            Matcher row = ROW.matcher(line);
            if (heading.matches()) {
                current = new LinkedHashMap<>();
                shapes.put(heading.group(1), current);
            } else if (row.matches()) {
                current.put(row.group(1), row.group(2));
                assertTrue(!row.group(1).endsWith("Nanos") || row.group(2).equals("integer"), line);
            }
        }
        return shapes;
    }
}
