package dropline.harness.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.pitfile.PitFile;
import dropline.protocol.Bytes;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.FrameLayout;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds the three layouts that ship, and what the manual shows of them, to the code. */
final class WorkedExamplesTest {
    private static final boolean WRITE = Boolean.getBoolean("dropline.write-manual");
    private static final Path ROOT = root();
    private static final Path PAGE = ROOT.resolve("docs/custom-protocols.md");
    private static final Trial TRIAL = new Trial(7, 1, List.of(1L, 200L));

    @ParameterizedTest
    @ValueSource(strings = {"counted", "lines", "gaps"})
    void theManualShowsTheBytesOfTheExamples(String name) throws IOException {
        String made = "```\n" + LayoutText.of(layout(name), TRIAL) + "```\n";
        String text = Files.readString(PAGE);
        String begin = "<!-- " + name + " -->\n";
        int from = text.indexOf(begin) + begin.length();
        int to = text.indexOf("<!-- end of " + name + " -->");
        if (WRITE) {
            Files.writeString(PAGE, text.substring(0, from) + made + text.substring(to));
            return;
        }

        assertEquals(made, text.substring(from, to));
    }

    @ParameterizedTest
    @ValueSource(strings = {"counted", "lines", "gaps"})
    void theBytesShownAreReadBackAsTheFramesTheyAre(String name) throws IOException {
        Custom layout = layout(name);
        for (FrameLayout frame : layout.layout().frames()) {
            Bytes bytes = layout.encode(TRIAL.frame(layout, frame));

            Deciphered read = Deciphered.of(layout, List.of(bytes));

            assertTrue(read.allSound(), read::text);
            assertTrue(read.text().contains("\n    " + frame.kind().word()), read::text);
        }
    }

    /** By hand: the exclusive-or of "?07" is 3F ^ 30 ^ 37 = 38. */
    @Test
    void aLineOfTextIsWhatItsCommentSays() throws IOException {
        Custom lines = layout("lines");

        assertEquals(
                "3F 30 37 2A 33 38 0D 0A",
                lines.encode(new Trial(7, 1, List.of()).frame(lines, frame(lines, FrameLayout.Kind.REQUEST)))
                        .toString());
    }

    /** By hand: 87 + 01 + 00 + C8 + 00 = 150; the two's complement of its low byte is B0. */
    @Test
    void bareBytesAddUpToNothing() throws IOException {
        Custom gaps = layout("gaps");

        assertEquals(
                "87 01 00 C8 00 B0",
                gaps.encode(TRIAL.frame(gaps, frame(gaps, FrameLayout.Kind.REQUEST)))
                        .toString());
    }

    /** CRC-16/MODBUS of 10 07 00, bit by bit with polynomial A001 from FFFF, as the Modbus specification has it. */
    @Test
    void theCountedRequestCarriesTheCheckWorkedOutBitByBit() throws IOException {
        int crc = 0xFFFF;
        for (int next : new int[] {0x10, 0x07, 0x00}) {
            crc ^= next;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 1) == 0 ? crc >> 1 : crc >> 1 ^ 0xA001;
            }
        }
        Custom counted = layout("counted");

        Bytes bytes = counted.encode(TRIAL.frame(counted, frame(counted, FrameLayout.Kind.REQUEST)));

        assertEquals(Bytes.of(0xC3, 0x3C, 0x10, 0x07, 0x00, crc, crc >> 8), bytes);
    }

    @Test
    void thePaperRouteIsUnderstood() throws IOException {
        Matcher sized = Pattern.compile("sized: (\\{request.*})").matcher(Files.readString(PAGE));
        assertTrue(sized.find());
        String pit = """
                hubs: {centre: {adapter: native USB}}
                signals: {speed: {unit: kt, range: 0..300, number: 1}}
                segments:
                  left: {baud: 115.2 kbaud, protocol: sized, sized: %s, controller: {hub: centre}}
                nodes: {a: {segment: left, address: 1, profile: 8-bit loop}}
                panels: {p: {node: a, indicators: {lamp: {kind: lamp, shows: speed}}}}
                """.formatted(sized.group(1));

        PitFile.Result result = PitFile.parse("paper.yaml", pit);

        assertInstanceOf(PitFile.Understood.class, result, result::toString);
    }

    private static FrameLayout frame(Custom layout, FrameLayout.Kind kind) {
        return layout.layout().frame(kind).orElseThrow();
    }

    private static Custom layout(String name) throws IOException {
        String text = Files.readString(ROOT.resolve("scenarios/layouts/" + name + ".yaml"));
        LayoutFile.Result result = LayoutFile.parse(name + ".yaml", text);
        return assertInstanceOf(LayoutFile.Understood.class, result, result::toString)
                .protocol();
    }

    private static Path root() {
        Path here = Path.of("").toAbsolutePath();
        return Files.isDirectory(here.resolve("docs")) ? here : Objects.requireNonNull(here.getParent());
    }
}
