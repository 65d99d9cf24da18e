package dropline.harness.timeline;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A growing SVG text: elements, with what they say escaped and coordinates to a tenth. */
final class Svg {
    /** About how wide a letter is at a size of 1. */
    private static final double LETTER = 0.56;

    private final StringBuilder text = new StringBuilder();

    /** How much room words take, generously, at a size in pixels. */
    static double width(String words, double size) {
        return words.length() * LETTER * size;
    }

    Svg raw(String markup) {
        text.append(markup);
        return this;
    }

    Svg open(String element, String style) {
        text.append('<').append(element).append(" class=\"").append(style).append("\">");
        return this;
    }

    Svg close(String element) {
        text.append("</").append(element).append(">\n");
        return this;
    }

    Svg title(String words) {
        text.append("<title>").append(escaped(words)).append("</title>");
        return this;
    }

    Svg rect(String style, double x, double y, double width, double height, double round) {
        text.append("<rect class=\"").append(style).append("\" x=\"").append(tenth(x));
        text.append("\" y=\"").append(tenth(y)).append("\" width=\"").append(tenth(width));
        text.append("\" height=\"").append(tenth(height));
        if (round > 0) {
            text.append("\" rx=\"").append(tenth(round));
        }
        text.append("\"/>\n");
        return this;
    }

    Svg line(String style, double x, double y, double toX, double toY) {
        text.append("<line class=\"").append(style).append("\" x1=\"").append(tenth(x));
        text.append("\" y1=\"").append(tenth(y)).append("\" x2=\"").append(tenth(toX));
        text.append("\" y2=\"").append(tenth(toY)).append("\"/>\n");
        return this;
    }

    Svg path(String style, String path) {
        text.append("<path class=\"")
                .append(style)
                .append("\" d=\"")
                .append(path)
                .append("\"/>\n");
        return this;
    }

    /** Words that begin at, end at, or are centred on a place: anchor start, end or middle. */
    Svg words(String style, String anchor, double x, double y, String words) {
        text.append("<text class=\"").append(style).append("\" x=\"").append(tenth(x));
        text.append("\" y=\"").append(tenth(y));
        if (!anchor.equals("start")) {
            text.append("\" text-anchor=\"").append(anchor);
        }
        text.append("\">").append(escaped(words)).append("</text>\n");
        return this;
    }

    static String tenth(double value) {
        return BigDecimal.valueOf(value)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String escaped(String words) {
        StringBuilder safe = new StringBuilder();
        for (int i = 0; i < words.length(); i++) {
            char letter = words.charAt(i);
            switch (letter) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.append(letter < ' ' ? ' ' : letter);
            }
        }
        return safe.toString();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
