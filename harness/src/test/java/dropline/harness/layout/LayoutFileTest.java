package dropline.harness.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.harness.problem.Problem;
import java.util.List;
import org.junit.jupiter.api.Test;

final class LayoutFileTest {
    private static final String MISSPELT = """
            framing: length
            frames:
              request:
                - bytes: C3 3C
                - adress: uint8
                  plus: 128
                - {name: size, lenght: uint8, of: payload, plus: 1}
                - {name: what}
                - {}
              reply:
                - bytes: C3 3C
                - address: uint8
                - controls:
                    - numbre: uint8
                      plus: 1
                    - value: int16
            """;

    @Test
    void aMisspeltFieldIsToldAloneAndNotTheRightKeysBesideIt() {
        List<Problem> problems = problems(MISSPELT);

        assertEquals(
                List.of(
                        "5:7 adress UNKNOWN_KEY write address:",
                        "7:20 lenght UNKNOWN_KEY write length:",
                        "8:8 name UNKNOWN_KEY see docs/custom-protocols.md for what there is",
                        "9:7 request WRONG_TYPE null",
                        "14:11 numbre UNKNOWN_KEY write number:"),
                problems.stream()
                        .map(problem -> problem.line() + ":" + problem.column() + " " + problem.key() + " "
                                + problem.code() + " " + problem.fix())
                        .toList());
    }

    @Test
    void aFileOfAnotherSortIsToldInOneProblem() {
        assertEquals(
                List.of("dropline describe reads it"),
                fixes("pit: Dunlin\nhubs:\n  centre: {}\nsignals:\n  a: {number: 1}\nsegments:\n  left: {}\n"));
        assertEquals(
                List.of("dropline record --datagram reads it"),
                fixes("order: little\ndatagram:\n  - signal: a\n    as: uint8\n"));
        assertEquals(List.of("name it under include: in a pit file"), fixes("signals:\n  a: {number: 1}\n"));
    }

    private static List<String> fixes(String text) {
        return problems(text).stream()
                .map(problem -> String.valueOf(problem.fix()))
                .toList();
    }

    private static List<Problem> problems(String text) {
        return assertInstanceOf(LayoutFile.Wrong.class, LayoutFile.parse("l.yaml", text))
                .problems();
    }
}
