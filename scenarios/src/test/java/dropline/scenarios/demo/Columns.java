package dropline.scenarios.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleSupplier;

/** The columns of the recording: a name, its decimals and where the value comes from. */
final class Columns {
    private final List<Column> columns = new ArrayList<>();

    record Column(String name, int decimals, DoubleSupplier value) {}

    /** Every column of a flight, in the order of the recording. */
    static Columns of(Flight flight) {
        Columns columns = new Columns();
        PathColumns.add(columns, flight);
        EngineColumns.add(columns, flight, flight.engine1, 1, "left");
        EngineColumns.add(columns, flight, flight.engine2, 2, "right");
        SystemColumns.add(columns, flight);
        RadioColumns.add(columns, flight);
        LampColumns.add(columns, flight);
        return columns;
    }

    void add(String name, int decimals, DoubleSupplier value) {
        columns.add(new Column(name, decimals, value));
    }

    /** An angle that wraps: rounded, then brought back below 360. */
    void turn(String name, int decimals, DoubleSupplier value) {
        add(name, decimals, () -> rounded(value.getAsDouble(), decimals) % 360);
    }

    /** A flag: 1 on, 0 off. */
    void lamp(String name, BooleanSupplier on) {
        add(name, 0, () -> on.getAsBoolean() ? 1 : 0);
    }

    List<Column> list() {
        return List.copyOf(columns);
    }

    /** The values now, rounded to their decimals. */
    void read(double[] values) {
        for (int i = 0; i < values.length; i++) {
            Column column = columns.get(i);
            values[i] = rounded(column.value.getAsDouble(), column.decimals);
        }
    }

    /** Rounded half to even; a negative zero becomes a plain one. */
    static double rounded(double value, int decimals) {
        double scale = 1;
        for (int d = 0; d < decimals; d++) {
            scale *= 10;
        }
        return StrictMath.rint(value * scale) / scale + 0.0;
    }
}
