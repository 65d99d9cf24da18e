package dropline.harness.timeline;

/** What the shapes of the drawing mean. */
final class Legend {
    private static final double GAP = 22;

    private Legend() {}

    /** Draws it in two lines; returns where it ends below. */
    static double draw(Svg svg, double left, double top) {
        double x = left;
        double y = top;
        x = box(svg, "request", 0, x, y, "request");
        x = box(svg, "reply", 6, x, y, "reply (round)");
        x = box(svg, "broadcast", 0, x, y, "broadcast (double edge)");
        svg.rect("driver", x, y + 4, 26, 5, 0);
        x = said(svg, x, y, "driver enabled");
        svg.path("fold", fold(x + 13, y + 6));
        said(svg, x, y, "nobody drives, or nothing changes: not to scale");
        x = left;
        y += 19;
        x = box(svg, "clash", 0, x, y, "clash: two drivers at once");
        x = box(svg, "cut", 0, x, y, "cut: sent while the driver was off");
        svg.path("sign", sign(x + 13, y + 6));
        svg.words("lost", "middle", x + 13, y + 9.5, "!");
        said(svg, x, y, "received wrong, or lost: see the table");
        return y + 16;
    }

    /** A triangle that stands on its tip. */
    static String sign(double x, double y) {
        return "M" + Svg.tenth(x - 6) + " " + Svg.tenth(y - 5) + "h12l-6 10z";
    }

    /** Two strokes through a line. */
    static String fold(double x, double y) {
        return "M" + Svg.tenth(x - 4) + " " + Svg.tenth(y + 5) + "l4 -10m4 0l-4 10";
    }

    private static double box(Svg svg, String style, double round, double x, double y, String words) {
        svg.rect(style, x, y, 26, 12, round);
        if (style.equals("broadcast")) {
            svg.rect("double", x - 2.5, y - 2.5, 31, 17, 0);
        }
        return said(svg, x, y, words);
    }

    private static double said(Svg svg, double x, double y, String words) {
        svg.words("", "start", x + 31, y + 10, words);
        return x + 31 + words.length() * 5.1 + GAP;
    }
}
