package dropline.scenarios.replay;

import java.io.IOException;

/**
 * Prints the digest of a stretch of the demo flight: {@code DigestOfTheDemo SEED}. Run in a Java runtime of its own.
 */
final class DigestOfTheDemo {

    private DigestOfTheDemo() {}

    public static void main(String[] arguments) throws IOException {
        System.out.println(SameRunTest.digest(Long.parseLong(arguments[0]), 2));
    }
}
