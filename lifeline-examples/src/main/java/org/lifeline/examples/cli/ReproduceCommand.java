package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InertText;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.LibraryVersion;
import org.lifeline.file.reproduce.Difference;
import org.lifeline.file.reproduce.Reproduction;
import org.lifeline.file.reproduce.StoredCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks a result file against its design file. Not thread-safe. */
@Command(
        name = "reproduce",
        description = {
            "Checks a result file against its design file: computes the design anew and lists every number that differs,",
            "and checks the stored numbers by laws that need no solver."
        },
        footer = {
            "",
            "Exit codes: 0 reproduced, 4 not reproduced, 2 bad file or command line, 3 no equilibrium found, 1 fault of the"
                    + " program."
        },
        mixinStandardHelpOptions = false,
        sortOptions = false)
public final class ReproduceCommand implements Callable<Integer> {
    private static final int MOST_LINES = 200;

    /** The format is the first member of every file that this program writes [bytes]. */
    private static final int FORMAT_STANDS_WITHIN = 200;

    private final PrintStream out;
    private final PrintStream err;
    private final Failures failures;

    @Parameters(index = "0", paramLabel = "RESULT", description = "Result file.")
    private @Nullable Path result;

    @Parameters(index = "1", paramLabel = "DESIGN", description = "Design file that it was computed from.")
    private @Nullable Path design;

    @Option(
            names = "--tolerance",
            paramLabel = "NUMBER",
            defaultValue = "1e-6",
            description =
                    "Largest relative difference that counts as the same number; for numbers below one unit (m, N, J,"
                            + " kg), the largest difference. Default: ${DEFAULT-VALUE}.")
    private double tolerance = Reproduction.DEFAULT_TOLERANCE;

    @Option(names = "--stack-trace", description = "Shows where the program failed, for a report of a fault.")
    private boolean stackTrace;

    /**
     * The command with its streams.
     *
     * @param out where the findings go
     * @param err where errors go
     */
    public ReproduceCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
        this.failures = new Failures(err);
    }

    @Override
    public Integer call() {
        if (result == null || design == null) {
            throw new IllegalStateException("unreachable: the command line demands both files");
        }
        if (!(tolerance >= 0 && tolerance < 1)) {
            err.println("Bad command line: --tolerance " + tolerance + ": must be at least 0 and below 1");
            return ExitCode.BAD_INPUT;
        }
        byte[] designBytes = read(design, DesignReader.LARGEST_FILE);
        byte[] resultBytes = designBytes == null ? null : read(result, Reproduction.LARGEST_FILE);
        if (designBytes == null || resultBytes == null) {
            return ExitCode.BAD_INPUT;
        }
        try {
            if (says(resultBytes, "org.lifeline.design/") && says(designBytes, "org.lifeline.result/")) {
                err.println(
                        "Bad command line: the files stand in the wrong order: the RESULT file comes first, then the"
                                + " DESIGN file.");
                return ExitCode.BAD_INPUT;
            }
            DesignFile file = new DesignReader().read(designBytes);
            try (Workers workers = Workers.begin()) {
                return print(Reproduction.by(LibraryVersion.text())
                        .withTolerance(tolerance)
                        .withExecutor(workers)
                        .withProgress(new Progress(err, System::nanoTime))
                        .check(file, resultBytes));
            }
        } catch (InvalidInputException e) {
            return failures.violations(design.toString(), e.violations());
        } catch (NoEquilibriumException e) {
            return failures.noEquilibrium(e);
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            return failures.fault(e, stackTrace);
        }
    }

    /** Tells whether a file says near its start that it has a format. */
    private static boolean says(byte[] bytes, String format) {
        String start = new String(bytes, 0, Math.min(bytes.length, FORMAT_STANDS_WITHIN), StandardCharsets.UTF_8);
        return start.contains('"' + format);
    }

    /** The bytes of a file; null after it was said why there are none. */
    private byte @Nullable [] read(Path path, int largest) {
        try (InputStream in = Files.newInputStream(path)) {
            return in.readNBytes(largest + 1);
        } catch (IOException e) {
            err.println("A file cannot be read: " + InertText.plain(path.toString()) + ": " + Failures.reason(e));
            return null;
        }
    }

    private int print(Reproduction.Outcome o) {
        out.println("Result " + InertText.plain(String.valueOf(result)));
        o.identity().forEach(i -> out.println("  " + InertText.plain(i)));
        out.println(o.compared() + " values compared, tolerance " + tolerance + ": "
                + o.differences().size() + " differ");
        o.differences().stream().limit(MOST_LINES).forEach(this::print);
        if (o.differences().size() > MOST_LINES) {
            out.println("  and " + (o.differences().size() - MOST_LINES) + " more");
        }
        out.println(
                "not compared: how iterations went (convergence, residual), and what the program ran on (provenance)");
        out.println(o.stored().size() + " checks of the stored numbers without the solver: "
                + o.broken().size() + " fail");
        for (StoredCheck c : o.broken()) {
            out.printf(
                    Locale.ROOT,
                    "  %s: %s: off by %.2e, limit %.0e%n",
                    InertText.plain(c.where()),
                    c.law(),
                    c.off(),
                    c.limit());
        }
        List<String> failed = o.verified().orElse(List.of());
        out.println("independent check of the recomputed results: "
                + (o.verified().isEmpty()
                        ? "not made, there is no arrest by energy balance"
                        : failed.isEmpty() ? "all hold" : failed.size() + " fail"));
        failed.forEach(v -> out.println("  " + InertText.plain(v)));
        out.println(o.verdict().text());
        out.flush();
        return o.verdict().isReproduced() ? ExitCode.DONE : ExitCode.CHECK_FAILED;
    }

    private void print(Difference d) {
        String off = Double.isNaN(d.relative())
                ? ""
                : String.format(Locale.ROOT, ", relative difference %.2e", d.relative());
        out.println("  " + InertText.plain(d.path()) + ": stored "
                + (d.stored().isEmpty() ? "nothing" : InertText.plain(d.stored())) + ", recomputed "
                + (d.recomputed().isEmpty() ? "nothing" : InertText.plain(d.recomputed())) + off);
    }
}
