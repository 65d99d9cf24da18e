package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Node;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class IncludesTest {
    private static final String MORE = """
            nodes:
              c: {segment: left, address: 3, like: gauge}
            panels:
              second: {node: c, indicators: {readout: {kind: lamp, shows: airspeed}}}
            kinds:
              nodes:
                gauge: {profile: {like: 8-bit loop, boot: 4 s}}
            """;

    @TempDir
    Path folder;

    @Test
    void partsOfAnIncludedFileCountAsIfTheyWereWrittenWhereTheIncludeStands() throws IOException {
        write("left/more.yaml", MORE);
        PitFile.Understood pit = understood("include: left/more.yaml\n" + PitText.SMALL);

        assertEquals(List.of("c", "a", "b"), nodes(pit));
        assertEquals(
                4_000_000_000L,
                pit.pit().segments().get(0).nodes().get(0).profile().bootNanos());
    }

    @Test
    void pathsCountFromTheIncludingFileAndMayBeWrittenWithBackslashes() throws IOException {
        write("left/more.yaml", "include: ['..\\right\\kinds.yaml']\n" + MORE.substring(0, MORE.indexOf("kinds:")));
        write("right/kinds.yaml", MORE.substring(MORE.indexOf("kinds:")));

        assertEquals(List.of("a", "b", "c"), nodes(understood(PitText.SMALL + "include: [left\\more.yaml]\n")));
    }

    @Test
    void aFileIncludedTwiceIsReadOnce() throws IOException {
        write("more.yaml", MORE);
        write("other.yaml", "include: more.yaml\n");

        assertEquals(List.of("c", "a", "b"), nodes(understood("include: [more.yaml, other.yaml]\n" + PitText.SMALL)));
    }

    @Test
    void carriageReturnsAndAByteOrderMarkDoNoHarm() throws IOException {
        write("more.yaml", "\uFEFF" + MORE.replace("\n", "\r\n"));

        assertEquals(
                3,
                nodes(understood("include: more.yaml\r\n" + PitText.SMALL.replace("\n", "\r\n")))
                        .size());
    }

    @Test
    void aProblemNamesTheFileItStandsIn() throws IOException {
        write("more.yaml", MORE.replace("address: 3", "address: 1").replace("boot", "bot"));

        assertEquals("""
                MORE:2:31: address: ADDRESS_CLASH
                  found:    1
                  expected: an address that no other node on segment left has
                  fix:      give one of them another address; a in line 11 of MAIN has it too

                MORE:7:41: bot: UNKNOWN_KEY
                  found:    bot
                  expected: a key known under profile: like, source, replies-from, reply-gap, enable-lead, \
                release-tail, loop-pass, fifo, ring, boot, clock, ticks-per-bit and 5 more
                  fix:      write boot:
                """, text(PitText.SMALL + "include: more.yaml\n"));
    }

    @Test
    void aNameInTwoFilesIsToldWithBoth() throws IOException {
        write("more.yaml", MORE.replace("  c:", "  b:"));

        String text = text(PitText.SMALL + "include: more.yaml\n");

        assertTrue(text.contains("MORE:2:3: b: DUPLICATE_NAME"), text);
        assertTrue(text.contains("the first is in line 12 of MAIN"), text);
    }

    @Test
    void whatStandsOnceInAPitStandsInOneFileOnly() throws IOException {
        write("more.yaml", "pit: other\nhost: {state-rate: 10 Hz}\n");

        assertEquals(
                List.of("DUPLICATE_KEY", "DUPLICATE_KEY"),
                problems("pit: one\nhost: {state-rate: 20 Hz}\n" + PitText.SMALL + "include: more.yaml\n").stream()
                        .map(Problem::code)
                        .toList());
    }

    @Test
    void filesThatIncludeEachOtherAreRefusedWithTheRing() throws IOException {
        write("more.yaml", "include: pit.yaml\n" + MORE);

        assertEquals("""
                MORE:1:10: include: CIRCULAR
                  found:    pit.yaml
                  expected: files that do not include each other in a ring: MAIN, MORE, MAIN
                  fix:      delete this include
                """, text(PitText.SMALL + "include: more.yaml\n"));
    }

    @Test
    void aMissingIncludeIsToldWhereItIsWrittenAndNothingElseIs() throws IOException {
        String text = text(
                PitText.SMALL.replace("profile: 32-bit", "profile: from elsewhere") + "include: [missing.yaml, .]\n");

        assertEquals("""
                MAIN:24:11: include: NO_SUCH_FILE
                  found:    missing.yaml, where there is nothing
                  expected: the path of a pit file
                  fix:      check the path; it counts from the folder of the file it stands in

                MAIN:24:25: include: NO_SUCH_FILE
                  found:    ., where there is a directory
                  expected: the path of a pit file
                  fix:      check the path; it counts from the folder of the file it stands in
                """, text);
    }

    @Test
    void aNameThatNoFileCanHaveIsNoSuchFile() throws IOException {
        assertEquals(
                "NO_SUCH_FILE",
                problems(PitText.SMALL + "include: \"a\\0b\"\n").get(0).code());
    }

    @Test
    void aValueOfAnIncludedFileIsPatchedThere() throws IOException {
        write("more.yaml", MORE);
        PitTree tree = understood(PitText.SMALL + "include: more.yaml\n").tree();
        Files.delete(folder.resolve("more.yaml"));

        PitFile.Understood patched =
                assertInstanceOf(PitFile.Understood.class, tree.with("kinds.nodes.gauge.profile.boot", "5 s"));

        Node c = patched.pit().segments().get(0).nodes().get(2);
        assertEquals(5_000_000_000L, c.profile().bootNanos());
        assertEquals(
                MORE.replace("4 s", "5 s"),
                patched.tree().texts().get(folder.resolve("more.yaml").toString()));
        assertEquals(Optional.of("3"), patched.tree().get("nodes.c.address").map(PitTree.Value::text));
    }

    private void write(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    private PitFile.Result read(String text) throws IOException {
        write("pit.yaml", text);
        return PitFile.read(folder.resolve("pit.yaml"));
    }

    private PitFile.Understood understood(String text) throws IOException {
        PitFile.Result result = read(text);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString);
    }

    private List<Problem> problems(String text) throws IOException {
        return assertInstanceOf(PitFile.Wrong.class, read(text)).problems();
    }

    private String text(String text) throws IOException {
        return Problems.text(problems(text))
                .replace(folder.resolve("pit.yaml").toString(), "MAIN")
                .replace(folder.resolve("more.yaml").toString(), "MORE");
    }

    private static List<String> nodes(PitFile.Understood pit) {
        return pit.pit().segments().get(0).nodes().stream().map(Node::name).toList();
    }
}
