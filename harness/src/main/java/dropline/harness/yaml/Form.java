package dropline.harness.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** How a value may be written, as far as that can be said without looking elsewhere: what a schema is made of. */
public sealed interface Form {

    /** Any piece of text, a number or a word among them. */
    record Text() implements Form {}

    /** Text of a form. {@code pattern} is a regular expression for all of it, in what Java and ECMA-262 share. */
    record Pattern(String pattern) implements Form {}

    /** One of some words. */
    record Choice(List<String> words) implements Form {
        public Choice {
            words = List.copyOf(words);
        }
    }

    /** True or false, as YAML has them. */
    record Flag() implements Form {}

    /** A whole number within bounds. */
    record Whole(long least, long most) implements Form {}

    /** A number. */
    record Decimal() implements Form {}

    /** A list of at least so many. */
    record Items(Form each, int least) implements Form {}

    /** Any of several. */
    record Any(List<Form> forms) implements Form {
        public Any {
            forms = List.copyOf(forms);
        }
    }

    /** Keys that belong together; no others may stand beside them. */
    record Keys(String doc, List<Entry> entries) implements Form {
        public Keys {
            entries = List.copyOf(entries);
        }

        /** Whether a key may stand there. */
        boolean has(String name) {
            return entries.stream().anyMatch(entry -> entry.name().equals(name));
        }
    }

    /** A group whose keys are names that people choose. */
    record Named(String doc, Form each) implements Form {}

    /** Keys that hold numbers or texts, whatever they are called. */
    record Loose(Map<String, Form> patterns) implements Form {
        public Loose {
            patterns = Map.copyOf(patterns);
        }
    }

    /**
     * A key.
     *
     * @param required whether it must be there
     * @param doc one line, for people
     */
    record Entry(String name, Form form, boolean required, String doc) {
        /** A key that must be there. */
        public static Entry required(String name, Form form, String doc) {
            return new Entry(name, form, true, doc);
        }

        /** A key that may be left out. */
        public static Entry optional(String name, Form form, String doc) {
            return new Entry(name, form, false, doc);
        }
    }

    /** Any piece of text. */
    static Form text() {
        return new Text();
    }

    /** One of some words. */
    static Form choice(String... words) {
        return new Choice(List.of(words));
    }

    /** A piece of text, or a list of them. */
    static Form texts() {
        return new Any(List.of(new Text(), new Items(new Text(), 1)));
    }

    /** Keys that belong together. */
    static Keys keys(String doc, Entry... entries) {
        return new Keys(doc, List.of(entries));
    }

    /** The same keys and some more. */
    static Keys more(Keys keys, String doc, Entry... further) {
        List<Entry> all = new ArrayList<>(keys.entries());
        all.addAll(List.of(further));
        return new Keys(doc, all);
    }
}
