package dropline.harness.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes the commands, each with the console it writes to. */
final class Commands implements IFactory {
    private final Map<Class<?>, Supplier<Object>> made = new LinkedHashMap<>();

    Commands(Console console) {
        made.put(ReplayCommand.class, () -> new ReplayCommand(console));
        made.put(NewCommand.class, () -> new NewCommand(console));
        made.put(PresetsCommand.class, () -> new PresetsCommand(console));
        made.put(DescribeCommand.class, () -> new DescribeCommand(console));
        made.put(ConvertCommand.class, () -> new ConvertCommand(console));
        made.put(RecordCommand.class, () -> new RecordCommand(console));
        made.put(DemoCommand.class, () -> new DemoCommand(console));
        made.put(FaultsCommand.class, () -> new FaultsCommand(console));
        made.put(SymptomsCommand.class, () -> new SymptomsCommand(console));
        made.put(TraceCommand.class, () -> new TraceCommand(console));
        made.put(SurviveCommand.class, () -> new SurviveCommand(console));
        made.put(SizeCommand.class, () -> new SizeCommand(console));
        made.put(CheckCommand.class, () -> new CheckCommand(console));
        made.put(DiffCommand.class, () -> new DiffCommand(console));
        made.put(PowerCommand.class, () -> new PowerCommand(console));
        made.put(LayoutCommand.class, () -> new LayoutCommand(console));
        made.put(MeterCommand.class, () -> new MeterCommand(console));
        made.put(PortsCommand.class, () -> new PortsCommand(console));
        made.put(StandInCommand.class, () -> new StandInCommand(console));
        made.put(DriveCommand.class, () -> new DriveCommand(console));
        made.put(RollCallCommand.class, () -> new RollCallCommand(console));
        made.put(ListenCommand.class, () -> new ListenCommand(console));
        made.put(LearnCommand.class, () -> new LearnCommand(console));
        made.put(AdapterCommand.class, () -> new AdapterCommand(console));
        made.put(BenchCommand.class, () -> new BenchCommand(console));
        made.put(SchemaCommand.class, () -> new SchemaCommand(console));
        made.put(CompletionCommand.class, () -> new CompletionCommand(console));
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        Supplier<Object> own = made.get(type);
        return own == null ? CommandLine.defaultFactory().create(type) : type.cast(own.get());
    }
}
