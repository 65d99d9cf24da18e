package dropline.harness.pitfile;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.CharacterFormat;
import dropline.protocol.CharacterFormat.Parity;
import dropline.protocol.FirmwareVersion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Types whose values are words. */
final class Words {
    private static final Pattern FORMAT = Pattern.compile("([5-9])([NEO])([12])");

    private Words() {}

    /** Any text. */
    static Type<String> text(String words) {
        return new Type.OfText<>(words) {
            @Override
            Optional<String> readText(Tree.Scalar text, String key, Report report) {
                return Optional.of(text.text());
            }
        };
    }

    /** A name, or a list of names; keeps their places. */
    static Type<List<Tree.Scalar>> names(String words) {
        return new Names(words);
    }

    /** One of the given words. */
    static <T> Type<T> choice(Choices<T> choices) {
        Map<String, T> known = choices.words;
        return new Type.OfText<>(String.join(", ", known.keySet())) {
            @Override
            public Form form() {
                return new Form.Choice(List.copyOf(known.keySet()));
            }

            @Override
            Optional<T> readText(Tree.Scalar text, String key, Report report) {
                T value = known.get(text.text());
                if (value == null) {
                    String fix = Nearest.to(text.text(), known.keySet())
                            .map(n -> "write " + key + ": " + n)
                            .orElse(null);
                    report.at(text, key, PitCode.WRONG_TYPE, "one of: " + words(), fix);
                }
                return Optional.ofNullable(value);
            }
        };
    }

    /** Yes or no. */
    static Type<Boolean> yesNo() {
        return choice(new Choices<Boolean>().with("yes", true).with("no", false));
    }

    /** A character format such as 8N1. */
    static Type<CharacterFormat> format() {
        return new Type.OfText<>("data bits, parity and stop bits: 8N1, 8E1, 8N2") {
            @Override
            public Form form() {
                // YAML takes 8E1 for a number
                return new Form.Any(List.of(new Form.Pattern(FORMAT.pattern()), new Form.Decimal()));
            }

            @Override
            Optional<CharacterFormat> readText(Tree.Scalar text, String key, Report report) {
                Matcher matcher = FORMAT.matcher(text.text());
                if (!matcher.matches()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), "write " + key + ": 8N1 if you do not know");
                    return Optional.empty();
                }
                Parity parity =
                        switch (matcher.group(2)) {
                            case "E" -> Parity.EVEN;
                            case "O" -> Parity.ODD;
                            default -> Parity.NONE;
                        };
                return Optional.of(new CharacterFormat(
                        Integer.parseInt(matcher.group(1)), parity, Integer.parseInt(matcher.group(3))));
            }
        };
    }

    /** A firmware's version, such as 1.4. */
    static Type<FirmwareVersion> firmware() {
        return new Type.OfText<>("a version of two numbers 0..255, as 1.4") {
            @Override
            Optional<FirmwareVersion> readText(Tree.Scalar text, String key, Report report) {
                Optional<FirmwareVersion> version = FirmwareVersion.parse(text.text());
                if (version.isEmpty()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), "write " + key + ": 1.0");
                }
                return version;
            }
        };
    }

    /** Words and what they stand for, in the order in which a person should see them. */
    static final class Choices<T> {
        private final Map<String, T> words = new LinkedHashMap<>();

        Choices<T> with(String word, T value) {
            words.put(word, value);
            return this;
        }

        Map<String, T> words() {
            return words;
        }
    }

    private record Names(String words) implements Type<List<Tree.Scalar>> {
        @Override
        public Form form() {
            return Form.texts();
        }

        @Override
        public Optional<List<Tree.Scalar>> read(Tree tree, String key, Report report) {
            List<Tree> parts = tree instanceof Tree.Sequence list ? list.items() : List.of(tree);
            List<Tree.Scalar> names = new ArrayList<>();
            for (Tree part : parts) {
                if (part instanceof Tree.Scalar name && !name.isNothing()) {
                    names.add(name);
                } else {
                    report.at(part, key, PitCode.WRONG_TYPE, words, null);
                    return Optional.empty();
                }
            }
            if (names.isEmpty()) {
                report.at(tree, key, PitCode.WRONG_TYPE, words, null);
                return Optional.empty();
            }
            return Optional.of(names);
        }
    }
}
