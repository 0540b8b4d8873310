package org.lifeline.examples.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;
import org.lifeline.examples.programs.Programs;
import org.lifeline.file.output.FileNames;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** Takes a command line apart and runs it. */
public final class CommandLines {
    /** What is said when not everything that was printed has arrived. */
    static final String LOST = "The standard output could not be written: what was printed is not complete.";

    private CommandLines() {}

    /** The program itself: without a command it analyzes the demonstration design. */
    @Command(
            name = "lifeline",
            description = "Engineering analysis of horizontal lifelines.",
            synopsisSubcommandLabel = "COMMAND",
            subcommands = HelpCommand.class)
    private static final class Program {}

    /**
     * Runs a command line.
     *
     * @param out where the calculation goes
     * @param err where everything else goes
     * @param args the arguments
     * @return the exit code
     */
    public static int run(PrintStream out, PrintStream err, String... args) {
        return run(new AnalyzeCommand(out, err), out, err, args);
    }

    static int run(AnalyzeCommand analyze, PrintStream out, PrintStream err, String... args) {
        CommandLine line = new CommandLine(new Program());
        line.getCommandSpec()
                .usageMessage()
                .footer(
                        "",
                        "Without a command: analyze, on the built-in demonstration design.",
                        "Example programs, run with example NAME: "
                                + Programs.all().stream()
                                        .map(Programs.Program::name)
                                        .collect(Collectors.joining(", ")) + ".",
                        "Results are an aid for a qualified person; they do not replace codes, instructions or tests.");
        line.addSubcommand(analyze);
        line.addSubcommand(new ReproduceCommand(out, err));
        line.addSubcommand(new ReportCommand(out, err));
        line.addSubcommand(new ExplorerCommand(out, err));
        line.addSubcommand(new ExampleCommand(out, err));
        line.registerConverter(Path.class, CommandLines::path);
        line.registerConverter(double.class, CommandLines::number);
        askForHelp(line.getCommandSpec());
        line.getSubcommands().values().stream()
                .map(CommandLine::getCommandSpec)
                .filter(spec -> !spec.helpCommand() && !spec.optionsMap().containsKey("-h"))
                .forEach(CommandLines::askForHelp);
        line.setOut(new PrintWriter(out, true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(err, true, StandardCharsets.UTF_8));
        line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        line.setParameterExceptionHandler((e, arguments) -> misused(e, err));
        String[] effective = args.length == 0 ? new String[] {"analyze"} : args;
        int code = line.execute(effective);
        out.flush();
        boolean lost = out.checkError();
        // The examples print to the standard output itself.
        lost |= System.out.checkError();
        if (lost) {
            err.println(LOST);
            err.flush();
            return code == ExitCode.DONE ? ExitCode.FAULT : code;
        }
        return code;
    }

    private static Path path(String name) {
        try {
            return FileNames.path(name);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(String.valueOf(e.getMessage()));
        }
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new TypeConversionException('"' + text + "\" must be a number");
        }
    }

    private static void askForHelp(CommandSpec spec) {
        spec.addOption(OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Prints this help.")
                .build());
    }

    private static int misused(ParameterException e, PrintStream err) {
        err.println("Bad command line: " + InertText.plain(String.valueOf(e.getMessage())));
        err.println("Try: help");
        err.flush();
        return ExitCode.BAD_INPUT;
    }
}
