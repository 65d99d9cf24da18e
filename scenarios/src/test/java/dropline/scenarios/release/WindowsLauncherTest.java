package dropline.scenarios.release;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What can be known of the Windows launcher on any machine, by reading it. */
final class WindowsLauncherTest {
    private static final Pattern LABEL = Pattern.compile("(?m)^:(\\w+)");
    private static final Pattern JUMP = Pattern.compile("(?:goto |call :)(\\w+)");
    private static final Pattern MAVEN_ARGUMENTS = Pattern.compile("-q -B -DskipTests .*? package");
    private static final Pattern START = Pattern.compile("(?s)java\\.options\" .*? (dropline[\\w.]+Main) ");

    private String windows = "";
    private String shell = "";

    @BeforeEach
    void read() throws IOException {
        windows = Files.readString(Path.of("../dropline.cmd"));
        shell = Files.readString(Path.of("../dropline"));
    }

    @Test
    void everyJumpHasItsLabelAndEveryLabelIsUsed() {
        assertEquals(all(LABEL, windows), all(JUMP, windows));
    }

    @Test
    void bothLaunchersBuildTheSame() {
        assertEquals(first(MAVEN_ARGUMENTS, shell, 0), first(MAVEN_ARGUMENTS, windows, 0));
    }

    @Test
    void bothLaunchersStartTheSame() {
        assertEquals(first(START, shell, 1), first(START, windows, 1));
    }

    @Test
    void javaAndTheApplicationAreToldOfOneArchiveOfClasses() {
        String start = windows.lines()
                .filter(line -> line.startsWith("\"%JAVA_EXE%\" \"@"))
                .findFirst()
                .orElseThrow();

        assertTrue(start.contains("\"-XX:SharedArchiveFile=%ARCHIVE%\" \"-Ddropline.archive=%ARCHIVE%\""), start);
        assertTrue(windows.contains("set \"ARCHIVE=%LocalAppData%\\Dropline\\"), windows);
    }

    @Test
    void everyLineIsPlainAscii() {
        assertTrue(windows.chars().allMatch(c -> c < 128), "the console's code page is not known");
    }

    private static Set<String> all(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(found -> found.group(1).toLowerCase(Locale.ROOT))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String first(Pattern pattern, String text, int group) {
        return pattern.matcher(text)
                .results()
                .findFirst()
                .map((MatchResult found) -> found.group(group))
                .orElseThrow();
    }
}
