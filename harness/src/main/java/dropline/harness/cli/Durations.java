package dropline.harness.cli;

import dropline.harness.pitfile.Lengths;
import java.util.OptionalLong;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** An option's length of time, as {@link Lengths} reads it; in ns. */
final class Durations implements ITypeConverter<Long> {
    @Override
    public Long convert(String text) {
        return parseNanos(text);
    }

    static long parseNanos(String text) {
        OptionalLong nanos = Lengths.nanos(text);
        if (nanos.isEmpty()) {
            throw new TypeConversionException(
                    "'" + text + "' is no length of time; write it with its unit, as in 90s, 2m30s or 1h");
        }
        return nanos.getAsLong();
    }
}
