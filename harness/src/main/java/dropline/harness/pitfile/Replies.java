package dropline.harness.pitfile;

import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.sized.Sized.ReplyChoice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The reply of a sized protocol: one length, or lengths with their shares. */
final class Replies implements Type<List<ReplyChoice>> {
    private static final Type<Integer> LENGTH = Numbers.whole(1, 65535);
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    @Override
    public String words() {
        return "length in characters, or lengths with shares that add up to 100% ({8: 80%, 14: 20%})";
    }

    @Override
    public Form form() {
        Form share = new Form.Pattern(Quantity.pattern("%"));
        return new Form.Any(List.of(LENGTH.form(), new Form.Loose(Map.of("\\d+", share))));
    }

    @Override
    public Optional<List<ReplyChoice>> read(Tree tree, String key, Report report) {
        if (!(tree instanceof Tree.Mapping mapping)) {
            if (tree instanceof Tree.Scalar) {
                return LENGTH.read(tree, key, report).map(chars -> List.of(new ReplyChoice(chars, 1)));
            }
            report.at(tree, key, PitCode.WRONG_TYPE, words(), null);
            return Optional.empty();
        }
        List<ReplyChoice> choices = new ArrayList<>();
        BigDecimal sum = BigDecimal.ZERO;
        for (Tree.Entry entry : mapping.entries()) {
            Optional<Integer> chars = LENGTH.read(entry.key(), key, report);
            Optional<BigDecimal> share = share(entry.value(), key, report);
            if (chars.isEmpty() || share.isEmpty()) {
                return Optional.empty();
            }
            sum = sum.add(share.get());
            choices.add(
                    new ReplyChoice(chars.get(), share.get().movePointLeft(2).doubleValue()));
        }
        if (sum.compareTo(HUNDRED) != 0) {
            String found = "shares that add up to " + sum.toPlainString() + "%";
            report.at(tree, key, PitCode.OUT_OF_RANGE, found, "shares that add up to 100%", null);
            return Optional.empty();
        }
        return Optional.of(List.copyOf(choices));
    }

    private Optional<BigDecimal> share(Tree tree, String key, Report report) {
        Optional<Quantity> quantity =
                tree instanceof Tree.Scalar scalar ? Quantity.of(scalar.text()) : Optional.empty();
        if (quantity.isEmpty()) {
            report.at(tree, key, PitCode.WRONG_TYPE, "a share such as 80%", null);
            return Optional.empty();
        }
        if (!quantity.get().unit().equals("%")) {
            PitCode code = quantity.get().unit().isEmpty() ? PitCode.MISSING_UNIT : PitCode.WRONG_UNIT;
            report.at(tree, key, code, "a share in %, such as 80%", null);
            return Optional.empty();
        }
        BigDecimal percent = quantity.get().number();
        if (percent.signum() <= 0 || percent.compareTo(HUNDRED) > 0) {
            report.at(tree, key, PitCode.OUT_OF_RANGE, "a share above 0% and up to 100%", null);
            return Optional.empty();
        }
        return Optional.of(percent);
    }
}
