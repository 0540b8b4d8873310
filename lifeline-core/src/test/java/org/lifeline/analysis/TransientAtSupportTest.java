package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Falls at a support, in time: a mass on a spring where the support is rigid, on two in series where it yields. */
class TransientAtSupportTest {
    private static final double G = 9.80665;
    private static final double MASS = 100;
    private static final double LANYARD = 5e4;
    private static final TransientArrest QUICK = TransientArrest.withDefaults()
            .withSegmentLength(0.4)
            .withRefinements(0)
            .withEndAfterFirstCatch(0.1);

    private static Lifeline line(Stiffness post) {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .support(Support.intermediate("p", Point.of(8, 0, 10), Passage.friction(0.1))
                        .withStiffness(post))
                .endAnchor("b", Point.of(16, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Worker worker(String id, double mass) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(8.5)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(LANYARD)))
                .build();
    }

    private static Fall fall(String support, double freeFall) {
        return Fall.builder("f")
                .at(Place.atSupport(support))
                .faller(worker("w", MASS))
                .freeFall(freeFall)
                .build();
    }

    /** F = mg (1 + √(1 + 2hk/(mg))), a mass that falls on a spring (textbook, as for a rope from a fixed point). */
    private static double massOnSpring(double h, double k) {
        return MASS * G * (1 + Math.sqrt(1 + 2 * h * k / (MASS * G)));
    }

    /** A rigid support: the line takes no part, and the arrest force is that of a mass on a spring. */
    @Test
    void atARigidSupportTheLineTakesNoPart() {
        for (String id : new String[] {"a", "p", "b"}) {
            TransientResult r = QUICK.solve(line(Stiffness.rigid()), fall(id, 1.5));
            double exact = massOnSpring(1.5, LANYARD);
            assertThat(r.arrest().arrestForce()).as(id).isCloseTo(exact, within(1e-4 * exact));
            assertThat(r.arrest().deployment()).isCloseTo(exact / LANYARD, within(2e-4 * exact / LANYARD));
            double[] tension = r.history().support("p").tensionBefore();
            for (double each : tension) {
                assertThat(each).isCloseTo(tension[0], within(0.01 * tension[0]));
            }
            assertThat(r.relativeDrift()).isLessThan(1e-3);
        }
    }

    /** The post takes the arrest force and what the line pulled before; the ends are not loaded by it. */
    @Test
    void theSupportTakesTheArrestForce() {
        TransientResult r = QUICK.solve(line(Stiffness.rigid()), fall("p", 1.5));
        double before = r.arrest().before().supports().get(1).force();
        assertThat(r.arrest().supports().get(1).force())
                .isCloseTo(
                        r.arrest().arrestForce() + before,
                        within(0.02 * r.arrest().arrestForce()));
        assertThat(r.arrest().supports().get(0).force())
                .isCloseTo(r.arrest().before().supports().get(0).force(), within(30.0));
    }

    /** A post that yields downward: two springs in series, but for the little that the cable holds. */
    @Test
    void atASupportThatYieldsTwoSpringsAreInSeries() {
        double post = 1e5;
        Stiffness vertical = Stiffness.rigid().withZ(post);
        TransientResult r = QUICK.solve(line(vertical), fall("p", 1.5));
        double exact = massOnSpring(1.5, LANYARD * post / (LANYARD + post));
        assertThat(r.arrest().arrestForce()).isBetween(exact, 1.06 * exact);
        assertThat(r.relativeDrift()).isLessThan(1e-3);
        assertThat(r.arrest().energy().residual())
                .isCloseTo(0, within(2e-3 * r.arrest().energy().fall()));
    }

    /** In time and by energy balance the same, where no wave makes a difference. */
    @Test
    void theEnergyBalanceAgreesAtARigidSupport() {
        TransientResult r = QUICK.solve(line(Stiffness.rigid()), fall("b", 1.2));
        ArrestResult balance = r.energyBalance().orElseThrow();
        assertThat(r.arrest().arrestForce()).isCloseTo(balance.arrestForce(), within(1e-4 * balance.arrestForce()));
        assertThat(r.arrest().clearance().lowestPoint())
                .isCloseTo(balance.clearance().lowestPoint(), within(1e-3));
    }

    /** One who hangs at a support that yields hangs at rest until another one falls. */
    @Test
    void oneWhoHangsAtASupportIsAtRest() {
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 4))
                .faller(worker("w", MASS))
                .hanging(worker("h", 80), Place.atSupport("p"))
                .freeFall(1.5)
                .build();
        TransientResult r = QUICK.solve(line(Stiffness.rigid().withZ(2e5)), fall);
        double[] force = r.history().worker("h").force();
        double[] z = r.history().support("p").displacement(2);
        double[] t = r.history().times();
        double caught = Math.sqrt(2 * 1.5 / G);
        for (int i = 0; i < t.length && t[i] < caught; i++) {
            assertThat(force[i]).isCloseTo(80 * G, within(1e-3 * 80 * G));
            assertThat(z[i]).isCloseTo(z[0], within(1e-6));
        }
        assertThat(r.relativeDrift()).isLessThan(1e-3);
        assertThat(r.arrest().peak().loads()).hasSize(2);
    }
}
