package dropline.harness.listen;

import java.io.BufferedReader;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.StringTokenizer;
import org.jspecify.annotations.Nullable;

/** The edges of one wire of a VCD file (IEEE 1364-2005, clause 18). Unknown and floating levels count as idle, 1. */
final class VcdEdges implements Edges {
    private static final Map<String, Integer> POWERS = Map.of("s", 9, "ms", 6, "us", 3, "ns", 0, "ps", -3, "fs", -6);

    private final Path file;
    private final BufferedReader in;
    private StringTokenizer tokens = new StringTokenizer("");
    private int line;
    private BigDecimal unitNanos = BigDecimal.ONE;
    private String code = "";
    private long nanos;
    private int level = 1;

    private VcdEdges(Path file, BufferedReader in) {
        this.file = file;
        this.in = in;
    }

    static VcdEdges open(Path file, @Nullable String wire) throws IOException {
        VcdEdges edges = new VcdEdges(file, Files.newBufferedReader(file, StandardCharsets.UTF_8));
        try {
            edges.head(wire);
        } catch (IOException wrong) {
            edges.close();
            throw wrong;
        }
        return edges;
    }

    private void head(@Nullable String wire) throws IOException {
        List<String> names = new ArrayList<>();
        List<String> codes = new ArrayList<>();
        for (String token = token(); !token.equals("$enddefinitions"); token = token()) {
            if (token.isEmpty()) {
                throw new IOException(file + ":" + line + ": the head of the VCD does not end ($enddefinitions)");
            }
            if (token.equals("$timescale")) {
                timescale(upToEnd());
            } else if (token.equals("$var")) {
                List<String> words = upToEnd();
                if (words.size() >= 4 && words.get(1).equals("1")) {
                    codes.add(words.get(2));
                    names.add(words.get(3));
                }
            } else if (token.startsWith("$")) {
                int unused = upToEnd().size();
            }
        }
        int unused = upToEnd().size();
        code = codes.get(Wires.choose(file, names, wire));
    }

    private void timescale(List<String> words) throws IOException {
        String text = String.join("", words);
        int digits = 0;
        while (digits < text.length() && Character.isDigit(text.charAt(digits))) {
            digits++;
        }
        Integer power = POWERS.get(text.substring(digits));
        if (digits == 0 || digits > 3 || power == null) {
            throw new IOException(file + ":" + line + ": found timescale '" + text + "', expected one such as 10 ns");
        }
        unitNanos = new BigDecimal(text.substring(0, digits)).scaleByPowerOfTen(power);
    }

    private List<String> upToEnd() throws IOException {
        List<String> words = new ArrayList<>();
        for (String token = token(); !token.equals("$end") && !token.isEmpty(); token = token()) {
            words.add(token);
        }
        return words;
    }

    /** The next word, or nothing at the end. */
    private String token() throws IOException {
        while (!tokens.hasMoreTokens()) {
            String text = in.readLine();
            if (text == null) {
                return "";
            }
            line++;
            tokens = new StringTokenizer(text);
        }
        return tokens.nextToken();
    }

    @Override
    public boolean next() throws IOException {
        for (String token = token(); !token.isEmpty(); token = token()) {
            char first = token.charAt(0);
            if (first == '#') {
                nanos = time(token.substring(1));
            } else if (first == 'b' || first == 'B' || first == 'r' || first == 'R') {
                int unused = token().length();
            } else if ("01xXzZ".indexOf(first) >= 0 && token.substring(1).equals(code)) {
                level = first == '0' ? 0 : 1;
                return true;
            } else if (token.equals("$comment")) {
                int unused = upToEnd().size();
            }
        }
        return false;
    }

    private long time(String digits) throws IOException {
        try {
            return unitNanos
                    .multiply(new BigDecimal(digits))
                    .setScale(0, RoundingMode.HALF_UP)
                    .longValueExact();
        } catch (ArithmeticException | NumberFormatException wrong) {
            throw new IOException(file + ":" + line + ": found time '#" + digits + "', expected a whole number", wrong);
        }
    }

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public int level() {
        return level;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
