package org.lifeline.model.cable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;

/** A builder is not changed by {@code build()}: used again, it gives what was stated then, not what followed before. */
class BuilderUsedTwiceBugTest {
    private static final double GRADE = 1770e6;

    private static Cable.Builder ropeClass() {
        return Cable.builder()
                .ropeClass(RopeClass.C6X7_FIBRE)
                .elasticModulus(1e11)
                .tensileGrade(GRADE);
    }

    /** ISO 10425, Annex C, 6x7 fibre core, 8 mm, 1770: 37.6 kN and 22.1 kg per 100 m (published); three digits are given. */
    @Test
    void aThinRopeAfterAThickOneHasItsOwnStrength() {
        Cable.Builder b = ropeClass();
        Cable thick = b.diameter(0.016).build();
        Cable thin = b.diameter(0.008).build();

        assertThat(thick.breakingStrength().orElseThrow()).isCloseTo(150.4e3, within(50.0));
        assertThat(thin.breakingStrength().orElseThrow()).isCloseTo(37.6e3, within(50.0));
        assertThat(thin.massPerLength(9.81)).isCloseTo(0.221, within(5e-4));
        assertThat(thin.elongation().initialStiffness())
                .isCloseTo(1e11 * RopeClass.C6X7_FIBRE.metallicArea(0.008), within(1e-3));
    }

    @Test
    void aRopeClassCanBeAddedOrReplacedLater() {
        Cable.Builder b = ropeClass().diameter(0.012);
        b.build();
        Cable other = b.ropeClass(RopeClass.C6X36_STEEL).build();

        assertThat(other.breakingStrength().orElseThrow())
                .isEqualTo(RopeClass.C6X36_STEEL.minimumBreakingForce(0.012, GRADE));
    }

    @Test
    void aRefusedCableCanBeMended() {
        Cable.Builder b = Cable.builder().massPerLength(0.5);
        assertThat(Refusal.paths(b::build)).containsExactly("axialStiffness");
        assertThat(b.axialStiffness(5e6).build().elongation().initialStiffness())
                .isCloseTo(5e6, within(1e-3));
    }

    @Test
    void workersAreEqualAndIndependent() {
        Worker.Builder b = Worker.builder("A").mass(100).walkingLevel(3).connection(rope(1.8));
        Worker first = b.build();

        assertThat(b.build()).isEqualTo(first).hasSameHashCodeAs(first);
        Worker heavy = b.mass(130).build();
        assertThat(first.mass()).isEqualTo(100);
        assertThat(heavy).isNotEqualTo(first);
        assertThat(heavy.mass()).isEqualTo(130);
    }

    @Test
    void absorbers() {
        Connection.AbsorberBuilder b = Connection.PersonalAbsorber.builder()
                .clearanceForce(3000)
                .maximumForce(6000)
                .maximumExtension(1.2);
        LoadingCurve first = b.build().curve(DeploymentForce.MAXIMUM);

        assertThat(b.build().curve(DeploymentForce.MAXIMUM)).isEqualTo(first);
        assertThat(b.maximumForce(4000).build().curve(DeploymentForce.MAXIMUM).lastForce())
                .isEqualTo(4000);
        assertThat(first.lastForce()).isEqualTo(6000);
    }

    @Test
    void falls() {
        Worker a = Worker.builder("A")
                .mass(100)
                .walkingLevel(3)
                .connection(rope(1.8))
                .build();
        Fall.Builder b = Fall.builder("f").at(Place.of(1, 3)).faller(a).freeFall(1);
        Fall first = b.build();
        Fall second = b.at(Place.of(2, 4)).build();

        assertThat(first.place()).isEqualTo(Place.of(1, 3));
        assertThat(second.place()).isEqualTo(Place.of(2, 4));
        assertThat(second.fallers()).isEqualTo(first.fallers());
        assertThat(second.freeFall()).hasValue(1);
    }

    @Test
    void linesAndDesigns() {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(5e6).build())
                .endAnchor("a", Point.of(0, 0, 5))
                .endAnchor("b", Point.of(10, 0, 5))
                .pretension(1000);
        Lifeline first = b.build();
        Lifeline second = b.pretension(2000).build();
        assertThat(first.installed().value()).isEqualTo(1000);
        assertThat(second.installed().value()).isEqualTo(2000);
        assertThat(second.supports()).hasSize(2);

        Worker a = Worker.builder("A")
                .mass(100)
                .walkingLevel(4)
                .connection(rope(1.8))
                .build();
        LifelineDesign.Builder d = LifelineDesign.builder("d").line(first).worker(a);
        assertThat(d.build().temperatures()).containsExactly(15.0);
        assertThat(d.temperature(40).build().temperatures()).containsExactly(40.0);
        assertThat(d.build().temperatures()).containsExactly(40.0);
    }

    private static Connection rope(double length) {
        return Connection.plainLanyard(length, LoadingCurve.spring(5e4));
    }
}
