package dropline.harness.power;

import dropline.bus.rule.Unit;
import dropline.bus.supply.State;
import dropline.harness.ruling.Amounts;
import java.util.ArrayList;
import java.util.List;

/**
 * The supplies and their runs, a line each, as thick as what flows in a lamp test; boards hang from it as drops.
 *
 * @param height of the drawing
 */
public record TreeDrawing(List<Branch> branches, int height) {
    /** Inner width. */
    public static final int WIDTH = 900;

    private static final int ROW = 62;
    private static final int INDENT = 46;
    private static final int LEFT = 10;
    private static final double THICK = 9;

    /**
     * A supply, or a run.
     *
     * @param x where its line begins; it begins at {@code fromY} of what feeds it
     * @param y where its line lies
     * @param thick how thick it is
     */
    public record Branch(String words, int x, int y, int fromY, double thick, List<Drop> drops) {
        public Branch {
            drops = List.copyOf(drops);
        }
    }

    /**
     * A board.
     *
     * @param mark how it stands: a class of the style sheet
     * @param words its name and volts
     */
    public record Drop(double x, String mark, String words) {}

    public TreeDrawing {
        branches = List.copyOf(branches);
    }

    static TreeDrawing of(PowerResult result) {
        double most = result.points().stream()
                .mapToDouble(point -> point.amps(State.LAMP_TEST))
                .filter(amps -> !Double.isNaN(amps))
                .max()
                .orElse(1);
        List<Branch> branches = new ArrayList<>();
        int[] above = new int[result.points().size() + 1];
        for (int i = 0; i < result.points().size(); i++) {
            PowerResult.Point point = result.points().get(i);
            int y = 30 + i * ROW;
            above[point.depth()] = y;
            double amps = point.amps(State.LAMP_TEST);
            double thick = Double.isNaN(amps) || most == 0 ? 1 : Math.max(1, THICK * amps / most);
            int x = LEFT + point.depth() * INDENT;
            branches.add(new Branch(
                    words(point),
                    x,
                    y,
                    point.isSupply() ? y : above[point.depth() - 1],
                    Math.round(thick * 10) / 10.0,
                    drops(result, point, x)));
        }
        return new TreeDrawing(branches, 30 + result.points().size() * ROW);
    }

    private static String words(PowerResult.Point point) {
        String flows = Amounts.of(point.amps(State.LAMP_TEST), Unit.AMPERES) + " in a lamp test";
        return point.isSupply()
                ? point.name() + ": " + Amounts.of(point.volts(), Unit.VOLTS)
                        + (point.ratingAmps() > 0 ? ", " + Amounts.of(point.ratingAmps(), Unit.AMPERES) : "") + "; "
                        + flows
                : point.name() + ": " + point.wire() + ", " + Amounts.of(point.metres(), Unit.METRES) + " one way, "
                        + Amounts.of(point.ohms(), Unit.OHMS) + " there and back; " + flows;
    }

    private static List<Drop> drops(PowerResult result, PowerResult.Point point, int from) {
        List<PowerResult.Board> boards = result.boards().stream()
                .filter(board -> board.fedBy().equals(point.name()))
                .toList();
        List<Drop> drops = new ArrayList<>();
        for (int i = 0; i < boards.size(); i++) {
            PowerResult.Board board = boards.get(i);
            boolean known = board.worksDownTo() > 0;
            boolean fails = board.backFed() || (known && board.volts() < board.worksDownTo());
            String mark = fails ? "mark-fail" : known ? "mark-pass" : "mark-undecided";
            double x = from + 30 + (double) (WIDTH - from - 50) * i / Math.max(1, boards.size());
            drops.add(new Drop(
                    Math.round(x * 10) / 10.0,
                    mark,
                    board.name() + ": " + Amounts.of(board.volts(), Unit.VOLTS) + " "
                            + board.when().when()));
        }
        return drops;
    }
}
