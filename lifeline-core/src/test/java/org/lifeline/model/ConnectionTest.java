package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Refusal;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;

class ConnectionTest {
    private static PersonalAbsorber absorber() {
        return PersonalAbsorber.builder()
                .clearanceForce(3200)
                .maximumForce(6000)
                .maximumExtension(1.2)
                .initialStiffness(1e5)
                .stopStiffness(2e5)
                .build();
    }

    @Test
    void lanyardWithAbsorber() {
        PersonalAbsorber a = absorber();
        Connection c = Connection.lanyard(1.8, a);
        assertThat(c.kind()).isEqualTo(Connection.Kind.LANYARD_WITH_ABSORBER);
        assertThat(c.curve(DeploymentForce.CLEARANCE)).isSameAs(a.curve(DeploymentForce.CLEARANCE));
        assertThat(c.curve(DeploymentForce.MAXIMUM)).isSameAs(a.curve(DeploymentForce.MAXIMUM));
        assertThat(a.curve(DeploymentForce.CLEARANCE).activationForce()).isEqualTo(3200);
        assertThat(a.curve(DeploymentForce.MAXIMUM).activationForce()).isEqualTo(6000);
        assertThat(a.curve(DeploymentForce.MAXIMUM).initialStiffness()).isEqualTo(1e5);
        assertThat(a.curve(DeploymentForce.MAXIMUM).stopStiffness()).isEqualTo(2e5);
        assertThat(c.maximumExtension()).isEqualTo(1.2);
        assertThat(c.tautLength(0.3)).isEqualTo(1.8);
    }

    @Test
    void freeFallOfALanyardFollowsFromGeometry() {
        Connection c = Connection.lanyard(1.8, absorber());
        // Line at the harness attachment: the full length; above: less; below: more; out of reach: none.
        assertThat(c.freeFall(0)).isEqualTo(1.8);
        assertThat(c.freeFall(1)).isEqualTo(0.8);
        assertThat(c.freeFall(-1)).isEqualTo(2.8);
        assertThat(c.freeFall(1.8)).isZero();
        assertThat(c.freeFall(2.5)).isZero();
    }

    @Test
    void aSelfRetractingDeviceFallsItsLockDistanceFromAbove() {
        PersonalAbsorber a = absorber();
        Connection c = Connection.selfRetracting(0.6, a);
        assertThat(c.kind()).isEqualTo(Connection.Kind.SELF_RETRACTING);
        assertThat(c.freeFall(2)).isEqualTo(0.6, org.assertj.core.api.Assertions.within(1e-15));
        assertThat(c.freeFall(0)).isEqualTo(0.6);
        // From below the device the rope pays out on the way down as far again.
        assertThat(c.freeFall(-0.4)).isEqualTo(0.6 + 0.8, org.assertj.core.api.Assertions.within(1e-15));
        assertThat(c.tautLength(2)).isEqualTo(2.6);
        assertThat(c.tautLength(-2)).isEqualTo(2.6);
        assertThat(c.curve(DeploymentForce.CLEARANCE)).isSameAs(a.curve(DeploymentForce.CLEARANCE));
        assertThat(c.curve(DeploymentForce.MAXIMUM)).isSameAs(a.curve(DeploymentForce.MAXIMUM));
    }

    @Test
    void plainLanyardAndGivenCurve() {
        LoadingCurve spring = LoadingCurve.spring(5e4);
        Connection plain = Connection.plainLanyard(1.5, spring);
        assertThat(plain.kind()).isEqualTo(Connection.Kind.PLAIN_LANYARD);
        assertThat(plain.maximumExtension()).isInfinite();
        Connection given = Connection.givenCurve(1.5, absorber().curve(DeploymentForce.MAXIMUM));
        assertThat(given.kind()).isEqualTo(Connection.Kind.GIVEN_CURVE);
        assertThat(given.maximumExtension()).isEqualTo(1.2);
        for (DeploymentForce side : DeploymentForce.values()) {
            assertThat(plain.curve(side)).isSameAs(spring);
            assertThat(given.curve(side)).isSameAs(given.curve(DeploymentForce.MAXIMUM));
        }
    }

    @Test
    void anAbsorberIsRigidUnlessSaid() {
        PersonalAbsorber a = PersonalAbsorber.builder()
                .clearanceForce(4000)
                .maximumForce(4000)
                .maximumExtension(1)
                .build();
        assertThat(a.curve(DeploymentForce.MAXIMUM).rigidForce()).isEqualTo(4000);
        assertThat(a.curve(DeploymentForce.MAXIMUM).stopStiffness()).isInfinite();
    }

    @Test
    void refusals() {
        assertThat(Refusal.of(() -> Connection.lanyard(-1, absorber())))
                .containsExactly("tautLength: -1.0 m: must be a finite number that is not negative");
        assertThat(Refusal.of(() -> Connection.selfRetracting(Double.NaN, absorber())))
                .containsExactly("lockDistance: NaN m: must be a finite number that is not negative");
        assertThat(Refusal.of(() -> Connection.plainLanyard(Double.POSITIVE_INFINITY, LoadingCurve.spring(1))))
                .hasSize(1);
        assertThat(Refusal.of(() -> PersonalAbsorber.builder().build()))
                .containsExactly(
                        "clearanceForce: missing: must be given",
                        "maximumForce: missing: must be given",
                        "maximumExtension: missing: must be given");
        assertThat(Refusal.of(() -> PersonalAbsorber.builder()
                        .clearanceForce(5000)
                        .maximumForce(4000)
                        .maximumExtension(0)
                        .initialStiffness(-1)
                        .stopStiffness(0)
                        .build()))
                .containsExactly(
                        "maximumExtension: 0.0 m: must be a finite number above zero",
                        "maximumForce: 4000.0 N: must not be lower than clearanceForce",
                        "initialStiffness: -1.0 N/m: must be above zero (leave it out for a rigid start or stop)",
                        "stopStiffness: 0.0 N/m: must be above zero (leave it out for a rigid start or stop)");
        assertThat(Refusal.paths(() -> PersonalAbsorber.builder()
                        .clearanceForce(5000)
                        .maximumForce(6000)
                        .maximumExtension(1)
                        .initialStiffness(5500)
                        .build()))
                .containsExactly("initialStiffness");
    }
}
