package dropline.harness.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import picocli.CommandLine;

/**
 * The commands by their names, in the order in which they are listed, each with the console it writes to. Making one
 * takes its time, so that a command line gets the one that is asked for alone.
 */
final class Commands {
    private static final Map<String, Function<Console, Object>> MADE = commands();

    private Commands() {}

    private static Map<String, Function<Console, Object>> commands() {
        Map<String, Function<Console, Object>> made = new LinkedHashMap<>();
        made.put("new", NewCommand::new);
        made.put("presets", PresetsCommand::new);
        made.put("replay", ReplayCommand::new);
        made.put("trace", TraceCommand::new);
        made.put("diff", DiffCommand::new);
        made.put("faults", FaultsCommand::new);
        made.put("symptoms", SymptomsCommand::new);
        made.put("survive", SurviveCommand::new);
        made.put("size", SizeCommand::new);
        made.put("check", CheckCommand::new);
        made.put("describe", DescribeCommand::new);
        made.put("meter", MeterCommand::new);
        made.put("power", PowerCommand::new);
        made.put("layout", LayoutCommand::new);
        made.put("bench", BenchCommand::new);
        made.put("profile", ProfileCommand::new);
        made.put("ports", PortsCommand::new);
        made.put("adapter", AdapterCommand::new);
        made.put("roll-call", RollCallCommand::new);
        made.put("listen", ListenCommand::new);
        made.put("learn", LearnCommand::new);
        made.put("drive", DriveCommand::new);
        made.put("stand-in", StandInCommand::new);
        made.put("record", RecordCommand::new);
        made.put("convert", ConvertCommand::new);
        made.put("demo", DemoCommand::new);
        made.put("schema", SchemaCommand::new);
        made.put("completion", CompletionCommand::new);
        return made;
    }

    /** The command line with every command. */
    static CommandLine all(Console console) {
        CommandLine line = new CommandLine(new Root(console));
        MADE.forEach((name, command) -> line.addSubcommand(name, command.apply(console)));
        return line;
    }

    /** The command line with what these arguments need: the command they begin with, or else all. */
    static CommandLine of(Console console, String... arguments) {
        String first = arguments.length == 0 ? "" : arguments[0];
        Function<Console, Object> asked = MADE.get(first);
        return asked == null
                ? all(console)
                : new CommandLine(new Root(console)).addSubcommand(first, asked.apply(console));
    }
}
