package org.lifeline.examples.programs;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import org.lifeline.analysis.Statics;
import org.lifeline.base.InertText;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.design.study.Distribution;
import org.lifeline.design.study.Evaluation;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.study.MonteCarloResult;
import org.lifeline.design.study.QuantileEstimate;
import org.lifeline.design.study.Sensitivity;
import org.lifeline.design.study.StudyCsv;
import org.lifeline.design.study.Summary;
import org.lifeline.design.study.UncertainVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.design.variable.GoverningCases;
import org.lifeline.examples.cli.Progress;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.FileArguments;
import org.lifeline.examples.shared.LineScope;
import org.lifeline.file.DesignFile;
import org.lifeline.file.output.FileKind;
import org.lifeline.file.output.Output;
import org.lifeline.file.output.OutputSet;
import org.lifeline.model.Installed;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.PublishedScatter;

/** Nobody knows pretension, friction, mass and deployment force exactly: a Monte Carlo study of a design. */
public final class UncertainLine {
    private static final List<Quantity> LOOKED_AT = List.of(Quantity.END_ANCHOR_LOAD, Quantity.TOTAL_FALL_DISTANCE);

    private UncertainLine() {}

    /**
     * Prints quantiles of the worst values and which variable matters most.
     *
     * @param args nothing; or a design file, the number of cases, and the file that all cases go to, such as
     *     {@code cases.csv}; {@code --stated-falls} keeps to the stated falls
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        FileArguments given = FileArguments.of(args);
        try (OutputSet outputs = given.outputsOfDesign();
                LineScope scope = LineScope.of(given.has(FileArguments.STATED_FALLS))) {
            run(outputs, given.plain(), scope);
        }
    }

    private static void run(OutputSet outputs, String[] args, LineScope scope) throws IOException {
        DesignFile file = DesignArgument.read(args);
        long cases = args.length > 1 ? FileArguments.cases(args[1]) : 200;
        Output table = args.length > 2 ? outputs.claim(args[2], FileKind.CASES) : null;
        List<UncertainVariable> variables = variables(file);
        WorstCases analysis = scope.analysis();
        System.out.println(scope.words());
        if (!scope.isStatedFalls()) {
            GoverningCases governing = governing(scope, file.design(), variables);
            System.out.println(String.format(
                    Locale.ROOT,
                    "Each case is computed for the %d places and combinations that govern in%nenvelopes of the design as it is and"
                            + " with each variable at its 5 %% and its%n95 %% point. With all at their 25 %% or 75 %% points a whole"
                            + " envelope gives%nat most %.2f %% more.",
                    governing.size(),
                    100 * missed(scope, governing, file.design(), variables)));
            analysis = governing;
        }
        System.out.println("assumed, for want of measurements:");
        variables.forEach(u -> System.out.println(
                String.format(Locale.ROOT, "  %-36s %s", u.variable().name(), u.distribution())));
        Evaluation evaluation = Evaluation.worst(analysis, LOOKED_AT);
        MonteCarlo study = MonteCarlo.withSeed(2026)
                .withExecutor(scope.threads())
                .withProgress(new Progress(System.err, System::nanoTime));
        if (table != null) {
            MonteCarloResult result;
            try (Writer out = new OutputStreamWriter(table.open(), StandardCharsets.UTF_8)) {
                StudyCsv csv = StudyCsv.begin(
                        out, variables.stream().map(UncertainVariable::variable).toList(), evaluation.responses());
                result = study.withRows(csv).solve(file.design(), variables, evaluation, cases);
            }
            outputs.commit();
            print(result);
        } else {
            print(study.solve(file.design(), variables, evaluation, cases));
        }
    }

    /** The cases that govern in the design and at both ends of what each variable is likely to be. */
    private static GoverningCases governing(LineScope scope, LifelineDesign design, List<UncertainVariable> variables) {
        GoverningCases cases =
                GoverningCases.of(scope.envelope()).and(scope.envelope().extremes(design));
        for (UncertainVariable each : variables) {
            for (double share : new double[] {0.05, 0.95}) {
                double value = each.distribution().quantile(share);
                cases = cases.and(scope.envelope().extremes(each.variable().apply(design, value)));
            }
        }
        return cases;
    }

    /** By which share a whole envelope is worse than the cases, between the points that they are from [-]. */
    private static double missed(
            LineScope scope, GoverningCases cases, LifelineDesign design, List<UncertainVariable> variables) {
        double most = 0;
        for (double share : new double[] {0.25, 0.75}) {
            LifelineDesign d = design;
            for (UncertainVariable each : variables) {
                d = each.variable().apply(d, each.distribution().quantile(share));
            }
            Extremes whole = scope.envelope().extremes(d);
            Extremes some = cases.extremes(d);
            for (Quantity q : LOOKED_AT) {
                if (whole.of(q).isPresent() && some.of(q).isPresent()) {
                    most = Math.max(
                            most, whole.of(q).get().value() / some.of(q).get().value() - 1);
                }
            }
        }
        return most;
    }

    /**
     * Scatter about what the design states: pretension 15 %; absorbers as published on average ({@link PublishedScatter}), with 6 %
     * about it.
     */
    static List<UncertainVariable> variables(DesignFile file) {
        LifelineDesign design = file.design();
        Interval any = Interval.of(1, 1e6);
        List<UncertainVariable> list = new ArrayList<>();
        list.add(new UncertainVariable(
                file.following(DesignVariables.pretension(any)), Distribution.logNormal(pretension(design), 0.15)));
        if (design.line().supports().stream()
                .anyMatch(s -> !s.isEnd() && s.passage().kind() != Passage.Kind.CLAMPED)) {
            list.add(new UncertainVariable(
                    file.following(DesignVariables.friction(Interval.of(0, 1))),
                    Distribution.uniform(Interval.of(0.05, 0.2))));
        }
        list.add(new UncertainVariable(
                DesignVariables.workerMass(any), Distribution.truncatedNormal(95, 12, Interval.of(60, 140))));
        double[] forces = design.workers().stream()
                .mapToDouble(w -> w.connection().curve(DeploymentForce.MAXIMUM).activationForce())
                .toArray();
        if (DoubleStream.of(forces).allMatch(f -> f > 0)) {
            double most = DoubleStream.of(forces).max().orElseThrow();
            list.add(new UncertainVariable(
                    DesignVariables.deploymentForce(any),
                    Distribution.normal(PublishedScatter.AVERAGE_OVER_MAXIMUM * most, 0.06 * most)));
        }
        return list;
    }

    /** Tension at the first end [N]: as the design states it, where it does; otherwise what the stated state comes to. */
    private static double pretension(LifelineDesign design) {
        Installed installed = design.line().installed();
        return installed.form() == Installed.Form.PRETENSION
                ? installed.value()
                : Statics.withDefaults().solve(design.line(), List.of()).firstTension();
    }

    private static void print(MonteCarloResult r) {
        System.out.println(r.cases() + " cases, seed " + r.seed() + ", " + r.failed() + " failed");
        r.incompleteBecause()
                .ifPresent(why -> System.out.println("Not the statistics of all cases: " + InertText.plain(why)));
        if (r.failed() == r.cases()) {
            System.out.println("No case has a result: there are no statistics.");
            return;
        }
        for (int i = 0; i < r.summaries().size(); i++) {
            Summary s = r.summaries().get(i);
            System.out.println();
            System.out.println(String.format(
                    Locale.ROOT, "%s: mean %.4g, standard deviation %.3g", s.response(), s.mean(), s.deviation()));
            for (double share : new double[] {0.05, 0.5, 0.95}) {
                QuantileEstimate q = s.quantile(share);
                System.out.println(String.format(
                        Locale.ROOT, "  %2.0f %%  %.4g (%.4g to %.4g)", 100 * share, q.value(), q.low(), q.high()));
            }
            System.out.println(String.format(
                    Locale.ROOT, "  regression explains %.1f %% of the variance", 100 * r.determination(i)));
            for (Sensitivity each : r.ranking(i)) {
                System.out.println(String.format(
                        Locale.ROOT,
                        "  %-36s regression %6.3f, rank correlation %6.3f",
                        each.variable().name(),
                        each.regression(),
                        each.rankCorrelation()));
            }
        }
    }
}
