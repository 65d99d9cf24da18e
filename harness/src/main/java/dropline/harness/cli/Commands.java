package dropline.harness.cli;

import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes the commands, each with the console it writes to. */
final class Commands implements IFactory {
    private final Console console;

    Commands(Console console) {
        this.console = console;
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        if (type == ReplayCommand.class) {
            return type.cast(new ReplayCommand(console));
        }
        if (type == NewCommand.class) {
            return type.cast(new NewCommand(console));
        }
        if (type == PresetsCommand.class) {
            return type.cast(new PresetsCommand(console));
        }
        if (type == DescribeCommand.class) {
            return type.cast(new DescribeCommand(console));
        }
        if (type == ConvertCommand.class) {
            return type.cast(new ConvertCommand(console));
        }
        if (type == RecordCommand.class) {
            return type.cast(new RecordCommand(console));
        }
        if (type == DemoCommand.class) {
            return type.cast(new DemoCommand(console));
        }
        if (type == FaultsCommand.class) {
            return type.cast(new FaultsCommand(console));
        }
        if (type == TraceCommand.class) {
            return type.cast(new TraceCommand(console));
        }
        if (type == SurviveCommand.class) {
            return type.cast(new SurviveCommand(console));
        }
        if (type == SizeCommand.class) {
            return type.cast(new SizeCommand(console));
        }
        if (type == CheckCommand.class) {
            return type.cast(new CheckCommand(console));
        }
        if (type == DiffCommand.class) {
            return type.cast(new DiffCommand(console));
        }
        if (type == PowerCommand.class) {
            return type.cast(new PowerCommand(console));
        }
        if (type == LayoutCommand.class) {
            return type.cast(new LayoutCommand(console));
        }
        if (type == MeterCommand.class) {
            return type.cast(new MeterCommand(console));
        }
        if (type == PortsCommand.class) {
            return type.cast(new PortsCommand(console));
        }
        if (type == StandInCommand.class) {
            return type.cast(new StandInCommand(console));
        }
        if (type == DriveCommand.class) {
            return type.cast(new DriveCommand(console));
        }
        if (type == RollCallCommand.class) {
            return type.cast(new RollCallCommand(console));
        }
        if (type == BenchCommand.class) {
            return type.cast(new BenchCommand(console));
        }
        return CommandLine.defaultFactory().create(type);
    }
}
