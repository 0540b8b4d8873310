package org.lifeline.examples.programs;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.lifeline.base.Interval;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.design.variable.FeasibleInterval;
import org.lifeline.design.variable.FeasibleResult;
import org.lifeline.design.variable.FeasibleSearch;
import org.lifeline.file.DesignFile;
import org.lifeline.base.Dimension;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.document.InertText;

/** For which values of a variable are all criteria of a design met, and which criterion closes each end? */
public final class SolveFor {
    private SolveFor() {}

    /**
     * Prints the feasible ranges of some variables.
     *
     * @param args nothing; or a design file, then {@code pretension}, {@code span-length}, {@code elevation},
     *     {@code anchor-capacity} or {@code deployment-force} with its bounds, such as {@code "0.5 kN" "4 kN"}, and
     *     {@code everywhere} to move the falls along the whole line
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        List<DesignVariable> variables = args.length >= 4
                ? List.of(variable(args))
                : List.of(
                        DesignVariables.pretension(Interval.of(300, 8e3)),
                        DesignVariables.anchorCapacity(Interval.of(10e3, 60e3)),
                        DesignVariables.lineElevation(Interval.of(8.4, 10.4)),
                        DesignVariables.inlineActivation("hoist tower", Interval.of(4e3, 20e3)),
                        DesignVariables.workersTogether(Interval.of(1, 4)));
        boolean everywhere = args.length > 4 && args[4].equals("everywhere");
        FeasibleSearch search = FeasibleSearch.withCriteria(file.criteria())
                .withAnalysis(everywhere ? Envelope.withDefaults() : DesignAnalysis.withDefaults());
        System.out.println(
                everywhere
                        ? "Falls anywhere on the line. By ENERGY BALANCE alone; analyze looks in time as well."
                        : "The STATED FALLS BY ENERGY BALANCE; analyze looks at the whole line and in time.");
        System.out.println("Criteria: "
                + String.join(
                        ", ",
                        file.criteria().stream()
                                .map(Criterion::id)
                                .map(InertText::name)
                                .toList()));
        System.out.println(
                "All are met between the ends below. In parentheses: what closes an end, a criterion that is not met"
                        + " beyond it,");
        System.out.println("or the bound of the search.");
        for (DesignVariable each : variables) {
            print(search, file.design(), each);
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

    private static void print(FeasibleSearch search, LifelineDesign design, DesignVariable variable) {
        FeasibleResult r = search.solve(design, variable);
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
