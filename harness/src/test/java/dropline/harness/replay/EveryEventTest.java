package dropline.harness.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceSink;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** What passes events on passes all of them on. */
final class EveryEventTest {

    @Test
    void everyEventIsWrittenWithAllItsNumbersAndDocumented() throws Exception {
        Path project = Path.of("").toAbsolutePath();
        Path root = Files.exists(project.resolve("README.md")) ? project : project.resolve("..");
        String page = Files.readString(root.resolve("docs/trace-format.md"));
        for (Method event : events()) {
            SegmentText text = new SegmentText(4);
            Object[] numbers = numbers(event);

            event.invoke(text, numbers);

            String name = event.getName().replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
            StringBuilder expected = new StringBuilder(numbers[0] + " 4 " + name);
            Arrays.stream(numbers)
                    .skip(1)
                    .forEach(number -> expected.append(' ').append(number));
            assertEquals(expected + "\n", written(text));
            assertTrue(page.contains("| `" + name + "` |"), name);
        }
    }

    @Test
    void everyEventReachesBothSinks() throws Exception {
        for (Method event : events()) {
            List<String> heard = new ArrayList<>();
            InvocationHandler notes =
                    (proxy, method, arguments) -> heard.add(method.getName() + Arrays.toString(arguments));
            TraceSink sink = (TraceSink)
                    Proxy.newProxyInstance(TraceSink.class.getClassLoader(), new Class<?>[] {TraceSink.class}, notes);
            Object[] numbers = numbers(event);

            event.invoke(new Both(sink, sink), numbers);

            String expected = event.getName() + Arrays.toString(numbers);
            assertEquals(List.of(expected, expected), heard);
        }
    }

    private static List<Method> events() {
        List<Method> events = Arrays.stream(TraceSink.class.getDeclaredMethods())
                .filter(Method::isDefault)
                .sorted(Comparator.comparing(Method::getName))
                .toList();
        assertTrue(events.size() > 20, () -> "events=" + events);
        return events;
    }

    private static Object[] numbers(Method event) {
        Class<?>[] types = event.getParameterTypes();
        Object[] numbers = new Object[types.length];
        for (int i = 0; i < types.length; i++) {
            if (types[i] == long.class) {
                numbers[i] = 10L + i;
            } else {
                numbers[i] = 10 + i;
            }
        }
        return numbers;
    }

    private static String written(SegmentText text) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        text.take(out);
        return out.toString(StandardCharsets.UTF_8);
    }
}
