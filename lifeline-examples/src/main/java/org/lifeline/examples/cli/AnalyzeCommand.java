package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.Method;
import org.lifeline.base.InertText;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violation;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.examples.print.DesignReport;
import org.lifeline.examples.print.FirstScreen;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.LibraryVersion;
import org.lifeline.file.ResultFile;
import org.lifeline.file.output.FileKind;
import org.lifeline.file.output.Output;
import org.lifeline.file.output.OutputException;
import org.lifeline.file.output.OutputSet;
import org.lifeline.file.reproduce.Reproduction;
import org.lifeline.file.result.AssessedRun;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.IndependentCheck;
import org.lifeline.report.TextReport;
import org.lifeline.report.document.Provenance;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.section.IndependentCheckSection;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Assesses a design and prints what governs. Not thread-safe. */
@Command(
        name = "analyze",
        description = {
            "Assesses a design: the stated falls and the same falls along the whole line, by energy balance and in time.",
            "Prints what governs, where and by which method, the criteria and the warnings, on one screen.",
            "Without FILE it computes the built-in demonstration design."
        },
        footer = {
            "",
            "The result file stands beside the design file, with the ending .result.json, unless --result names another"
                    + " place. The demonstration, and a design that is read from a stream such as /dev/stdin, have none"
                    + " unless --result is given.",
            "",
            "Exit codes: 0 done, 2 bad file or command line, 3 no equilibrium found, 4 a result failed the independent"
                    + " check, 1 fault of the program."
        },
        mixinStandardHelpOptions = false,
        sortOptions = false)
public final class AnalyzeCommand implements Callable<Integer> {
    /** Where the demonstration design lies among the resources. */
    public static final String DEMO = "/org/lifeline/examples/demo-design.json";

    private static final String ENERGY_BALANCE = "energy-balance";
    private static final String TRANSIENT = "transient";

    private final PrintStream out;
    private final PrintStream err;
    private final Failures failures;
    private final Solver solver;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "Design file (JSON, org.lifeline.design/1).")
    private @Nullable Path file;

    @Option(names = "--result", paramLabel = "FILE", description = "Where the result file goes; - for none.")
    private @Nullable String result;

    @Option(names = "--overwrite", description = "Replaces also a file that is no former result file; never a design.")
    private boolean overwrite;

    @Option(names = "--no-result", description = "Writes no result file.")
    private boolean noResult;

    @Option(
            names = "--method",
            paramLabel = "METHOD",
            defaultValue = ENERGY_BALANCE,
            description =
                    "How the stated falls of the result file are computed: energy-balance, or transient (integration in time).")
    private String method = ENERGY_BALANCE;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            defaultValue = "both",
            description = "Units of the printed results: both, si or us.")
    private String units = "both";

    @Option(names = "--no-motion", description = "Leaves out arrests in time: faster, and less is known.")
    private boolean noMotion;

    @Option(names = "--full", description = "Prints the calculation of the stated falls before the assessment.")
    private boolean full;

    @Option(names = "--stack-trace", description = "Shows where the program failed, for a report of a fault.")
    private boolean stackTrace;

    /**
     * The command with its streams.
     *
     * @param out where the calculation goes
     * @param err where everything else goes
     */
    public AnalyzeCommand(PrintStream out, PrintStream err) {
        this(out, err, AnalyzeCommand::assess);
    }

    AnalyzeCommand(PrintStream out, PrintStream err, Solver solver) {
        this.out = out;
        this.err = err;
        this.failures = new Failures(err);
        this.solver = solver;
    }

    /** Computes a design. */
    @FunctionalInterface
    interface Solver {
        AssessedRun solve(DesignFile design, ProgressListener listener, Choice choice);
    }

    /** How a design is computed: the method of the stated falls, and whether arrests are followed in time. */
    record Choice(Method method, boolean motion) {}

    private static AssessedRun assess(DesignFile design, ProgressListener listener, Choice choice) {
        Assessment assessment = Assessment.withDefaults()
                .withCriteria(design.criteria())
                .withBasis(design.basis())
                .withProgress(listener);
        try (Workers workers = Workers.begin()) {
            Assessment chosen = assessment.withExecutor(workers);
            AssessedRun run = AssessedRun.of(design.design(), choice.motion() ? chosen : chosen.withoutMotion());
            return choice.method() == Method.ENERGY_BALANCE
                    ? run
                    : new AssessedRun(
                            DesignRun.of(
                                    design.design(),
                                    DesignAnalysis.withDefaults()
                                            .withMethod(choice.method())
                                            .withExecutor(workers)
                                            .withProgress(listener)),
                            run.assessment());
        }
    }

    @Override
    public Integer call() {
        try {
            return analyze();
        } catch (NoEquilibriumException e) {
            return failures.noEquilibrium(e);
        } catch (OutputException e) {
            return failures.output(e);
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            return failures.fault(e, stackTrace);
        }
    }

    private int analyze() throws OutputException {
        UnitChoice choice = DesignReport.units(units);
        boolean moving = method.equals(TRANSIENT);
        if (choice == null || (!moving && !method.equals(ENERGY_BALANCE))) {
            String option = choice == null ? "--units" : "--method";
            String value = choice == null ? units : method;
            err.println("Bad command line: " + option + " " + InertText.plain(value) + ": must be "
                    + (choice == null ? "both, si or us" : ENERGY_BALANCE + " or " + TRANSIENT));
            return ExitCode.BAD_INPUT;
        }
        byte[] bytes;
        try {
            bytes = bytes();
        } catch (IOException e) {
            err.println("The design file cannot be read: " + InertText.plain(String.valueOf(file)) + ": "
                    + Failures.reason(e));
            return ExitCode.BAD_INPUT;
        }
        DesignFile design;
        try {
            design = new DesignReader().read(bytes);
        } catch (InvalidInputException e) {
            return bad(e.violations());
        }
        if (design.exceededByWholeLine().isPresent()) {
            return bad(List.of(design.exceededByWholeLine().get()));
        }
        try (OutputSet outputs = file == null ? OutputSet.of(overwrite) : OutputSet.of(overwrite, file)) {
            String target = target();
            Output place = target == null ? null : outputs.claim(target, FileKind.RESULT);
            AssessedRun assessed;
            DesignRun run;
            try {
                assessed = solver.solve(
                        design,
                        new Progress(err, System::nanoTime),
                        new Choice(moving ? Method.TRANSIENT : Method.ENERGY_BALANCE, !noMotion));
                run = assessed.run();
            } catch (InvalidInputException e) {
                return bad(Failures.asWritten(design, e.violations()));
            }
            IndependentCheck check = IndependentCheck.of(run.arrests());
            if (full) {
                out.print(TextReport.write(DesignReport.of(design, run, choice, List.of())
                        .withDetail(ReportDetail.SHORT)
                        .withAssessment(assessed.assessment())
                        .withCheck(IndependentCheckSection.ofReports(check.reports()))
                        .withProvenance(new Provenance("Lifeline " + LibraryVersion.text(), design.sha256(), "", ""))
                        .build()));
            }
            if (place != null) {
                byte[] numbers = ResultFile.of(design, assessed.assessment())
                        .withStated(run.result())
                        .bytes();
                if (numbers.length > Reproduction.LARGEST_FILE) {
                    err.println("The result would have " + numbers.length + " bytes; at most "
                            + Reproduction.LARGEST_FILE + " are written, since no more are read again.");
                    return ExitCode.BAD_INPUT;
                }
                place.put(numbers);
                outputs.commit();
                out.println("Result file: " + InertText.plain(String.valueOf(target)));
            }
            out.print(FirstScreen.of(assessed.assessment(), choice.leading()));
            out.flush();
            check.lines().forEach(line -> err.println("Independent check: " + InertText.plain(line)));
            boolean failed = false;
            for (org.lifeline.design.assessment.IndependentCheck each :
                    assessed.assessment().checks()) {
                failed |= !each.passed();
                each.failures()
                        .forEach(f -> err.println("Independent check: "
                                + InertText.plain(each.fallCase().describe() + ": " + f)));
            }
            if (failed || !check.passed()) {
                err.println("The independent check FAILED; do not use the results before the cause is known.");
                return ExitCode.CHECK_FAILED;
            }
            return ExitCode.DONE;
        }
    }

    private int bad(List<Violation> violations) {
        return failures.violations(file == null ? "The demonstration design" : file.toString(), violations);
    }

    private byte[] bytes() throws IOException {
        if (file != null) {
            try (InputStream in = Files.newInputStream(file)) {
                return in.readNBytes(DesignReader.LARGEST_FILE + 1);
            }
        }
        try (InputStream in = AnalyzeCommand.class.getResourceAsStream(DEMO)) {
            if (in == null) {
                throw new IllegalStateException("the demonstration design is missing from the program");
            }
            return in.readAllBytes();
        }
    }

    /** Beside a FIFO, or a name that the system gives to a stream, nobody looks for a result. */
    private static boolean isStream(Path design) {
        Path whole = design.toAbsolutePath();
        return !Files.isRegularFile(design) || whole.startsWith("/dev") || whole.startsWith("/proc");
    }

    private @Nullable String target() {
        if (noResult || "-".equals(result)) {
            return null;
        }
        if (result != null) {
            return result;
        }
        if (file == null || file.getFileName() == null || isStream(file)) {
            return null;
        }
        String name = file.getFileName().toString();
        String stem = name.endsWith(".json") ? name.substring(0, name.length() - ".json".length()) : name;
        return file.resolveSibling(stem + ".result.json").toString();
    }
}
