package org.lifeline.design.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.absorber.DeploymentForce;

class MonteCarloTest {
    private static final LifelineDesign DESIGN = Designs.fallInTheMiddle();
    private static final Evaluation LOAD =
            Evaluation.firstFall(DeploymentForce.MAXIMUM, List.of(Quantity.END_ANCHOR_LOAD, Quantity.SAG));

    private static final DesignVariable TENSION = DesignVariables.pretension(Interval.of(500, 5e3));
    private static final DesignVariable STIFFNESS = DesignVariables.axialStiffness(Interval.of(1e6, 1e7));
    private static final DesignVariable MASS = DesignVariables.workerMass(Interval.of(50, 150));
    private static final DesignVariable FORCE = DesignVariables.deploymentForce(Interval.of(4e3, 8e3));

    private static final double[] MEANS = {1500, 4.9e6, 6000};
    private static final double[] DEVIATIONS = {120, 2.5e5, 300};

    private static List<UncertainVariable> normal() {
        DesignVariable[] v = {TENSION, STIFFNESS, FORCE};
        List<UncertainVariable> list = new ArrayList<>();
        for (int k = 0; k < v.length; k++) {
            list.add(new UncertainVariable(v[k], Distribution.normal(MEANS[k], DEVIATIONS[k])));
        }
        return list;
    }

    /** Gradient of the load at the means, by central differences [1/unit of the variable]. */
    private static double[] gradient() {
        double[] g = new double[3];
        List<UncertainVariable> u = normal();
        for (int k = 0; k < 3; k++) {
            double h = 1e-3 * MEANS[k];
            double[] f = new double[2];
            for (int side = 0; side < 2; side++) {
                LifelineDesign d = DESIGN;
                for (int j = 0; j < 3; j++) {
                    double x = MEANS[j] + (j == k ? (side == 0 ? -h : h) : 0);
                    d = u.get(j).variable().apply(d, x);
                }
                f[side] = LOAD.evaluate(d)[0];
            }
            g[k] = (f[1] - f[0]) / (2 * h);
        }
        return g;
    }

    /**
     * A load that is linear in normal variables is normal, with the variance Σ (gᵢ σᵢ)²: mean, deviation, quantiles,
     * regression coefficients and their sum of squares are known in closed form. Tolerances: four standard errors of
     * 100,000 cases, and 0.01 % for the bins of the quantiles.
     */
    @Test
    void aLinearisedCaseAgreesWithItsClosedForm() {
        double[] g = gradient();
        double atMeans = LOAD.evaluate(DESIGN)[0];
        double variance = 0;
        for (int k = 0; k < 3; k++) {
            variance += g[k] * g[k] * DEVIATIONS[k] * DEVIATIONS[k];
        }
        double deviation = Math.sqrt(variance);
        Evaluation linear = Evaluation.ofOne(new Response("linearised load", "N"), d -> {
            double force = d.workers()
                    .get(0)
                    .connection()
                    .curve(DeploymentForce.MAXIMUM)
                    .activationForce();
            return atMeans
                    + g[0] * (d.line().installed().value() - MEANS[0])
                    + g[1] * (d.line().cable().elongation().initialStiffness() - MEANS[1])
                    + g[2] * (force - MEANS[2]);
        });
        int n = 100_000;

        MonteCarloResult r = MonteCarlo.withSeed(20).solve(DESIGN, normal(), linear, n);

        Summary s = r.summaries().get(0);
        assertThat(r.failed()).isZero();
        assertThat(s.count()).isEqualTo(n);
        assertThat(s.mean()).isEqualTo(atMeans, within(4 * deviation / Math.sqrt(n)));
        assertThat(s.deviation()).isEqualTo(deviation, within(4 * deviation / Math.sqrt(2.0 * n)));
        // Quantiles of the standard normal distribution: 0, 1.644854, 2.326348 (any table).
        double[] shares = {0.5, 0.95, 0.99};
        double[] z = {0, 1.644854, 2.326348};
        for (int i = 0; i < shares.length; i++) {
            double expected = atMeans + z[i] * deviation;
            double density = Math.exp(-0.5 * z[i] * z[i]) / Math.sqrt(2 * Math.PI) / deviation;
            double error = Math.sqrt(shares[i] * (1 - shares[i]) / n) / density;
            QuantileEstimate q = s.quantile(shares[i]);
            assertThat(q.value()).isEqualTo(expected, within(4 * error + 1e-4 * expected));
            assertThat(q.low()).isLessThanOrEqualTo(q.value());
            assertThat(q.high()).isGreaterThanOrEqualTo(q.value());
            assertThat(q.high() - q.low()).isEqualTo(2 * 1.96 * error, within(0.2 * error + 4e-4 * expected));
        }
        assertThat(s.shareAbove(atMeans + 1.644854 * deviation)).isEqualTo(0.05, within(0.005));
        Interval range = s.shareAboveRange(atMeans + 1.644854 * deviation);
        assertThat(range.width()).isEqualTo(2 * 1.96 * Math.sqrt(0.05 * 0.95 / n), within(1e-4));
        assertThat(s.meanRange().contains(s.mean())).isTrue();
        assertThat(r.determination(0)).isEqualTo(1, within(1e-9));
        List<Sensitivity> ranking = r.ranking(0);
        for (Sensitivity each : ranking) {
            int k = List.of(TENSION.name(), STIFFNESS.name(), FORCE.name())
                    .indexOf(each.variable().name());
            double expected = g[k] * DEVIATIONS[k] / deviation;
            assertThat(each.regression()).isEqualTo(expected, within(4 / Math.sqrt(n)));
            assertThat(each.correlation()).isEqualTo(expected, within(4 / Math.sqrt(n)));
            assertThat(each.rankCorrelation())
                    .as("of 4,096 cases")
                    .isEqualTo(6 / Math.PI * Math.asin(expected / 2), within(4.5 / 64));
        }
        for (int i = 1; i < ranking.size(); i++) {
            assertThat(Math.abs(ranking.get(i).regression()))
                    .isLessThanOrEqualTo(Math.abs(ranking.get(i - 1).regression()));
        }
    }

    /** The real arrest with small deviations is nearly its linearised self. */
    @Test
    void theRealCaseIsNearItsLinearisation() {
        double[] g = gradient();
        double variance = 0;
        for (int k = 0; k < 3; k++) {
            variance += g[k] * g[k] * DEVIATIONS[k] * DEVIATIONS[k];
        }
        int n = 4000;
        MonteCarloResult r = MonteCarlo.withSeed(7).solve(DESIGN, normal(), LOAD, n);
        double deviation = Math.sqrt(variance);
        assertThat(r.summaries().get(0).deviation())
                .as("standard error %s, curvature a little more", deviation / Math.sqrt(2.0 * n))
                .isEqualTo(deviation, within(0.05 * deviation));
        assertThat(r.determination(0)).isGreaterThan(0.99);
        assertThat(r.ranking(0).get(0).variable().name()).isEqualTo(FORCE.name());
    }

    @Test
    void anyNumberOfThreadsGivesTheSameDigits() {
        List<String> alone = new ArrayList<>();
        MonteCarloResult a = MonteCarlo.withSeed(5)
                .withRows(row -> alone.add(row.toString()))
                .solve(DESIGN, normal(), LOAD, 1500);
        for (int threads : new int[] {1, 2, 5}) {
            ExecutorService pool = Executors.newFixedThreadPool(threads);
            try {
                List<String> rows = new ArrayList<>();
                MonteCarloResult b = MonteCarlo.withSeed(5)
                        .withExecutor(pool)
                        .withRows(row -> rows.add(row.toString()))
                        .solve(DESIGN, normal(), LOAD, 1500);
                assertThat(rows).isEqualTo(alone);
                for (int i = 0; i < 2; i++) {
                    assertThat(b.summaries().get(i).mean())
                            .isEqualTo(a.summaries().get(i).mean());
                    assertThat(b.summaries().get(i).deviation())
                            .isEqualTo(a.summaries().get(i).deviation());
                    assertThat(b.summaries().get(i).quantile(0.9))
                            .isEqualTo(a.summaries().get(i).quantile(0.9));
                    assertThat(b.ranking(i).toString()).isEqualTo(a.ranking(i).toString());
                }
            } finally {
                pool.shutdown();
            }
        }
    }

    @Test
    void aLongerStudyBeginsWithTheCasesOfAShorterOne() {
        List<String> shorter = new ArrayList<>();
        List<String> longer = new ArrayList<>();
        MonteCarlo.withSeed(5).withRows(r -> shorter.add(r.toString())).solve(DESIGN, normal(), LOAD, 40);
        MonteCarlo.withSeed(5).withRows(r -> longer.add(r.toString())).solve(DESIGN, normal(), LOAD, 90);
        assertThat(longer.subList(0, 40)).isEqualTo(shorter);
        List<String> other = new ArrayList<>();
        MonteCarlo.withSeed(6).withRows(r -> other.add(r.toString())).solve(DESIGN, normal(), LOAD, 40);
        assertThat(other).doesNotContainAnyElementsOf(shorter);
    }

    @Test
    void aCaseThatFailsIsARowWithItsReason() {
        List<StudyRow> rows = new ArrayList<>();
        List<UncertainVariable> masses =
                List.of(new UncertainVariable(MASS, Distribution.uniform(Interval.of(-50, 100))));
        MonteCarloResult r = MonteCarlo.withSeed(3).withRows(rows::add).solve(DESIGN, masses, LOAD, 300);
        assertThat(r.cases()).isEqualTo(300);
        assertThat(r.failed()).isBetween(160L, 240L); // two thirds of the range
        assertThat(r.failures()).hasSize((int) r.failed()).allSatisfy(f -> {
            assertThat(f.input(0)).isLessThan(50);
            assertThat(f.reason()).contains("mass").contains("was drawn outside the bounds of the variable");
            assertThat(f.output(0)).isNaN();
        });
        assertThat(rows).hasSize(300);
        assertThat(r.summaries().get(0).count()).isEqualTo(300 - r.failed());
    }

    @Test
    void stoppingKeepsWhatWasDone() {
        List<StudyRow> rows = new ArrayList<>();
        MonteCarloResult r = MonteCarlo.withSeed(3)
                .withProgress((done, total) -> done < 512)
                .withRows(rows::add)
                .solve(DESIGN, normal(), LOAD, 10_000);
        assertThat(r.isComplete()).isFalse();
        assertThat(r.cases()).isEqualTo(512);
        assertThat(rows).hasSize(512);
        assertThat(r.summaries().get(0).count()).isEqualTo(512);
    }

    @Test
    void aResponseThatIsAbsentIsLeftOut() {
        Evaluation absent = Evaluation.firstFall(DeploymentForce.MAXIMUM, List.of(Quantity.INLINE_EXTENSION));
        MonteCarloResult r = MonteCarlo.withSeed(3).solve(DESIGN, normal(), absent.and(LOAD), 20);
        assertThat(r.summaries().get(0).count()).isZero();
        assertThat(r.summaries().get(0).mean()).isNaN();
        assertThat(r.summaries().get(1).count()).isEqualTo(20);
        assertThatThrownBy(() -> r.summaries().get(0).quantile(0.5)).isInstanceOf(InvalidInputException.class);
        assertThat(r.ranking(0).get(0).regression()).isNaN();
    }

    @Test
    void badSettingsAreRefused() {
        assertThatThrownBy(() -> MonteCarlo.withSeed(1).solve(DESIGN, List.of(), LOAD, 0))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("variables")
                .hasMessageContaining("cases");
        assertThatThrownBy(() -> Evaluation.of(List.of(), d -> new double[0]))
                .isInstanceOf(InvalidInputException.class);
    }
}
