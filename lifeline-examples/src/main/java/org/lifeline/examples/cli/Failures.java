package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import org.lifeline.base.InertText;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violation;
import org.lifeline.file.DesignFile;
import org.lifeline.file.ModelPaths;
import org.lifeline.file.output.FileNames;
import org.lifeline.file.output.OutputException;

/** Says why a command did not do what it was asked for. */
final class Failures {
    /** Most violations that are listed; a reader adds one line that counts the others. */
    private static final int MOST = 100;

    private final PrintStream err;

    Failures(PrintStream err) {
        this.err = err;
    }

    /** Lists what is wrong with a file. */
    int violations(String name, List<Violation> violations) {
        int number = violations.size();
        err.println(InertText.plain(name) + " cannot be used: "
                + (number == 1
                        ? "1 violation"
                        : number <= MOST ? number + " violations" : "more than " + MOST + " violations"));
        for (Violation each : violations.subList(0, Math.min(number, MOST + 1))) {
            err.println("  " + InertText.plain(each.path()) + ": " + InertText.plain(each.value()) + ": "
                    + InertText.plain(each.rule()));
        }
        if (number > MOST + 1) {
            err.println("  and " + (number - MOST - 1) + " more");
        }
        err.flush();
        return ExitCode.BAD_INPUT;
    }

    /** Violations that only the analysis finds, with the values as they were written. */
    static List<Violation> asWritten(DesignFile design, List<Violation> violations) {
        return violations.stream()
                .map(ModelPaths::inFile)
                .map(v -> design.written(v.path())
                        .map(text -> v.written('"' + text + '"'))
                        .orElse(v))
                .toList();
    }

    int noEquilibrium(NoEquilibriumException e) {
        err.println("No equilibrium was found.");
        err.println("  where:            " + InertText.plain(e.where()));
        err.println("  last load factor: " + e.loadFactor());
        e.load().ifPresent(load -> err.println("  last load:        " + load + " N"));
        err.println("  residual:         " + e.convergence().residual() + " (tolerance "
                + e.convergence().tolerance() + ", after " + e.convergence().iterations() + " iterations)");
        return ExitCode.NO_EQUILIBRIUM;
    }

    /** An output was refused, which is the caller's to mend, or could not be written, which is the machine's. */
    int output(OutputException e) {
        err.println((e.isRefused() ? "Bad output: " : "An output could not be written: ")
                + InertText.plain(String.valueOf(e.getMessage())));
        err.flush();
        return e.isRefused() ? ExitCode.BAD_INPUT : ExitCode.FAULT;
    }

    int fault(Throwable e, boolean stackTrace) {
        if (e instanceof OutOfMemoryError) {
            err.println(
                    "The memory that this program may use is not enough for this design; java -Xmx4g -jar gives more.");
            return ExitCode.FAULT;
        }
        err.println("The program failed: " + InertText.plain(String.valueOf(e)));
        err.println("This is a fault of the program, not of the design. Run again with --stack-trace to report it.");
        if (stackTrace) {
            e.printStackTrace(err);
        }
        return ExitCode.FAULT;
    }

    static String reason(IOException e) {
        return InertText.plain(FileNames.reason(e));
    }
}
