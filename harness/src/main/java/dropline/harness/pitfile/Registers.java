package dropline.harness.pitfile;

import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;

/** A register map: the name of a signal, then the register it lies in. */
final class Registers implements Type<Registers.Map> {
    private static final Type<Integer> ADDRESS = Numbers.whole(0, 65535);

    /** A register map as written. */
    record Map(List<Line> lines) {
        Map {
            lines = List.copyOf(lines);
        }
    }

    /** One line of it. */
    record Line(Tree.Scalar signal, int address) {}

    @Override
    public String words() {
        return "signal: register address, 0..65535, one on each line";
    }

    @Override
    public Form form() {
        return new Form.Named(words(), ADDRESS.form());
    }

    @Override
    public Optional<Map> read(Tree tree, String key, Report report) {
        if (!(tree instanceof Tree.Mapping mapping)) {
            report.at(tree, key, PitCode.WRONG_TYPE, words(), null);
            return Optional.empty();
        }
        List<Line> lines = new ArrayList<>();
        java.util.Map<String, Tree.Scalar> seen = new LinkedHashMap<>();
        boolean good = true;
        for (Tree.Entry entry : mapping.entries()) {
            Tree.Scalar earlier = seen.putIfAbsent(entry.key().text(), entry.key());
            if (earlier != null) {
                String first = "delete one of the two; the first is in " + earlier.line(entry.key());
                report.at(entry.key(), entry.key().text(), PitCode.DUPLICATE_NAME, "each signal once", first);
                good = false;
            }
            Optional<Integer> address = ADDRESS.read(entry.value(), entry.key().text(), report);
            address.ifPresent(a -> lines.add(new Line(entry.key(), a)));
            good &= address.isPresent();
        }
        return good ? Optional.of(new Map(lines)) : Optional.empty();
    }
}
