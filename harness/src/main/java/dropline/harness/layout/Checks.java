package dropline.harness.layout;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Numerals;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.Bytes;
import dropline.protocol.crc.Crc;
import dropline.protocol.crc.CrcCatalogue;
import dropline.protocol.crc.CrcParameters;
import dropline.protocol.custom.Checksum;
import dropline.protocol.custom.Checksum.Complement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Which check a frame carries: a sum, an exclusive-or, a CRC by name or by its parameters. */
final class Checks {
    private static final Bytes NINE = Bytes.of('1', '2', '3', '4', '5', '6', '7', '8', '9');
    private static final String EXPECTED = "sum8, sum16, xor8, the name of a CRC, or crc with its parameters beside it";
    private static final Map<String, Complement> COMPLEMENTS =
            Map.of("none", Complement.NONE, "ones", Complement.ONES, "twos", Complement.TWOS);
    private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);

    private final Report report;

    Checks(Report report) {
        this.report = report;
    }

    Optional<Checksum> read(Group group) {
        Optional<Tree.Scalar> name = group.needText("check", EXPECTED);
        if (name.isEmpty()) {
            return Optional.empty();
        }
        return switch (name.get().text().toLowerCase(Locale.ROOT)) {
            case "sum8" -> Optional.of(new Checksum.Sum(8, complement(group)));
            case "sum16" -> Optional.of(new Checksum.Sum(16, complement(group)));
            case "xor8" -> Optional.of(new Checksum.ExclusiveOr());
            case "crc" -> parameters(group).map(p -> new Checksum.Cyclic(new Crc(p)));
            default -> named(name.get()).map(p -> new Checksum.Cyclic(new Crc(p)));
        };
    }

    private static Complement complement(Group group) {
        return group.choice("complement", COMPLEMENTS).orElse(Complement.NONE);
    }

    private Optional<CrcParameters> named(Tree.Scalar name) {
        List<CrcParameters> meant = CrcCatalogue.mayMean(name.text());
        if (meant.size() == 1) {
            return Optional.of(meant.get(0));
        }
        if (meant.isEmpty()) {
            List<String> known = new ArrayList<>(List.of("sum8", "sum16", "xor8", "crc"));
            CrcCatalogue.all().forEach(crc -> known.add(crc.name()));
            String fix = Nearest.to(name.text(), known)
                    .map(near -> "write check: " + near)
                    .orElse("write check: crc and its width, polynomial, initial, reflect-in, reflect-out, final-xor");
            report.at(name, "check", LayoutCode.UNKNOWN_NAME, "a check: " + String.join(", ", known), fix);
            return Optional.empty();
        }
        StringBuilder expected = new StringBuilder("one of these, since makers call all of them so:");
        meant.forEach(crc -> expected.append("\n            ").append(words(crc)));
        String fix =
                "put the nine bytes \"123456789\" through your sketch's function and take the one that gives the same";
        report.at(name, "check", LayoutCode.AMBIGUOUS_CHECK, expected.toString(), fix);
        return Optional.empty();
    }

    /** A CRC for comparison: its name, its parameters, and what it makes of the nine bytes "123456789". */
    static String words(CrcParameters crc) {
        String digits = "%0" + crc.width() / 4 + "X";
        return String.format(
                Locale.ROOT,
                "%-16s  polynomial " + digits + "  initial " + digits + "  reflected %-3s  final-xor " + digits
                        + "  123456789 gives " + digits,
                crc.name(),
                crc.polynomial(),
                crc.initial(),
                crc.reflectIn() ? "yes" : "no",
                crc.finalXor(),
                new Crc(crc).of(NINE));
    }

    private Optional<CrcParameters> parameters(Group group) {
        int width = Numerals.whole(group, "width", 8, 32, 0);
        if (!group.has("width") || (width != 8 && width != 16 && width != 32)) {
            Tree at = group.get("width").orElse(group.place());
            report.at(at, "width", KeyCode.OUT_OF_RANGE, "width: 8, 16 or 32", null);
            width = 32;
        }
        long most = (1L << width) - 1;
        Optional<Long> polynomial = Numerals.needHex(group, "polynomial", most);
        Optional<Long> initial = Numerals.needHex(group, "initial", most);
        Optional<Boolean> in = yesNo(group, "reflect-in");
        Optional<Boolean> out = yesNo(group, "reflect-out");
        Optional<Long> xor = Numerals.needHex(group, "final-xor", most);
        if (polynomial.isEmpty() || initial.isEmpty() || in.isEmpty() || out.isEmpty() || xor.isEmpty()) {
            return Optional.empty();
        }
        if ((polynomial.get() & 1) == 0) {
            String fix = "write it most significant bit first; one that is even is probably written mirrored";
            report.at(group.get("polynomial").orElseThrow(), "polynomial", KeyCode.OUT_OF_RANGE, "an odd number", fix);
            return Optional.empty();
        }
        return Optional.of(
                new CrcParameters("crc", width, polynomial.get(), initial.get(), in.get(), out.get(), xor.get()));
    }

    private static Optional<Boolean> yesNo(Group group, String key) {
        return group.need(key, "yes or no").isEmpty() ? Optional.empty() : group.choice(key, YES_NO);
    }
}
