package org.lifeline.spark;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.api.java.JavaSparkContext;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.study.Distribution;
import org.lifeline.design.study.Evaluation;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.study.MonteCarloResult;
import org.lifeline.design.study.UncertainVariable;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.study.StudyFile;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * A study on Apache Spark. What travels is small and plain: the bytes of the design file and two numbers to a machine, the
 * stored part of the study back. Spark may do a part twice when a machine is lost: only one of the two is put together, and both
 * are equal. Immutable and thread-safe.
 *
 * @param design bytes of the design file
 * @param seed seed of the study
 * @param cases number of cases
 */
public record SparkStudy(byte[] design, long seed, long cases) implements Serializable {
    /** What is computed in each case. A machine that is sent this study builds it anew. */
    private static Evaluation evaluation() {
        return Evaluation.firstFall(
                DeploymentForce.MAXIMUM, List.of(Quantity.END_ANCHOR_LOAD, Quantity.TOTAL_FALL_DISTANCE));
    }

    private static List<UncertainVariable> variables() {
        return List.of(
                new UncertainVariable(
                        DesignVariables.workerMass(Interval.of(40, 160)), Distribution.normal(95, 10)),
                new UncertainVariable(
                        DesignVariables.axialStiffness(Interval.of(1e5, 1e8)), Distribution.logNormal(3e6, 0.1)));
    }

    /**
     * One part, in the machine that calls this.
     *
     * @param first number of the first case
     * @param last number of the last case
     * @return the part
     */
    public StudyPartial part(long first, long last) {
        DesignFile file = new DesignReader().read(design);
        return MonteCarlo.withSeed(seed)
                .withCases(first, last)
                .ofStudy(file.sha256())
                .solve(file.design(), variables(), evaluation());
    }

    /**
     * The whole study on Spark.
     *
     * @param spark the connection to Spark
     * @param parts number of parts, at least as many as there are machines
     * @return the result, that of one machine to the last digit
     */
    public MonteCarloResult solve(JavaSparkContext spark, int parts) {
        List<long[]> ranges = new ArrayList<>();
        for (CaseRange each : CaseRange.parts(cases, parts)) {
            ranges.add(new long[] {each.first(), each.last()});
        }
        byte[] all = spark.parallelize(ranges, parts)
                .map(r -> StudyFile.write(part(r[0], r[1])))
                .reduce((a, b) -> StudyFile.write(StudyFile.read(a).merge(StudyFile.read(b))));
        return MonteCarloResult.of(
                StudyFile.read(all), variables(), evaluation().responses(), cases);
    }

    /**
     * The whole study in this machine.
     *
     * @return the result
     */
    public MonteCarloResult solveHere() {
        return MonteCarlo.withSeed(seed)
                .solve(new DesignReader().read(design).design(), variables(), evaluation(), cases);
    }
}
