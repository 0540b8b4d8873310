package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * What an arrest in time claims of its accuracy, beside a mesh that is finer: no peak of the first catch is off by more
 * than its allowance. In the suite a few lines beside a mesh twice as fine; in the long run 200 beside one eight times as
 * fine.
 */
class TransientBoundTest {
    private static final boolean LONG = Boolean.getBoolean("lifeline.long");
    private static final int LINES = LONG ? 200 : 3;
    private static final int FINER = LONG ? 8 : 2;

    private record Drawn(Lifeline line, Fall fall) {}

    /** Single spans and lines of three, taut and slack, gripped and running, with and without an absorber. */
    private static Drawn draw(long seed) {
        return draw(seed, false);
    }

    /** The same, or with an attachment that runs and a fall at 0.2 % of the span. */
    private static Drawn draw(long seed, boolean besideASupport) {
        Random r = new Random(seed * 7919 + 13);
        double span = 6 + 18 * r.nextDouble();
        Cable cable = Cable.builder()
                .axialStiffness((1.5 + 4 * r.nextDouble()) * 1e6)
                .massPerLength(0.2 + 0.4 * r.nextDouble())
                .build();
        Stiffness end = r.nextDouble() < 0.3 ? Stiffness.alongX(2e5 + 1e6 * r.nextDouble()) : Stiffness.rigid();
        double pretension = 300 * Math.pow(20, r.nextDouble());
        boolean three = seed % 4 == 3;
        Passage passage = r.nextBoolean() ? Passage.free() : Passage.friction(0.2 * r.nextDouble());
        Lifeline.Builder line = Lifeline.builder()
                .cable(cable)
                .support(Support.end("a", Point.of(0, 0, 10)).withStiffness(end))
                .pretension(pretension);
        if (three) {
            line.intermediateAnchor("p", Point.of(span, 0, 10), passage)
                    .intermediateAnchor("q", Point.of(2 * span, 0, 10), passage);
        }
        line.support(Support.end("b", Point.of(three ? 3 * span : span, 0, 10)).withStiffness(end));
        double force = 3000 + 3000 * r.nextDouble();
        Connection connection = r.nextBoolean()
                ? Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(force)
                                .maximumForce(force)
                                .maximumExtension(1.5)
                                .initialStiffness(1e5)
                                .build())
                : Connection.plainLanyard(1.8, LoadingCurve.spring(3e4 + 5e4 * r.nextDouble()));
        Worker worker = Worker.builder("w")
                .mass(60 + 70 * r.nextDouble())
                .walkingLevel(8.5)
                .attachment(r.nextBoolean() && !besideASupport ? Attachment.GRIPPED : Attachment.FREE_RUNNING)
                .connection(connection)
                .build();
        int number = three ? 1 + r.nextInt(3) : 1;
        double station = 0.1 + 0.8 * r.nextDouble();
        Fall fall = Fall.builder("f")
                .at(Place.of(number, span * (besideASupport ? 0.002 : station)))
                .faller(worker)
                .freeFall(0.5 + 1.3 * r.nextDouble())
                .build();
        return new Drawn(line.build(), fall);
    }

    @Test
    void noPeakIsOffByMoreThanItsAllowance() {
        TransientArrest analysis =
                TransientArrest.withDefaults().withEndAfterFirstCatch(0).withSampling(0.01);
        List<String> failures = new ArrayList<>();
        int accurate = 0;
        for (int seed = 0; seed < LINES; seed++) {
            Drawn d = draw(seed);
            TransientResult r = analysis.solve(d.line, d.fall);
            MeshRun.Mesh mesh = r.meshes().get(r.meshes().size() - 1).mesh();
            TransientResult fine = analysis.withRefinements(0)
                    .withSegmentLength(mesh.segmentLength() / FINER)
                    .solve(d.line, d.fall);
            accurate += r.accurate() ? 1 : 0;
            compare(failures, "seed " + seed, r, fine);
        }
        assertThat(failures).isEmpty();
        assertThat(accurate).as("claims of %s lines", LINES).isGreaterThan(LINES / 2);
    }

    /**
     * A ring that runs away from a post drew the cable there out of its mesh: a node that came in between them had half
     * of the ring's speed, and a raw tension of 9.4 kN was 10.4 kN on the next mesh, 11.4 kN on another.
     */
    @Test
    void aRingThatRunsAwayFromAPostHidesNothing() {
        TransientArrest analysis =
                TransientArrest.withDefaults().withEndAfterFirstCatch(0).withSampling(0.01);
        List<String> failures = new ArrayList<>();
        for (long seed : LONG ? new long[] {67, 39, 19, 23, 43, 119} : new long[] {67}) {
            Drawn d = draw(seed, true);
            double span = d.line.run(1);
            TransientResult r =
                    analysis.withRefinements(2).withSegmentLength(span / 32).solve(d.line, d.fall);
            TransientResult fine = analysis.withRefinements(0)
                    .withSegmentLength(span / (LONG ? 512 : 256))
                    .solve(d.line, d.fall);
            assertThat(r.meshes()).hasSize(3);
            compare(failures, "seed " + seed, r, fine);
            assertThat(fine.arrest().maximumTension())
                    .as("no spike, seed %s", seed)
                    .isCloseTo(fine.firstCatch().filteredTension(), Percentage.withPercentage(2));
        }
        assertThat(failures).isEmpty();
    }

    /** Complains of every peak that is farther from that on the finer mesh than its allowance. */
    private static void compare(List<String> failures, String name, TransientResult r, TransientResult fine) {
        check(failures, name + " tension", r.arrest().maximumTension(), new double[] {
            fine.arrest().maximumTension(), r.tensionAllowance()
        });
        check(failures, name + " filtered tension", r.firstCatch().filteredTension(), new double[] {
            fine.firstCatch().filteredTension(), r.allowances().tension().filteredForce()
        });
        check(failures, name + " arrest force", r.arrest().arrestForce(), new double[] {
            fine.arrest().arrestForce(), r.arrestForceAllowance()
        });
        for (SupportPeaks s : r.firstCatch().supports()) {
            SupportPeaks same = fine.firstCatch().support(s.id());
            check(failures, name + " " + s.id(), s.force().value(), new double[] {
                same.force().value(), r.supportAllowance(s.id())
            });
            check(failures, name + " filtered " + s.id(), s.filteredForce(), new double[] {
                same.filteredForce(), r.allowances().support(s.id()).filteredForce()
            });
        }
        check(failures, name + " lowest", r.firstCatch().worker("w").lowest().value(), new double[] {
            fine.firstCatch().worker("w").lowest().value(), r.fallDistanceAllowance()
        });
    }

    /** Complains if a value is farther from that on the finer mesh than the allowance, the second and third. */
    private static void check(List<String> failures, String what, double value, double[] fineAndAllowance) {
        double off = Math.abs(fineAndAllowance[0] - value);
        if (!(off <= fineAndAllowance[1])) {
            failures.add(what + ": " + value + " is off by " + off + ", allowed " + fineAndAllowance[1]);
        }
    }

    /**
     * A slack span of 30 m with a plain lanyard, from segments of 0.5 m: what once claimed 1 % was 8.8 % low. Now a claim
     * needs three meshes, and the allowance covers what a mesh of 31 mm finds.
     */
    @Test
    void aSlackSpanClaimsNoMoreThanItHas() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().axialStiffness(4e6).massPerLength(0.4).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(30, 0, 10))
                .installed(Installed.initialSag(1, 0.9))
                .build();
        Worker worker = Worker.builder("w")
                .mass(100)
                .walkingLevel(7.5)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(6e4)))
                .build();
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 15))
                .faller(worker)
                .freeFall(1.8)
                .build();
        TransientArrest analysis = TransientArrest.withDefaults()
                .withAccuracy(0.01)
                .withEndAfterFirstCatch(0)
                .withSampling(0.01);
        TransientResult coarse =
                analysis.withSegmentLength(0.5).withRefinements(2).solve(line, fall);
        TransientResult fine =
                analysis.withSegmentLength(0.0625).withRefinements(0).solve(line, fall);
        assertThat(coarse.accurate()).isFalse();
        assertThat(coarse.uncertainty()).isGreaterThan(0.01);
        assertThat(coarse.arrest().maximumTension() + coarse.tensionAllowance())
                .isGreaterThan(fine.arrest().maximumTension());
        assertThat(coarse.arrest().arrestForce() + coarse.arrestForceAllowance())
                .isGreaterThan(fine.arrest().arrestForce());
    }

    /** One mesh, and two, bound nothing: the allowances say so. */
    @Test
    void fewerThanThreeMeshesBoundNothing() {
        Drawn d = draw(1);
        for (int most = 0; most < 2; most++) {
            TransientResult r = TransientArrest.withDefaults()
                    .withRefinements(most)
                    .withEndAfterFirstCatch(0)
                    .solve(d.line, d.fall);
            assertThat(r.accurate()).isFalse();
            assertThat(r.tensionAllowance()).isInfinite();
            assertThat(r.arrestForceAllowance()).isInfinite();
            assertThat(r.supportAllowance("a")).isInfinite();
            assertThat(r.fallDistanceAllowance()).isInfinite();
            assertThat(r.arrest().motion().orElseThrow().allowances()).isNotNull();
        }
    }

    /** On a plateau the arrest force is the plateau's, and nothing is allowed for; the tension keeps its allowance. */
    @Test
    void aPlateauHasNoAllowance() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().axialStiffness(3e6).massPerLength(0.4).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(8, 0, 10))
                .pretension(1500)
                .build();
        Worker worker = Worker.builder("w")
                .mass(100)
                .walkingLevel(8.5)
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(5000)
                                .maximumForce(5000)
                                .maximumExtension(1.5)
                                .initialStiffness(1e5)
                                .build()))
                .build();
        Fall fall = Fall.builder("f").at(Place.of(1, 3)).faller(worker).build();
        TransientResult r = TransientArrest.withDefaults()
                .withRefinements(2)
                .withSegmentLength(0.25)
                .withEndAfterFirstCatch(0)
                .solve(line, fall);
        assertThat(r.arrest().arrestForce()).isCloseTo(5000, Offset.offset(1e-6));
        assertThat(r.arrestForceAllowance()).isBetween(0.0, 1e-6);
        assertThat(r.tensionAllowance()).isGreaterThan(0.05 * r.arrest().maximumTension());
        // The extension is bounded by what the meshes changed in it.
        assertThat(r.allowances().extensions().connection()).isBetween(0.0, 0.02);
        assertThat(r.allowances().extensions().inline()).isZero();
    }

    /** Long steps are a survey: nearly the same peaks in less than two thirds of the steps. */
    @Test
    void longStepsComeNearTheShortOnes() {
        TransientArrest analysis =
                TransientArrest.withDefaults().withRefinements(0).withEndAfterFirstCatch(0);
        for (long seed = 0; seed < (LONG ? 40 : 6); seed++) {
            Drawn d = draw(seed);
            TransientResult exact = analysis.solve(d.line, d.fall);
            TransientResult quick = analysis.withLongSteps().solve(d.line, d.fall);
            String name = "seed " + seed;
            assertThat(quick.relativeDrift()).as(name).isLessThan(2e-3);
            assertThat(quick.arrest().maximumTension())
                    .as(name)
                    .isCloseTo(exact.arrest().maximumTension(), Percentage.withPercentage(3));
            assertThat(quick.arrest().arrestForce())
                    .as(name)
                    .isCloseTo(exact.arrest().arrestForce(), Percentage.withPercentage(1));
            assertThat(quick.arrest().totalFallDistance())
                    .as(name)
                    .isCloseTo(exact.arrest().totalFallDistance(), Offset.offset(2e-3));
            assertThat(quick.timeStep()).as(name).isGreaterThan(1.3 * exact.timeStep());
        }
    }

    /** Ending after the first catch changes none of its peaks, and ends sooner. */
    @Test
    void anEndAfterTheFirstCatchKeepsItsPeaks() {
        Drawn d = draw(2);
        TransientArrest analysis = TransientArrest.withDefaults().withRefinements(0);
        TransientResult whole = analysis.solve(d.line, d.fall);
        TransientResult cut = analysis.withEndAfterFirstCatch(0.1).solve(d.line, d.fall);
        assertThat(cut.firstCatch().tension()).isEqualTo(whole.firstCatch().tension());
        assertThat(cut.firstCatch().workers()).isEqualTo(whole.firstCatch().workers());
        assertThat(cut.firstCatch().supports()).isEqualTo(whole.firstCatch().supports());
        assertThat(cut.firstCatchOver()).isTrue();
        double[] t = cut.history().times();
        double[] all = whole.history().times();
        assertThat(t[t.length - 1]).isLessThan(all[all.length - 1] - 0.5);
    }
}
