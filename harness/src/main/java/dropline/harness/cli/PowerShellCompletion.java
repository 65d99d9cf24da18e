package dropline.harness.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * A script by which PowerShell 5 and newer completes a command line, made from picocli's model of it. Where the script
 * offers nothing, PowerShell completes paths; so options are offered only once a dash has been typed.
 */
final class PowerShellCompletion {
    /** The name, then three lists: commands, options that take a value, and what is offered after each of both. */
    private static final String SCRIPT = """
            # Completes the command line of %1$s in PowerShell 5 and newer.
            Register-ArgumentCompleter -Native -CommandName %1$s -ScriptBlock {
                param($wordToComplete, $commandAst, $cursorPosition)

                $commands = @(
            %2$s
                )
                $takingValues = @(
            %3$s
                )
                $at = %1$s
                $last = ''
                foreach ($element in $commandAst.CommandElements | Select-Object -Skip 1) {
                    if ($element.Extent.EndOffset -ge $cursorPosition) { break }
                    $last = $element.Extent.Text
                    if ($commands -ccontains "$at $last") { $at = "$at $last" }
                }
                if ($takingValues -ccontains "$at $last") { $at = "$at $last" }

                $offered = @(switch -CaseSensitive ($at) {
            %4$s
                })
                $offered | Where-Object {
                    $_.Word.StartsWith($wordToComplete, 'OrdinalIgnoreCase') -and
                        ($wordToComplete -or -not $_.Word.StartsWith('-'))
                } | ForEach-Object {
                    [System.Management.Automation.CompletionResult]::new($_.Word, $_.Word, 'ParameterValue', $_.Says)
                }
            }
            """;

    private final List<String> commands = new ArrayList<>();
    private final List<String> takingValues = new ArrayList<>();
    private final List<String> cases = new ArrayList<>();

    private PowerShellCompletion() {}

    static String of(CommandSpec root) {
        PowerShellCompletion completion = new PowerShellCompletion();
        completion.add(root.name(), root);
        return SCRIPT.formatted(
                quoted(root.name()),
                literals(completion.commands),
                literals(completion.takingValues),
                String.join("\n", completion.cases));
    }

    private void add(String path, CommandSpec command) {
        Map<String, String> offered = new TreeMap<>();
        command.subcommands().forEach((name, sub) -> offered.put(name, says(name, header(sub))));
        command.positionalParameters().forEach(parameter -> offered.putAll(candidates(parameter)));
        for (OptionSpec option : command.options()) {
            offered.put(option.longestName(), says(option.longestName(), option.description()));
        }
        addCase(path, offered);
        command.options().stream()
                .filter(option -> option.arity().max() > 0)
                .forEach(option -> addValues(path, option));
        command.subcommands().forEach((name, sub) -> {
            commands.add(path + " " + name);
            add(path + " " + name, sub.getCommandSpec());
        });
    }

    private void addValues(String path, OptionSpec option) {
        Map<String, String> values = candidates(option);
        for (String name : option.names()) {
            takingValues.add(path + " " + name);
            if (!values.isEmpty()) {
                addCase(path + " " + name, values);
            }
        }
    }

    private void addCase(String after, Map<String, String> offered) {
        cases.add(offered.entrySet().stream()
                .map(word -> "            @{ Word = " + quoted(word.getKey()) + "; Says = " + quoted(word.getValue())
                        + " }\n")
                .collect(Collectors.joining("", "        " + quoted(after) + " {\n", "        }")));
    }

    private static Map<String, String> candidates(ArgSpec argument) {
        Map<String, String> words = new TreeMap<>();
        Iterable<String> candidates = argument.completionCandidates();
        if (candidates != null) {
            candidates.forEach(word -> words.put(word, says(word, argument.description())));
        }
        return words;
    }

    private static String[] header(CommandLine command) {
        return command.getCommandSpec().usageMessage().header();
    }

    /** What is shown beside a word, on one line; the word itself where there is nothing, as it may not be empty. */
    private static String says(String word, String... lines) {
        String text = String.join(" ", lines).replace("%n", " ").replace("%%", "%");
        return text.isBlank() ? word : text;
    }

    private static String literals(List<String> texts) {
        return texts.stream().map(text -> "        " + quoted(text)).collect(Collectors.joining("\n"));
    }

    /** PowerShell takes typographic quotes for plain ones. */
    private static String quoted(String text) {
        return "'" + text.replaceAll("['\u2018-\u201b]", "$0$0") + "'";
    }
}
