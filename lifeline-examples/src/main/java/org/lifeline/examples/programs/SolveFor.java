package org.lifeline.examples.programs;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;
import org.lifeline.base.Interval;
import org.lifeline.base.unit.Dimension;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.design.variable.FeasibleInterval;
import org.lifeline.design.variable.FeasibleResult;
import org.lifeline.design.variable.FeasibleSearch;
import org.lifeline.examples.cli.Progress;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.FileArguments;
import org.lifeline.examples.shared.LineScope;
import org.lifeline.file.DesignFile;
import org.lifeline.model.LifelineDesign;

/** For which values of a variable are all criteria of a design met, and which criterion closes each end? */
public final class SolveFor {
    private SolveFor() {}

    /**
     * Prints the feasible ranges of some variables.
     *
     * @param args nothing; or a design file, then {@code pretension}, {@code span-length}, {@code elevation},
     *     {@code anchor-capacity} or {@code deployment-force} with its bounds, such as {@code "0.5 kN" "4 kN"};
     *     {@code --stated-falls} keeps to the stated falls, {@code --no-motion} leaves out the look in time at the ends
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        FileArguments given = FileArguments.of(args);
        DesignFile file = DesignArgument.read(given.plain());
        boolean named = given.plain().length >= 4;
        List<DesignVariable> variables = named
                ? List.of(variable(given.plain()))
                : List.of(
                        DesignVariables.pretension(Interval.of(300, 8e3)),
                        DesignVariables.lineElevation(Interval.of(8.4, 10.4)),
                        DesignVariables.anchorCapacity(Interval.of(10e3, 60e3)));
        try (LineScope scope = LineScope.of(given.has(FileArguments.STATED_FALLS))) {
            boolean inTime = named
                    && !scope.isStatedFalls()
                    && !given.has(FileArguments.NO_MOTION)
                    && file.basis() != Basis.ENERGY_BALANCE;
            System.out.println(scope.words());
            System.out.println(
                    inTime
                            ? "Each end is then assessed in time as well."
                            : "The ends are NOT LOOKED AT IN TIME"
                                    + (named ? "." : "; they are where one variable is named."));
            System.out.println("Criteria: "
                    + file.criteria().stream()
                            .map(Criterion::id)
                            .map(InertText::name)
                            .collect(Collectors.joining(", ")));
            System.out.println(
                    "All are met between the ends below. In parentheses: what closes an end, a criterion that is not met"
                            + " beyond it,");
            System.out.println("or the bound of the search.");
            FeasibleSearch search = FeasibleSearch.withCriteria(file.criteria())
                    .withAnalysis(scope.analysis())
                    .withProgress(new Progress(System.err, System::nanoTime));
            Assessment assessment = Assessment.withDefaults()
                    .withCriteria(file.criteria())
                    .withBasis(file.basis())
                    .withExecutor(scope.threads())
                    .withProgress(new Progress(System.err, System::nanoTime));
            for (DesignVariable each : variables.stream().map(file::following).toList()) {
                FeasibleResult r = search.solve(file.design(), each);
                print(r);
                if (inTime) {
                    r.intervals()
                            .forEach(i -> List.of(i.low(), i.high())
                                    .forEach(end -> inTime(assessment, each.apply(file.design(), end.value()), end)));
                }
            }
        }
    }

    private static DesignVariable variable(String[] args) {
        String name = args[1];
        Dimension dimension =
                name.equals("span-length") || name.equals("elevation") ? Dimension.LENGTH : Dimension.FORCE;
        Interval bounds =
                Interval.of(DesignArgument.quantity(args[2], dimension), DesignArgument.quantity(args[3], dimension));
        return switch (name) {
            case "pretension" -> DesignVariables.pretension(bounds);
            case "span-length" -> DesignVariables.spanLengths(bounds);
            case "elevation" -> DesignVariables.lineElevation(bounds);
            case "anchor-capacity" -> DesignVariables.anchorCapacity(bounds);
            case "deployment-force" -> DesignVariables.deploymentForce(bounds);
            default -> throw new IllegalArgumentException("no variable is called " + name);
        };
    }

    private static void inTime(Assessment assessment, LifelineDesign design, FeasibleInterval.End end) {
        String notMet = assessment.solve(design).criteria().stream()
                .map(AssessedCriterion::result)
                .filter(c -> c.status() != Status.MET)
                .map(c -> InertText.name(c.criterion().id()) + " " + c.status().words()
                        + (Double.isNaN(c.ratio()) ? "" : String.format(Locale.ROOT, " (ratio %.3f)", c.ratio())))
                .collect(Collectors.joining(", "));
        System.out.println(String.format(
                Locale.ROOT, "  at %.5g in time: %s", end.value(), notMet.isEmpty() ? "all met" : notMet));
    }

    private static void print(FeasibleResult r) {
        DesignVariable variable = r.variable();
        System.out.println();
        System.out.println(String.format(
                Locale.ROOT,
                "%s, looked for from %.5g to %.5g",
                InertText.plain(variable.toString()),
                variable.bounds().low(),
                variable.bounds().high()));
        for (FeasibleInterval i : r.intervals()) {
            System.out.println(String.format(
                    Locale.ROOT,
                    "  from %.5g (%s) to %.5g (%s)",
                    i.low().value(),
                    end(i.low()),
                    i.high().value(),
                    end(i.high())));
        }
        if (!r.isComplete()) {
            System.out.println("  THE SEARCH WAS ENDED EARLY: it says nothing of values that it did not try");
        }
        r.noneBecause().ifPresent(why -> System.out.println("  none: " + InertText.plain(why)));
        r.notEvaluated().forEach(open -> System.out.println("  says nothing of " + InertText.plain(open)));
    }

    private static String end(FeasibleInterval.End end) {
        return switch (end.closure()) {
            case BOUND -> "bound";
            case CRITERION, JUMP -> InertText.plain(end.by());
            case FAILURE -> "cannot be analysed beyond: " + InertText.plain(end.by());
        };
    }
}
