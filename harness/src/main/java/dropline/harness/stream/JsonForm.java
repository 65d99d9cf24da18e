package dropline.harness.stream;

import java.util.ArrayDeque;
import java.util.Deque;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

/**
 * {@code {"altitude": 1204.5, "gear": {"left": true}}}: JSON objects, one state each. What lies deeper is named by its
 * way there, {@code gear.left}; things in a list by their place, {@code flaps.0}.
 */
final class JsonForm implements Form {
    private final JsonFactory factory = new JsonFactory();
    private final StringBuilder path = new StringBuilder();
    private final Deque<Level> levels = new ArrayDeque<>();

    /** Where in the path a group began, and how many things it held so far if it is a list. */
    private static final class Level {
        private final int pathLength;
        private final boolean list;
        private int items;

        Level(int pathLength, boolean list) {
            this.pathLength = pathLength;
            this.list = list;
        }
    }

    @Override
    public String words() {
        return "text, JSON";
    }

    @Override
    public void read(Message message, Fields fields, StateSink sink) throws MalformedException {
        levels.clear();
        try (JsonParser parser =
                factory.createParser(ObjectReadContext.empty(), message.chars(), 0, message.charCount())) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token != JsonToken.START_OBJECT) {
                    throw new MalformedException("not a JSON object");
                }
                object(parser, fields);
                sink.take(fields.state());
            }
        } catch (JacksonException e) {
            throw new MalformedException("JSON that breaks off or is wrong");
        }
    }

    private void object(JsonParser parser, Fields fields) {
        fields.state().clear();
        path.setLength(0);
        levels.push(new Level(0, false));
        while (!levels.isEmpty()) {
            JsonToken token = parser.nextToken();
            if (token == JsonToken.PROPERTY_NAME) {
                path.setLength(levels.element().pathLength);
                join(parser.currentName());
                continue;
            }
            if (token == JsonToken.END_OBJECT || token == JsonToken.END_ARRAY) {
                levels.pop();
                continue;
            }
            Level level = levels.element();
            if (level.list) {
                path.setLength(level.pathLength);
                join(Integer.toString(level.items++));
            }
            if (token == JsonToken.START_OBJECT || token == JsonToken.START_ARRAY) {
                levels.push(new Level(path.length(), token == JsonToken.START_ARRAY));
            } else {
                value(parser, token, fields);
            }
        }
    }

    private void join(String name) {
        path.append(path.length() == 0 ? "" : ".").append(name);
    }

    private void value(JsonParser parser, JsonToken token, Fields fields) {
        if (token == JsonToken.VALUE_NULL) {
            return;
        }
        int name = fields.names().number(path.toString());
        switch (token) {
            case VALUE_TRUE -> fields.number(name, 1);
            case VALUE_FALSE -> fields.number(name, 0);
            default -> {
                String text = parser.getString();
                fields.text(name, text.toCharArray(), 0, text.length());
            }
        }
    }
}
