package dropline.harness.cli;

/** Where the program starts. Ends the process with an {@link ExitCode}. */
public final class Main {
    private Main() {}

    /** Runs one command. */
    public static void main(String[] arguments) {
        Console console = Console.ofProcess();
        int code = CommandLines.run(console, arguments);
        console.flush();
        System.exit(code);
    }
}
