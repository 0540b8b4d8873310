package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InertText;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.examples.programs.Programs;
import org.lifeline.file.output.OutputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists the example programs, or runs one of them. Not thread-safe. */
@Command(
        name = "example",
        description = "Runs an example program; without NAME it lists them.",
        footer = {
            "",
            "Exit codes: 0 done, 2 no such example or bad input, 3 no equilibrium found, 1 fault of the program."
        },
        mixinStandardHelpOptions = false)
public final class ExampleCommand implements Callable<Integer> {
    private final PrintStream out;
    private final PrintStream err;

    @Option(
            names = {"-h", "--help"},
            description = "Prints this help; after NAME what the example shows and takes.")
    private boolean help;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(index = "0", paramLabel = "NAME", arity = "0..1", description = "The example.")
    private @Nullable String name;

    @Parameters(index = "1..*", paramLabel = "ARGS", arity = "0..*", description = "What the example takes.")
    private List<String> arguments = List.of();

    @Option(
            names = "--overwrite",
            description = "Lets an example that writes files replace any file but its input and designs.")
    private boolean overwrite;

    @Option(
            names = "--stated-falls",
            description = "solve-for, map, study: looks at the stated falls alone, not at the whole line.")
    private boolean statedFalls;

    @Option(
            names = "--no-motion",
            description = "solve-for: does not look in time at the ends of the range of a variable that is named.")
    private boolean noMotion;

    @Option(names = "--stack-trace", description = "Shows where the program failed, for a report of a fault.")
    private boolean stackTrace;

    /**
     * The command with its streams; examples print to the standard output.
     *
     * @param out where the list goes
     * @param err where errors go
     */
    public ExampleCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    @Override
    public Integer call() {
        if (help && name == null && spec != null) {
            spec.commandLine().usage(out);
            return ExitCode.DONE;
        }
        if (name == null) {
            list(out);
            return ExitCode.DONE;
        }
        for (Programs.Program each : Programs.all()) {
            if (each.name().equals(name)) {
                return help ? describe(each) : run(each);
            }
        }
        err.println("Bad command line: example " + InertText.plain(name) + ": must be one of");
        list(err);
        return ExitCode.BAD_INPUT;
    }

    private int describe(Programs.Program program) {
        out.println("example " + program.name() + ": " + program.task() + ".");
        out.println(program.takes().isEmpty() ? "It takes no arguments." : "Arguments, in this order, each optional:");
        program.takes().forEach(t -> out.println("  " + t));
        if (!program.options().isEmpty()) {
            out.println("Options: " + String.join(", ", program.options()));
        }
        return ExitCode.DONE;
    }

    private int run(Programs.Program program) {
        Optional<String> problem = program.problem(arguments);
        if (problem.isPresent()) {
            err.println("Bad command line: " + InertText.plain(problem.get()));
            return ExitCode.BAD_INPUT;
        }
        List<String> given = new ArrayList<>(arguments);
        for (String option : options()) {
            if (!program.options().contains(option)) {
                err.println("Bad command line: " + option + ": the example " + program.name()
                        + (option.equals("--overwrite") ? " writes no files" : " does not take it"));
                return ExitCode.BAD_INPUT;
            }
            given.add(option);
        }
        try {
            program.main().run(given.toArray(new String[0]));
            return ExitCode.DONE;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            err.println("The example was stopped.");
            return ExitCode.FAULT;
        } catch (IllegalArgumentException e) {
            err.println("Bad input: " + InertText.plain(String.valueOf(e.getMessage())));
            return ExitCode.BAD_INPUT;
        } catch (UncheckedIOException e) {
            return unread(e.getCause() == null ? new IOException(e) : e.getCause());
        } catch (IOException e) {
            return unread(e);
        } catch (NoEquilibriumException e) {
            return new Failures(err).noEquilibrium(e);
        } catch (Exception | StackOverflowError | OutOfMemoryError e) {
            return new Failures(err).fault(e, stackTrace);
        }
    }

    private List<String> options() {
        List<String> list = new ArrayList<>();
        if (overwrite) {
            list.add("--overwrite");
        }
        if (statedFalls) {
            list.add("--stated-falls");
        }
        if (noMotion) {
            list.add("--no-motion");
        }
        return list;
    }

    private int unread(IOException e) {
        if (e instanceof OutputException output) {
            return new Failures(err).output(output);
        }
        String name = e instanceof FileSystemException f && f.getFile() != null ? f.getFile() : given();
        err.println("A file cannot be read: " + InertText.plain(name) + ": " + Failures.reason(e));
        return ExitCode.BAD_INPUT;
    }

    private String given() {
        return arguments.isEmpty() ? "the design" : arguments.get(0);
    }

    private static void list(PrintStream stream) {
        Programs.all().forEach(p -> stream.printf(java.util.Locale.ROOT, "  %-16s %s%n", p.name(), p.task()));
    }
}
