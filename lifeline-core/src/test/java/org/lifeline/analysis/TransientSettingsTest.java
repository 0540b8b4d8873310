package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;

/** What the transient analysis takes, refuses and hands out. */
class TransientSettingsTest {
    private static final TransientArrest QUICK =
            TransientArrest.withDefaults().withSegmentLength(0.4).withRefinements(0);

    private static Lifeline line(double mass) {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(mass).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(9, 0, 10), Passage.friction(0.1))
                .endAnchor("b", Point.of(20, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Worker worker(String id, double mass) {
        Connection connection = Connection.lanyard(
                1.8,
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(3000)
                        .maximumForce(6000)
                        .maximumExtension(1.4)
                        .initialStiffness(1e5)
                        .stopStiffness(1.5e5)
                        .build());
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(connection)
                .build();
    }

    private static Fall fall() {
        return Fall.builder("f").at(Place.of(1, 4)).faller(worker("w", 100)).build();
    }

    private static void refuses(Function<TransientArrest, TransientArrest> setting, String path) {
        assertThatThrownBy(() -> setting.apply(TransientArrest.withDefaults()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining(path);
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        refuses(a -> a.withDuration(0), "duration");
        refuses(a -> a.withSampling(-1), "sampling");
        refuses(a -> a.withAccuracy(Double.NaN), "accuracy");
        refuses(a -> a.withSegmentLength(0), "segmentLength");
        refuses(a -> a.withRefinements(-1), "refinements");
        refuses(a -> a.withLaterFall(fall(), -0.1), "laterFall.time");
        Fall hung = Fall.builder("g")
                .at(Place.of(2, 3))
                .faller(worker("x", 90))
                .hanging(worker("y", 90), Place.of(1, 3))
                .build();
        refuses(a -> a.withLaterFall(hung, 1), "laterFall.hanging");
    }

    @Test
    void casesThatHaveNoMotionAreRefused() {
        assertThatThrownBy(() -> QUICK.solve(line(0), fall()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("cable.massPerLength");
        assertThatThrownBy(() -> QUICK.withDuration(0.3).solve(line(0.5), fall()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("duration")
                .hasMessageContaining("free fall");
        Fall off = Fall.builder("f").at(Place.of(3, 4)).faller(worker("w", 100)).build();
        assertThatThrownBy(() -> QUICK.solve(line(0.5), off))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("span");
        Fall again =
                Fall.builder("g").at(Place.of(2, 4)).faller(worker("w", 100)).build();
        assertThatThrownBy(() -> QUICK.withLaterFall(again, 1).solve(line(0.5), fall()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("laterFall[0].faller")
                .hasMessageContaining("only once");
    }

    /** Clearance side: the absorber opens further, and the force is the low one. */
    @Test
    void bothSidesOfTheForceRange() {
        ArrestResult low = QUICK.withSide(DeploymentForce.CLEARANCE)
                .solve(line(0.5), fall())
                .arrest();
        ArrestResult high = QUICK.solve(line(0.5), fall()).arrest();
        assertThat(low.side()).isEqualTo(DeploymentForce.CLEARANCE);
        assertThat(low.arrestForce()).isCloseTo(3000, within(1e-6));
        assertThat(high.arrestForce()).isCloseTo(6000, within(1e-6));
        assertThat(low.deployment()).isGreaterThan(high.deployment() + 0.2);
        assertThat(low.maximumTension()).isLessThan(high.maximumTension());
        assertThat(low.clearance().lowestPoint()).isLessThan(high.clearance().lowestPoint());
    }

    /** Rows of the clearance account lead to where the feet were at the lowest point of the simulated fall. */
    @Test
    void clearanceAccountEndsAtTheSimulatedLowestPoint() {
        TransientResult r = QUICK.solve(line(0.5), fall());
        ArrestResult a = r.arrest();
        double z = a.clearance().lineElevation();
        for (ClearanceRow row : a.clearance().rows()) {
            z -= row.value();
            assertThat(row.elevation()).isCloseTo(z, within(1e-9));
        }
        assertThat(a.clearance().lowestPoint())
                .isCloseTo(r.firstCatch().worker("w").lowest().value() - 0.3 - 1.5, within(1e-9));
        assertThat(a.method()).isEqualTo(Method.TRANSIENT);
        assertThat(a.motion()).isPresent();
        assertThat(r.energyBalance().orElseThrow().motion()).isEmpty();
        assertThat(a.explain()).hasSizeGreaterThan(30);
        assertThat(a.energy().residual()).isCloseTo(0, within(2e-3 * a.energy().fall()));
        assertThat(a.peak().maximumTension()).isEqualTo(a.maximumTension());
        assertThat(a.peak().shape(1)).hasSizeGreaterThan(20);
    }

    /** A worker who hangs is lifted by the fall of another, and one who falls later stands still until then. */
    @Test
    void severalWorkersInSequence() {
        Fall first = Fall.builder("f")
                .at(Place.of(1, 4))
                .faller(worker("w", 100))
                .hanging(worker("h", 90), Place.of(2, 5))
                .build();
        Fall second =
                Fall.builder("g").at(Place.of(2, 8)).faller(worker("s", 80)).build();
        TransientResult r = QUICK.withLaterFall(second, 1.5).withDuration(4).solve(line(0.5), first);
        double[] t = r.history().times();
        double[] s = r.history().worker("s").z();
        double[] h = r.history().worker("h").force();
        assertThat(h[0]).isCloseTo(90 * 9.80665, within(1e-3));
        for (int i = 0; i < t.length && t[i] < 1.5; i++) {
            assertThat(s[i]).isEqualTo(s[0]);
        }
        assertThat(r.wholeRun().worker("s").force().value()).isCloseTo(6000, within(1e-6));
        assertThat(r.wholeRun().worker("s").force().time()).isGreaterThan(2);
        assertThat(r.firstCatch().worker("s").force().value()).isZero();
        assertThat(r.arrest().before().loads()).hasSize(1);
        assertThat(r.relativeDrift()).isLessThan(1e-3);
        assertThatThrownBy(() -> r.history().worker("nobody")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> r.history().support("nothing")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> r.wholeRun().worker("nobody")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> r.wholeRun().support("nothing")).isInstanceOf(IllegalArgumentException.class);
    }

    /** An absorber that is used up is reported, and what it opened stays open to the end. */
    @Test
    void anAbsorberThatIsUsedUpIsReported() {
        Fall heavy = Fall.builder("f")
                .at(Place.of(1, 4))
                .faller(worker("w", 140))
                .freeFall(3.4)
                .build();
        TransientResult r = QUICK.withSide(DeploymentForce.CLEARANCE).solve(line(0.5), heavy);
        assertThat(r.arrest().bottomedOut()).isTrue();
        assertThat(r.arrest().deployment()).isGreaterThan(1.4);
        assertThat(r.arrest().arrestForce()).isGreaterThan(3000);
        assertThat(r.firstCatchOver()).isTrue();
    }
}
