package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Method;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** One arrest followed on one coarse mesh, beside its energy balance. */
class FollowerTest {
    private static final LifelineDesign DESIGN =
            Designs.design(1, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0));
    private static final LoadCombination COMBINATION = Envelope.withDefaults().combinations(DESIGN).stream()
            .filter(c -> c.side() == DeploymentForce.MAXIMUM)
            .findFirst()
            .orElseThrow();
    private static final FallCase CASE = COMBINATION.of(
            Fall.builder("f").at(Place.of(1, 5)).faller(DESIGN.workers().get(0)).build());
    private static final Follower FOLLOWER = new Follower(DESIGN.clearance());
    private static final FollowedArrest COARSE =
            FOLLOWER.coarse(Follower.Task.of(CASE, DESIGN.line())).followed();

    /**
     * The absorber holds the pull on the line near 6 kN by either method; what swings on top of it in time is bounded by the double of
     * a load that comes at once.
     */
    @Test
    void anArrestInTimeLiesNearItsEnergyBalance() {
        ArrestResult fast = COARSE.arrest();
        ArrestResult slow = EnergyBalance.withDefaults()
                .withSide(DeploymentForce.MAXIMUM)
                .withClearance(DESIGN.clearance())
                .solve(DESIGN.line(), CASE.fall());
        assertThat(fast.method()).isEqualTo(Method.TRANSIENT);
        assertThat(fast.fall()).isEqualTo(CASE.fall());
        assertThat(fast.side()).isEqualTo(DeploymentForce.MAXIMUM);
        assertThat(COARSE.fallCase()).isSameAs(CASE);
        assertThat(fast.endAnchorLoad()).isBetween(0.8 * slow.endAnchorLoad(), 2 * slow.endAnchorLoad());
        assertThat(fast.freeFall()).isEqualTo(slow.freeFall(), within(1e-3));
        assertThat(COARSE.computed()).isEqualTo(new ComputedCase(CASE, fast));
    }

    /** One mesh says nothing of what finer ones would change: the allowance is without bound, but for the free fall. */
    @Test
    void whatOneMeshHidesIsUnknown() {
        Extremes e = Extremes.ofCases(DESIGN, List.of(COARSE.computed()));
        Extreme load = e.of(Quantity.END_ANCHOR_LOAD).orElseThrow();
        assertThat(load.allowance()).isInfinite();
        assertThat(load.lacking()).contains("fewer than three meshes were followed");
        Extreme free = e.of(Quantity.FREE_FALL).orElseThrow();
        assertThat(free.allowance()).isZero();
        assertThat(free.lacking()).isEmpty();
        assertThat(e.lacking("more").of(Quantity.SAG).orElseThrow().lacking()).startsWith("more; fewer than three");
    }

    /** The account of the energies closes to a thousandth of the fall, or the check names by how much it does not. */
    @Test
    void theCheckInTimeIsOnTheDriftOfTheEnergies() {
        double drift = COARSE.arrest().motion().orElseThrow().relativeDrift();
        IndependentCheck check = IndependentCheck.of(CASE, COARSE.arrest());
        assertThat(check.method()).isEqualTo(Method.TRANSIENT);
        assertThat(check.passed()).isEqualTo(drift <= 1e-3);
        if (!check.passed()) {
            assertThat(check.failures().get(0)).contains(Double.toString(drift)).contains("limit 0.001");
        }
    }

    @Test
    void casesAreToldApartByEverythingTheyDependOn() {
        Follower.Key key = Follower.Task.of(CASE, DESIGN.line()).key();
        assertThat(Follower.Task.of(CASE.at(Place.of(1, 5)), DESIGN.line()).key())
                .isEqualTo(key);
        // Descriptions print a millimetre; the place itself is finer.
        assertThat(Follower.Task.of(CASE.at(Place.of(1, 5 + 1e-5)), DESIGN.line())
                        .key())
                .isNotEqualTo(key);
        FallCase other = Envelope.withDefaults().combinations(DESIGN).stream()
                .filter(c -> c.side() == DeploymentForce.CLEARANCE)
                .findFirst()
                .orElseThrow()
                .of(CASE.fall());
        assertThat(Follower.Task.of(other, DESIGN.line()).key()).isNotEqualTo(key);
    }
}
