package dropline.scenarios.architecture;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;

/** Reads Java files with the compiler's own parser and tells each method's length in lines, braces included. */
final class MethodLengths {
    record Found(Path file, String type, String method, long lines, boolean isFact) {}

    private MethodLengths() {}

    static List<Found> of(List<Path> files) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager manager =
                compiler.getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8)) {
            JavacTask task = (JavacTask) compiler.getTask(
                    null, manager, null, List.of("-proc:none"), null, manager.getJavaFileObjectsFromPaths(files));
            SourcePositions positions = Trees.instance(task).getSourcePositions();
            List<Found> found = new ArrayList<>();
            for (CompilationUnitTree unit : task.parse()) {
                new Scanner(unit, positions, found).scan(unit, "");
            }
            return found;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static final class Scanner extends TreeScanner<@Nullable Void, String> {
        private final CompilationUnitTree unit;
        private final SourcePositions positions;
        private final List<Found> found;

        Scanner(CompilationUnitTree unit, SourcePositions positions, List<Found> found) {
            this.unit = unit;
            this.positions = positions;
            this.found = found;
        }

        @Override
        public @Nullable Void visitClass(ClassTree type, String outer) {
            return super.visitClass(type, type.getSimpleName().toString());
        }

        @Override
        public @Nullable Void visitMethod(MethodTree method, String type) {
            boolean isFact = method.getModifiers().getAnnotations().stream()
                    .anyMatch(annotation ->
                            annotation.getAnnotationType().toString().endsWith("Test"));
            found.add(new Found(
                    Path.of(unit.getSourceFile().toUri()),
                    type,
                    method.getName().toString(),
                    lines(method),
                    isFact));
            return super.visitMethod(method, type);
        }

        /** From the line of the name or first brace to the closing one; annotations and Javadoc count for nothing. */
        private long lines(MethodTree method) {
            if (method.getBody() == null) {
                return 1;
            }
            long start = positions.getStartPosition(unit, method.getBody());
            long end = positions.getEndPosition(unit, method.getBody());
            return unit.getLineMap().getLineNumber(end) - unit.getLineMap().getLineNumber(start) + 1;
        }
    }
}
