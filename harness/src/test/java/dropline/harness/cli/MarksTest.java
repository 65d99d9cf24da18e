package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.StringReader;
import org.junit.jupiter.api.Test;

final class MarksTest {
    @Test
    void eachTypedMIsOneMark() {
        Marks marks = new Marks();

        marks.read(new StringReader("m\n M \nsomething else\n\nm"));

        assertEquals(3, marks.count());
    }
}
