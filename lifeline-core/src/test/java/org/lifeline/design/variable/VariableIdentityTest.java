package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiPredicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * A variable that is given the value that it has changes nothing; given another it reads back as that, twice is as once,
 * and what does not depend on it stays.
 */
class VariableIdentityTest {
    private static final Interval ANY = Interval.of(0.01, 1e7);

    /** A variable, how it is read off a design, and another value for it. */
    private record Tried(DesignVariable variable, ToDoubleFunction<LifelineDesign> read, double other) {}

    /** Every member that a design can have is set, so that what is lost on the way is seen. */
    private static LifelineDesign design() {
        LifelineDesign d = Designs.design(3, Passage.friction(0.12), Attachment.GRIPPED);
        Worker b = Designs.worker("B", Attachment.GRIPPED);
        Support first = d.line().supports().get(0);
        String post = d.line().supports().get(1).id();
        return d
                .withLine(d.line()
                        .withSupports(s -> s.id().equals(first.id())
                                ? s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                                        java.util.List.of(
                                                new LoadingCurve.Corner(0, 8000), new LoadingCurve.Corner(1, 10_000)),
                                        4e6,
                                        2e5)))
                                : s.id().equals(post) ? s.withStiffness(new Stiffness(2e5, 2e5, 1e7)) : s))
                .toBuilder()
                .worker(b)
                .workingFloor(10.9)
                .modelFactors(new ModelFactors(1.1, 1.2))
                .clearance(d.clearance().withObstructions(java.util.List.of(new Obstruction(2, 15, 4))))
                .temperature(-20)
                .fall(Fall.builder("f")
                        .at(Place.of(2, 3))
                        .faller(d.workers().get(0))
                        .hanging(b, Place.of(3, 9))
                        .freeFall(1.3)
                        .build())
                .build();
    }

    private static Map<String, Tried> tried() {
        Map<String, Tried> map = new LinkedHashMap<>();
        LifelineDesign d = design();
        String end = d.line().supports().get(0).id();
        String post = d.line().supports().get(1).id();
        map.put(
                "pretension",
                new Tried(
                        DesignVariables.pretension(ANY),
                        x -> x.line().installed().value(),
                        2345));
        map.put(
                "spanLength",
                new Tried(DesignVariables.spanLength(2, ANY), x -> x.line().run(2), 9.5));
        map.put(
                "spanLengths",
                new Tried(DesignVariables.spanLengths(ANY), x -> x.line().run(3), 9.5));
        map.put(
                "lineElevation",
                new Tried(
                        DesignVariables.lineElevation(ANY),
                        x -> x.line().supports().get(0).position().z(),
                        13.1));
        map.put(
                "supportStiffness",
                new Tried(
                        DesignVariables.supportStiffness(post, ANY),
                        x -> x.line().supports().get(1).stiffness().x(),
                        3e5));
        map.put(
                "inlineActivation",
                new Tried(
                        DesignVariables.inlineActivation(end, ANY),
                        x -> x.line()
                                .supports()
                                .get(0)
                                .inlineAbsorber()
                                .orElseThrow()
                                .curve()
                                .activationForce(),
                        6000));
        map.put(
                "deploymentForce",
                new Tried(
                        DesignVariables.deploymentForce(ANY),
                        x -> x.workers()
                                .get(0)
                                .connection()
                                .curve(DeploymentForce.MAXIMUM)
                                .activationForce(),
                        5000));
        map.put(
                "lanyardLength",
                new Tried(
                        DesignVariables.lanyardLength(ANY),
                        x -> x.workers().get(0).connection().tautLength(0),
                        1.5));
        map.put(
                "workerMass",
                new Tried(
                        DesignVariables.workerMass(ANY), x -> x.workers().get(0).mass(), 120));
        map.put(
                "axialStiffness",
                new Tried(
                        DesignVariables.axialStiffness(ANY),
                        x -> 1 / x.line().cable().elongation().compliance(0),
                        2e6));
        map.put(
                "friction",
                new Tried(
                        DesignVariables.friction(ANY),
                        x -> x.line().supports().get(1).passage().friction(),
                        0.3));
        return map;
    }

    private static Stream<DynamicTest> each(java.util.function.Consumer<Tried> test) {
        return tried().entrySet().stream().map(e -> dynamicTest(e.getKey(), () -> test.accept(e.getValue())));
    }

    private static void same(LifelineDesign actual, LifelineDesign expected) {
        // Numbers may differ by the rounding of a factor that is one but for its last place.
        BiPredicate<Double, Double> close = (a, b) -> a.equals(b) || Math.abs(a - b) <= 1e-12 * Math.abs(b);
        assertThat(actual)
                .usingRecursiveComparison()
                .withEqualsForType(close, Double.class)
                .isEqualTo(expected);
    }

    @TestFactory
    Stream<DynamicTest> theValueThatItHasChangesNothing() {
        return each(t -> {
            LifelineDesign d = design();
            if (t.variable().name().equals("span length") || t.variable().name().startsWith("axial")) {
                d = t.variable().apply(d, t.read().applyAsDouble(d));
            }
            same(t.variable().apply(d, t.read().applyAsDouble(d)), d);
        });
    }

    @TestFactory
    Stream<DynamicTest> anotherValueReadsBack() {
        return each(t -> assertThat(t.read().applyAsDouble(t.variable().apply(design(), t.other())))
                .isCloseTo(t.other(), within(1e-12 * t.other())));
    }

    @TestFactory
    Stream<DynamicTest> twiceIsAsOnce() {
        return each(t -> {
            LifelineDesign once = t.variable().apply(design(), t.other());
            same(t.variable().apply(once, t.other()), once);
        });
    }

    @TestFactory
    Stream<DynamicTest> thereAndBackIsTheDesignAgain() {
        return each(t -> {
            LifelineDesign d = t.variable().apply(design(), t.read().applyAsDouble(design()));
            LifelineDesign back = t.variable()
                    .apply(t.variable().apply(d, t.other()), t.read().applyAsDouble(d));
            same(back, d);
        });
    }

    @TestFactory
    Stream<DynamicTest> theDesignThatItIsAppliedToStays() {
        return each(t -> {
            LifelineDesign d = design();
            t.variable().apply(d, t.other());
            same(d, design());
        });
    }

    @Test
    void aLineThatIsRaisedKeepsItsShape() {
        LifelineDesign d = design();
        LifelineDesign up = DesignVariables.lineElevation(ANY).apply(d, 20);
        for (int i = 0; i < d.line().supports().size(); i++) {
            Point was = d.line().supports().get(i).position();
            Point is = up.line().supports().get(i).position();
            assertThat(is.x()).isEqualTo(was.x());
            assertThat(is.y()).isEqualTo(was.y());
            assertThat(is.z() - was.z())
                    .isCloseTo(20 - d.line().supports().get(0).position().z(), within(1e-12));
        }
    }
}
