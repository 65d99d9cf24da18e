package dropline.harness.cli;

/** Where the program starts. Ends the process with an {@link ExitCode}. */
public final class Main {
    private Main() {}

    /** Runs one command. */
    public static void main(String[] arguments) {
        Console console = Console.ofProcess();
        int code = run(console, arguments);
        console.flush();
        ClassArchive.keepUp();
        System.exit(code);
    }

    private static int run(Console console, String[] arguments) {
        if (arguments.length == 1 && arguments[0].equals("--version")) {
            // to understand the command line would take longer than to answer it
            console.out().println(Version.line());
            return ExitCode.PASS;
        }
        return CommandLines.run(console, arguments);
    }
}
