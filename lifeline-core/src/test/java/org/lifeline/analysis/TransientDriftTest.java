package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.Lifeline;
import org.lifeline.testing.RigidTie;

/** A motion whose energies drift apart by more than a tenth of what the fall set free is an error, and no result. */
class TransientDriftTest {
    private static TransientResult leaningThenFalling(double segment) {
        Lifeline line = RigidTie.line(10_000);
        return RigidTie.on(segment).withLaterFall(RigidTie.hardestFall(), 0.5).solve(line, RigidTie.leaning());
    }

    /**
     * The first fall sets free 160 J, the second more than 30 times as much. On two segments what the second loses is a
     * large part of the first: 0.17 to 1.2 times with 100 or 136 kg, 3 or 4 m, and ropes of 0.35 to 0.45 kg/m.
     */
    @Test
    void aMotionOnTooCoarseAMeshIsLost() {
        NoEquilibriumException e =
                catchThrowableOfType(NoEquilibriumException.class, () -> leaningThenFalling(RigidTie.COARSE));
        assertThat(e).isNotNull();
        assertThat(e.where()).startsWith("motion of the line, whose energies drifted apart by more than a tenth");
        assertThat(e.convergence().tolerance()).isEqualTo(0.1);
        assertThat(e.convergence().residual()).isBetween(0.15, 3.0);
        assertThat(e.convergence().iterations()).isGreaterThan(100);
    }

    @Test
    void theSameMotionOnAFineMeshIsAResult() {
        TransientResult r = leaningThenFalling(RigidTie.FINE);
        assertThat(r.relativeDrift()).isLessThan(0.05);
        assertThat(r.wholeRun().worker("falling").force().value()).isPositive();
    }

    @Test
    void aTenthIsTheLimit() {
        TransientResult r = RigidTie.on(RigidTie.COARSE).solve(RigidTie.line(1000), RigidTie.hardFall());
        TransientResult below = drifted(r, 0.0999);
        assertThat(TransientArrest.closed(below, 7)).isSameAs(below);
        for (double share : new double[] {0.1001, 1, Double.POSITIVE_INFINITY, Double.NaN}) {
            TransientResult beyond = drifted(r, share);
            NoEquilibriumException e =
                    catchThrowableOfType(NoEquilibriumException.class, () -> TransientArrest.closed(beyond, 7));
            assertThat(e).as("drift of %s", share).isNotNull();
            assertThat(e.convergence().residual()).isEqualTo(Double.valueOf(beyond.relativeDrift()));
            assertThat(e.convergence().iterations()).isEqualTo(7);
        }
    }

    /** The same result with another drift, as a share of the energy of the fall. */
    private static TransientResult drifted(TransientResult r, double share) {
        return new TransientResult(
                r.arrest(),
                new TransientResult.Course(r.history(), r.firstCatch(), r.wholeRun(), r.firstCatchOver()),
                new TransientResult.Quality(
                        r.meshes(),
                        r.allowances(),
                        0.01,
                        share * r.arrest().energy().fall(),
                        new TransientResult.Step(r.dampingTime(), r.timeStep())),
                r.energyBalance());
    }
}
