package dropline.scenarios.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Links between the pages of the manual, the README and their headings. */
final class ManualLinksTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]*)(?:#([^)\\s]*))?\\)");
    private static final Pattern HEADING = Pattern.compile("(?m)^#+ (.*)$");
    private static final Pattern CODE = Pattern.compile("(?ms)^```.*?^```$|`[^`\\n]*`");
    private static final Pattern NOT_IN_AN_ANCHOR = Pattern.compile("[^\\p{L}\\p{N}_\\- ]");

    @Test
    void everyLinkLeadsToAPageAndAHeadingThatAreThere() {
        List<Path> pages = Sources.texts().stream()
                .filter(path -> path.toString().endsWith(".md"))
                .toList();
        int links = 0;
        List<String> broken = new ArrayList<>();
        for (Path page : pages) {
            String text = CODE.matcher(text(page)).replaceAll("");
            for (MatchResult link : LINK.matcher(text).results().toList()) {
                if (!link.group(1).startsWith("http")) {
                    links++;
                    if (!leadsSomewhere(page, link.group(1), link.group(2))) {
                        broken.add(Sources.name(page) + ": " + link.group());
                    }
                }
            }
        }

        assertEquals(List.of(), broken);
        int found = links;
        assertTrue(found > 100, () -> "links found: " + found);
    }

    private static boolean leadsSomewhere(Path page, String file, String heading) {
        Path target = file.isEmpty() ? page : page.resolveSibling(file).normalize();
        return Files.exists(target)
                && (heading == null
                        || HEADING.matcher(text(target))
                                .results()
                                .anyMatch(found -> anchor(found.group(1)).equals(heading)));
    }

    /** As Git hosts make it of a heading. */
    private static String anchor(String heading) {
        return NOT_IN_AN_ANCHOR
                .matcher(heading.strip().toLowerCase(Locale.ROOT))
                .replaceAll("")
                .replace(' ', '-');
    }

    private static String text(Path page) {
        return String.join("\n", Sources.lines(page));
    }
}
