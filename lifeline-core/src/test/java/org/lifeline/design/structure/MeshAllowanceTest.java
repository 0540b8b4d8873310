package org.lifeline.design.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Vector3;

/** The allowance of a force goes where it makes an effect largest. */
class MeshAllowanceTest {
    private static final Vector3 FORCE = new Vector3(3000, -4000, -12000);

    @Test
    void aResultantGrowsByTheWholeAllowanceAndKeepsItsDirection() {
        Vector3 more = MeshAllowance.added(Vector3::magnitude, FORCE, 1300);
        assertThat(more.magnitude()).isCloseTo(14300, withinPercentage(1e-8));
        assertThat(more.x() / more.z()).isCloseTo(FORCE.x() / FORCE.z(), withinPercentage(1e-3));
    }

    @Test
    void aComponentGrowsByTheWholeAllowance() {
        Vector3 more = MeshAllowance.added(v -> -v.z(), FORCE, 1300);
        assertThat(-more.z()).isCloseTo(13300, withinPercentage(1e-8));
        assertThat(more.x()).isCloseTo(FORCE.x(), withinPercentage(1e-4));
    }

    @Test
    void aShearGrowsByTheWholeAllowanceThoughTheResultantIsSteep() {
        Vector3 more = MeshAllowance.added(Vector3::horizontal, FORCE, 1300);
        assertThat(more.horizontal()).isCloseTo(6300, withinPercentage(1e-6));
    }

    /** 500 directions of the same length: none makes the moment about a base larger. */
    @Test
    void noOtherDirectionMakesAMomentLarger() {
        Vector3 arm = new Vector3(0.2, -0.1, 1.1);
        double best = arm.cross(MeshAllowance.added(v -> arm.cross(v).horizontal(), FORCE, 1300))
                .horizontal();
        double most = 0;
        for (int i = 0; i < 500; i++) {
            double z = 1 - 2 * (i + 0.5) / 500;
            double turn = Math.PI * (1 + Math.sqrt(5)) * i;
            double r = Math.sqrt(1 - z * z);
            Vector3 u = new Vector3(r * Math.cos(turn), r * Math.sin(turn), z);
            most = Math.max(most, arm.cross(FORCE.plus(u.times(1300))).horizontal());
        }
        // The slope where the force is stands a little beside that of the larger force: 0.1 % of the allowance's part.
        assertThat(best).isGreaterThan(most - 0.001 * 1300 * arm.magnitude());
        assertThat(best).isGreaterThan(arm.cross(FORCE).horizontal() + 0.9 * 1300 * 1.1);
    }

    /** A force in a plane stays in it: the allowance does not turn it out of the plane, whatever an effect there would gain. */
    @Test
    void aForceInAPlaneStaysInIt() {
        Vector3[] plane = {new Vector3(0, 3000, -4000), new Vector3(3000, 0, -4000), new Vector3(3000, -4000, 0)};
        for (Vector3 force : plane) {
            Vector3 more = MeshAllowance.added(v -> v.x() + v.y() + v.z(), force, 100);
            assertThat(more.minus(force).magnitude()).isCloseTo(100, withinPercentage(1e-6));
            assertThat(force.x() == 0 ? more.x() : force.y() == 0 ? more.y() : more.z())
                    .isZero();
        }
    }

    /** Slopes of either sign: the allowance goes against a component that lessens the effect. */
    @Test
    void anEffectThatFallsWithAComponentGrowsAgainstIt() {
        Vector3 more = MeshAllowance.added(v -> 2 * v.x() - v.y() - 2 * v.z(), FORCE, 300);
        Vector3 gained = more.minus(FORCE);
        assertThat(gained.x()).isCloseTo(200, withinPercentage(1e-4));
        assertThat(gained.y()).isCloseTo(-100, withinPercentage(1e-4));
        assertThat(gained.z()).isCloseTo(-200, withinPercentage(1e-4));
    }

    @Test
    void nothingIsAddedWhereNothingIsHiddenOrNothingPulls() {
        assertThat(MeshAllowance.added(Vector3::x, Vector3.ZERO, 100)).isEqualTo(Vector3.ZERO);
        assertThat(MeshAllowance.added(Vector3::magnitude, FORCE, 0)).isEqualTo(FORCE);
        Vector3 plane = new Vector3(3000, 0, -4000);
        assertThat(MeshAllowance.added(Vector3::y, plane, 100)).isEqualTo(plane);
        assertThat(MeshAllowance.added(v -> Double.NaN, FORCE, 100)).isEqualTo(FORCE);
    }
}
