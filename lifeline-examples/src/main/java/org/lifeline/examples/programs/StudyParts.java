package org.lifeline.examples.programs;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.study.Evaluation;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.study.MonteCarloResult;
import org.lifeline.design.study.Summary;
import org.lifeline.design.study.UncertainVariable;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.examples.cli.ProgramClassPath;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.file.DesignFile;
import org.lifeline.file.study.StudyFile;
import org.lifeline.model.absorber.DeploymentForce;

/** A study that several Java machines share: each works out its cases and stores them; the parts are put together. */
public final class StudyParts {
    private static final long SEED = 2026;
    private static final long CASES = 300;
    private static final int MACHINES = 3;

    private static final Evaluation EVALUATION =
            Evaluation.firstFall(DeploymentForce.MAXIMUM, List.of(Quantity.SAG, Quantity.TOTAL_FALL_DISTANCE));

    private StudyParts() {}

    /**
     * Without arguments: starts three Java machines on the demonstration design, puts their parts together in reverse order, and
     * compares the result with that of one machine. With arguments: does one part.
     *
     * @param args nothing; or number of the first case, number of the last case, and the file that the part goes to
     * @throws IOException if a file cannot be read or written, or a machine fails
     * @throws InterruptedException if the thread is interrupted while it waits for a machine
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length == 3) {
            Files.write(Path.of(args[2]), StudyFile.write(part(Long.parseLong(args[0]), Long.parseLong(args[1]))));
            return;
        }
        System.out.println("The FIRST STATED FALL BY ENERGY BALANCE; analyze looks at the whole line and in time.");
        Path folder = Files.createTempDirectory("parts");
        List<Path> files = new ArrayList<>();
        List<Process> machines = new ArrayList<>();
        try {
            for (CaseRange each : CaseRange.parts(CASES, MACHINES)) {
                Path file = folder.resolve(each.first() + ".study.json");
                files.add(file);
                machines.add(start(each, file));
            }
            for (Process each : machines) {
                if (each.waitFor() != 0) {
                    throw new IOException("a machine ended with " + each.exitValue());
                }
            }
            Collections.reverse(files);
            StudyPartial all = StudyFile.read(Files.readAllBytes(files.get(0)));
            for (Path each : files.subList(1, files.size())) {
                all = all.merge(StudyFile.read(Files.readAllBytes(each)));
            }
            print(all);
        } finally {
            machines.forEach(Process::destroy);
            for (Path each : files) {
                Files.deleteIfExists(each);
            }
            Files.delete(folder);
        }
    }

    private static StudyPartial part(long first, long last) throws IOException {
        DesignFile file = DesignArgument.read(new String[0]);
        return MonteCarlo.withSeed(SEED)
                .withCases(first, last)
                .ofStudy(file.sha256())
                .solve(file.design(), UncertainLine.variables(file), EVALUATION);
    }

    /** The words of a quantity in place of its key; its unit in brackets stays. */
    private static String words(String response) {
        String key = response.replaceFirst(" \\[.*", "");
        return Quantity.of(key).map(Quantity::words).orElse(key) + response.substring(key.length());
    }

    private static void print(StudyPartial all) throws IOException {
        List<UncertainVariable> variables = UncertainLine.variables(DesignArgument.read(new String[0]));
        MonteCarloResult r = MonteCarloResult.of(all, variables, EVALUATION.responses(), CASES);
        System.out.println(r.cases() + " cases in " + MACHINES + " Java machines, seed " + r.seed() + ", " + r.failed()
                + " failed");
        for (Summary s : r.summaries()) {
            System.out.println(String.format(
                    Locale.ROOT,
                    "  %-24s mean %.6g, standard deviation %.4g, 95 %% below %.5g",
                    words(s.response().toString()),
                    s.mean(),
                    s.deviation(),
                    s.quantile(0.95).value()));
        }
        boolean same = all.equals(part(1, CASES));
        System.out.println("the same as in one machine, bit by bit: " + (same ? "yes" : "NO"));
    }

    private static Process start(CaseRange range, Path file) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        ProgramClassPath.text(),
                        StudyParts.class.getName(),
                        Long.toString(range.first()),
                        Long.toString(range.last()),
                        file.toString())
                .inheritIO()
                .start();
    }
}
