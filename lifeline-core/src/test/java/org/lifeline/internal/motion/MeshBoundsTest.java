package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * The bounds of what finer meshes would change: they cover what one finer mesh changes, and a force that is held by a
 * plateau is bounded by the plateau, whatever its extension does.
 */
class MeshBoundsTest {
    private static final double PLATEAU = 4000;

    /** Two meshes more than are needed for a bound, on a line with an absorber at its start. */
    private static final MeshRefinement COARSE = inline(2);

    private static final MeshRefinement FINE = inline(3);

    private static LoadingCurve plateau(double force) {
        return LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(2, force)), 8e5, 2e5);
    }

    private static MeshRefinement inline(int refinements) {
        return MeshRefinement.run(
                MotionCases.setup(MotionCases.withAbsorber(plateau(6000)), 4, true),
                MotionCases.request(1e-9, refinements, 2));
    }

    private static MeshRefinement withLanyard(LoadingCurve curve, int refinements) {
        LineModel model = MotionCases.single();
        MotionSetup setup = new MotionSetup(model, 5e-4);
        MotionSetup.Timing timing = new MotionSetup.Timing(0, 1, true);
        setup.attach(
                0,
                model.pointAtStation(0, 4),
                true,
                List.of(new MotionSetup.Person(100, curve, MotionCases.TAUT, timing)));
        return MeshRefinement.run(setup, MotionCases.request(1e-9, refinements, 2));
    }

    private static double change(ToDoubleFunction<PeakValues> peak) {
        return Math.abs(peak.applyAsDouble(FINE.motion().firstCatch())
                - peak.applyAsDouble(COARSE.motion().firstCatch()));
    }

    /** Every bound on three meshes covers what the fourth mesh changes, and is no larger than what it bounds. */
    @Test
    void boundsCoverTheNextMesh() {
        PeakValues last = COARSE.motion().firstCatch();
        assertThat(COARSE.levels()).hasSize(3);
        assertThat(FINE.levels()).hasSize(4);
        assertThat(last.inline[0]).isGreaterThan(0.05);
        assertThat(COARSE.inlineBound()).isBetween(change(p -> p.inline[0]), last.inline[0]);
        assertThat(COARSE.extensionBound()).isBetween(change(p -> p.extension[0]), last.extension[0]);
        assertThat(COARSE.lowestBound()).isBetween(change(p -> p.lowest[0]), COARSE.fallDistance());
        assertThat(COARSE.arrestForceBound()).isBetween(change(p -> p.force[0]), last.force[0]);
        assertThat(COARSE.bound(MeshRefinement.Force.tension())).isGreaterThanOrEqualTo(change(p -> p.tension));
        assertThat(COARSE.filteredBound(MeshRefinement.Force.tension()))
                .isBetween(change(p -> p.filteredTension), last.filteredTension);
        for (int i = 0; i < 2; i++) {
            int k = i;
            // The cable of half a segment is lumped at an anchor, and its weight goes with the mesh: the bound has it
            // in it.
            assertThat(COARSE.supportBound(k)).as("support %d", k).isGreaterThanOrEqualTo(change(p -> p.support[k]));
            assertThat(COARSE.filteredBound(MeshRefinement.Force.onSupport(k)))
                    .as("support %d", k)
                    .isBetween(change(p -> p.filteredSupport[k]), last.filteredSupport[k]);
        }
    }

    /** Where the line pulls through an absorber on its plateau, finer meshes cannot change the force on the anchor. */
    @Test
    void aPlateauBoundsTheForceOnItsAnchor() {
        MeshRefinement.Force start = MeshRefinement.Force.onSupport(0);
        assertThat(COARSE.motion().firstCatch().support[0]).isCloseTo(6000, within(30.0));
        assertThat(COARSE.supportBound(0)).as("through the absorber").isLessThan(5);
        assertThat(COARSE.bound(start)).as("by the meshes alone").isGreaterThan(50);
        assertThat(COARSE.supportBound(1))
                .as("at the other end there is none")
                .isGreaterThanOrEqualTo(COARSE.bound(MeshRefinement.Force.onSupport(1)));
        MeshRefinement without = withLanyard(LoadingCurve.spring(MotionCases.LANYARD), 2);
        assertThat(without.inlineBound()).isZero();
        assertThat(without.supportBound(0)).isGreaterThanOrEqualTo(without.bound(start));
    }

    /** On a plateau the arrest force is that of the plateau; on a spring it goes with the extension, F = k x. */
    @Test
    void theArrestForceIsBoundedByItsCurve() {
        MeshRefinement torn = withLanyard(plateau(PLATEAU), 2);
        PeakValues p = torn.motion().firstCatch();
        assertThat(torn.arrestForce(p)).isCloseTo(PLATEAU, within(1e-3)).isEqualTo(p.force[0]);
        assertThat(torn.arrestForceBound()).isLessThan(1e-3);
        assertThat(torn.extensionBound()).as("though its extension changes").isGreaterThan(1e-4);
        assertThat(torn.filteredArrestForce(p)).isEqualTo(p.filteredForce[0]).isPositive();
        assertThat(torn.lowest(p)).isEqualTo(p.lowest[0]);

        MeshRefinement spring = withLanyard(LoadingCurve.spring(MotionCases.LANYARD), 2);
        double force = spring.arrestForce(spring.motion().firstCatch());
        assertThat(force).isGreaterThan(PLATEAU);
        assertThat(spring.arrestForceBound()).isBetween(1.0, force);
    }

    /** The uncertainty is the largest of all bounds, each as a share of its force or of the arrest force. */
    @Test
    void theUncertaintyIsTheLargestOfAllShares() {
        PeakValues last = COARSE.motion().firstCatch();
        double arrest = COARSE.arrestForce(last);
        double filteredArrest = Math.max(arrest, last.filteredForce[0]);
        MeshRefinement.Force tension = MeshRefinement.Force.tension();
        double most = COARSE.lowestBound() / COARSE.fallDistance();
        most = Math.max(most, COARSE.arrestForceBound() / arrest);
        most = Math.max(most, COARSE.bound(tension) / Math.max(last.tension, arrest));
        most = Math.max(most, COARSE.filteredBound(tension) / Math.max(last.filteredTension, filteredArrest));
        for (int i = 0; i < 2; i++) {
            double filtered = Math.max(last.filteredSupport[i], filteredArrest);
            most = Math.max(most, COARSE.filteredBound(MeshRefinement.Force.onSupport(i)) / filtered);
        }
        assertThat(COARSE.uncertainty()).isGreaterThanOrEqualTo(most);
        assertThat(COARSE.uncertainty()).isLessThan(1);
    }

    /**
     * Of every force, over that force or the arrest force, whichever is larger, as it is and filtered; on a support no less than
     * over half of the tension; and of the lowest point over the fall: the largest of these is the uncertainty, and no other.
     */
    @Test
    void nothingButTheseSharesIsInTheUncertainty() {
        MeshRefinement plain = withLanyard(LoadingCurve.spring(MotionCases.LANYARD), 2);
        MeshRefinement torn = withLanyard(plateau(PLATEAU), 2);
        for (MeshRefinement each : List.of(COARSE, FINE, plain, torn)) {
            PeakValues last = each.motion().firstCatch();
            double arrest = last.force[0];
            List<Double> shares = new ArrayList<>();
            shares.add(each.lowestBound() / each.fallDistance());
            shares.add(each.arrestForceBound() / arrest);
            MeshRefinement.Force force = new MeshRefinement.Force(p -> p.force[0], p -> p.filteredForce[0]);
            shares.add(each.filteredBound(force) / Math.max(arrest, last.filteredForce[0]));
            MeshRefinement.Force tension = MeshRefinement.Force.tension();
            shares.add(each.bound(tension) / Math.max(arrest, last.tension));
            shares.add(each.filteredBound(tension) / Math.max(arrest, last.filteredTension));
            for (int i = 0; i < last.support.length; i++) {
                double size = Math.max(Math.max(arrest, last.support[i]), 0.5 * last.tension);
                shares.add(each.supportBound(i) / size);
                MeshRefinement.Force support = MeshRefinement.Force.onSupport(i);
                shares.add(each.filteredBound(support) / Math.max(arrest, last.filteredSupport[i]));
            }
            assertThat(each.uncertainty()).isCloseTo(Collections.max(shares), within(1e-12 * Collections.max(shares)));
        }
    }

    /**
     * A front on n segments is n^(−2/3) of the span wide and may hide 2.4 times that of a peak as it is, 1.4 times of a filtered
     * one: transient.md, section 3. A bound is no less, of the force or of the arrest force, whichever is larger.
     */
    @Test
    void noBoundIsLessThanWhatAFrontMayHide() {
        double front = Math.pow(MotionCases.SPAN / FINE.levels().get(3).segment(), -2.0 / 3);
        assertThat(FINE.levels().get(3).segment()).isCloseTo(0.25, within(1e-12));
        PeakValues last = FINE.motion().firstCatch();
        double arrest = last.force[0];
        MeshRefinement.Force tension = MeshRefinement.Force.tension();
        assertThat(FINE.bound(tension))
                .isGreaterThanOrEqualTo(2.4 * front * Math.max(arrest, last.tension) * (1 - 1e-12))
                .isGreaterThanOrEqualTo(1.5 * (last.tension - last.filteredTension));
        assertThat(FINE.filteredBound(tension))
                .isGreaterThanOrEqualTo(1.4 * front * Math.max(arrest, last.filteredTension) * (1 - 1e-12));
        // A force that is nothing on every mesh: of it there is only what a front brings of the arrest force.
        MeshRefinement.Force idle = new MeshRefinement.Force(p -> 0, p -> 0);
        assertThat(FINE.bound(idle)).isCloseTo(2.4 * front * arrest, within(1e-9 * arrest));
        assertThat(FINE.filteredBound(idle)).isCloseTo(1.4 * front * arrest, within(1e-9 * arrest));
        // One that a filter takes away altogether is a spike, of which half as much again may be hidden.
        MeshRefinement.Force spike = new MeshRefinement.Force(p -> 10 * arrest, p -> 0);
        assertThat(FINE.bound(spike)).isCloseTo(15 * arrest, within(1e-9 * arrest));
    }

    /** The arrest force goes with the extension: on a spring by the stiffness, over what a front may bring of the extension. */
    @Test
    void theForceOfASpringIsBoundedByItsExtension() {
        MeshRefinement spring = withLanyard(LoadingCurve.spring(MotionCases.LANYARD), 2);
        PeakValues last = spring.motion().firstCatch();
        double n = MotionCases.SPAN / spring.levels().get(2).segment();
        double front = 2.4 * last.extension[0] * Math.pow(n, -2.0 / 3);
        double byCurve = MotionCases.LANYARD * Math.max(front, spring.extensionBound());
        double byMeshes = spring.bound(new MeshRefinement.Force(p -> p.force[0], p -> p.filteredForce[0]));
        assertThat(spring.arrestForceBound()).isCloseTo(Math.min(byCurve, byMeshes), within(1e-6 * byCurve));
    }

    /** Meshes without a length asked for are not halved to less than 20 mm once three of them bound the error. */
    @Test
    void meshesThatFollowFromTheSpanAreNotHalvedWithoutEnd() {
        LineModel model = new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(1e5).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(1.2, 0, 10))
                .pretension(300)
                .build());
        MotionSetup setup = MotionCases.setup(model, 0.5, true);
        MeshRefinement.Course course = new MeshRefinement.Course(new Motion.Sampling(0.47, 0.01), OptionalDouble.of(0));
        for (int refinements : new int[] {0, 1, 6}) {
            MeshRefinement automatic = MeshRefinement.run(
                    setup, new MeshRefinement.Request(1e-9, refinements, OptionalDouble.empty(), course));
            List<MeshRefinement.Level> levels = automatic.levels();
            double finest = levels.get(levels.size() - 1).segment();
            if (refinements < 2) {
                assertThat(levels).hasSize(refinements + 1);
            } else {
                assertThat(levels).hasSizeGreaterThanOrEqualTo(3);
                assertThat(0.5 * finest).isLessThan(0.02);
                assertThat(levels.size() == 3 || finest >= 0.02).isTrue();
            }
        }
        double first = NumericalParameters.firstLength(1.2);
        // A length that was asked for is halved as often as that was asked for.
        MeshRefinement asked =
                MeshRefinement.run(setup, new MeshRefinement.Request(1e-9, 3, OptionalDouble.of(first), course));
        assertThat(asked.levels()).hasSize(4);
        assertThat(asked.levels().get(3).segment()).isCloseTo(first / 8, within(1e-12));
    }

    /** Without a length asked for the first mesh is that of its span, and no segment is longer than half of the span. */
    @Test
    void theFirstMeshFollowsFromTheSpan() {
        MotionSetup setup = MotionCases.setup(MotionCases.single(), 4, true);
        MeshRefinement.Course course =
                new MeshRefinement.Course(new Motion.Sampling(0.6, 0.01), OptionalDouble.of(0.01));
        MeshRefinement whole =
                MeshRefinement.run(setup, new MeshRefinement.Request(1, 0, OptionalDouble.of(100), course));
        assertThat(whole.levels().get(0).segment()).isCloseTo(0.5 * MotionCases.SPAN, within(1e-12));
        MeshRefinement automatic =
                MeshRefinement.run(setup, new MeshRefinement.Request(1, 0, OptionalDouble.empty(), course));
        assertThat(automatic.levels().get(0).segment()).isEqualTo(NumericalParameters.firstLength(MotionCases.SPAN));
        assertThat(automatic.motion().time()).as("no longer than the duration").isCloseTo(0.6, within(1e-3));
    }

    @Test
    void aRunEndsAfterTheCatch() {
        MotionSetup setup = MotionCases.setup(MotionCases.single(), 4, true);
        MeshRefinement.Course plain = new MeshRefinement.Course(new Motion.Sampling(3, 0.01), OptionalDouble.empty());
        double caught = end(setup, plain.endedAfterCatch(0));
        assertThat(end(setup, plain.endedAfterCatch(0.3))).isCloseTo(caught + 0.3, within(1e-3));
        assertThat(end(setup, plain)).isCloseTo(3, within(1e-3));
        assertThat(end(setup, plain.sampled(new Motion.Sampling(2, 0.1)))).isCloseTo(2, within(1e-3));
        double once = MeshRefinement.run(setup, request(plain.endedAfterCatch(0)))
                .motion()
                .stepLength();
        MeshRefinement.Course twice = plain.endedAfterCatch(0).inLongSteps();
        assertThat(twice.steps()).isEqualTo(2);
        assertThat(MeshRefinement.run(setup, request(twice)).motion().stepLength())
                .isGreaterThanOrEqualTo(once);
    }

    private static MeshRefinement.Request request(MeshRefinement.Course course) {
        return new MeshRefinement.Request(1, 0, OptionalDouble.of(1), course);
    }

    private static double end(MotionSetup setup, MeshRefinement.Course course) {
        return MeshRefinement.run(setup, request(course)).motion().time();
    }

    private static MeshRefinement absorberAtTheEnd(int refinements) {
        LoadingCurve rising = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 4000), new LoadingCurve.Corner(2, 14_000)), 8e5, 2e5);
        LineModel model = new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(10, 0, 10), Passage.friction(0.1))
                .support(Support.end("b", Point.of(20, 0, 10)).withInlineAbsorber(InlineAbsorber.of(rising)))
                .pretension(1500)
                .build());
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attach(1, model.pointAtStation(1, 4), true, List.of(MotionCases.person(0, 1, true)));
        return MeshRefinement.run(setup, MotionCases.request(1e-9, refinements, 2));
    }

    /** An absorber whose force rises bounds the force on its own end by its extension; a post is bounded by the meshes. */
    @Test
    void aRisingAbsorberBoundsTheEndThatItHangsOn() {
        MeshRefinement coarse = absorberAtTheEnd(2);
        PeakValues now = coarse.motion().firstCatch();
        PeakValues next = absorberAtTheEnd(3).motion().firstCatch();
        assertThat(now.inline[1]).isGreaterThan(0.02);
        assertThat(coarse.inlineBound()).isBetween(Math.abs(next.inline[1] - now.inline[1]), now.inline[1]);
        double rise = 5000 * coarse.inlineBound();
        assertThat(rise).isGreaterThan(10);
        assertThat(coarse.supportBound(2))
                .as("at least what 5 kN/m make of the bound of the extension")
                .isBetween(Math.max(rise, Math.abs(next.support[2] - now.support[2])), now.support[2]);
        for (int i = 0; i < 2; i++) {
            assertThat(coarse.supportBound(i))
                    .as("support %d has no absorber", i)
                    .isGreaterThanOrEqualTo(coarse.bound(MeshRefinement.Force.onSupport(i)))
                    .isGreaterThanOrEqualTo(Math.abs(next.support[i] - now.support[i]));
        }
    }
}
