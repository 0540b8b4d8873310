package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

class DesignVariablesTest {
    private static final Interval ANY = Interval.of(1, 2);

    private static LifelineDesign design() {
        LifelineDesign d = Designs.design(3, Passage.friction(0.12), Attachment.GRIPPED);
        Worker b = Designs.worker("B", Attachment.GRIPPED);
        return d.toBuilder()
                .worker(b)
                .clearance(
                        d.clearance().withObstructions(List.of(new Obstruction(-1, 15, 4), new Obstruction(30, 40, 5))))
                .fall(Fall.builder("f")
                        .at(Place.of(2, 3))
                        .faller(d.workers().get(0))
                        .hanging(b, Place.of(3, 9))
                        .build())
                .build();
    }

    @Test
    void spansTakeWhatIsOnThemAlong() {
        LifelineDesign d = DesignVariables.spanLength(2, ANY).apply(design(), 18);
        assertThat(d.line().run(1)).isEqualTo(12, within(1e-12));
        assertThat(d.line().run(2)).isEqualTo(18, within(1e-12));
        assertThat(d.line().run(3)).isEqualTo(12, within(1e-12));
        assertThat(d.falls().get(0).place()).isEqualTo(Place.of(2, 4.5));
        assertThat(d.falls().get(0).hanging().get(0).place()).isEqualTo(Place.of(3, 9));
        List<Obstruction> o = d.clearance().obstructions();
        assertThat(o.get(0).from()).isEqualTo(-1);
        assertThat(o.get(0).to()).as("3 m into the middle span").isEqualTo(12 + 4.5, within(1e-12));
        assertThat(o.get(1).from()).isEqualTo(36, within(1e-12));
        assertThat(o.get(1).to()).as("4 m beyond the end").isEqualTo(46, within(1e-12));
        LifelineDesign all = DesignVariables.spanLengths(ANY).apply(design(), 6);
        assertThat(all.line().supports().get(3).position()).isEqualTo(Point.of(18, 0, 12.4));
    }

    @Test
    void aKnownLengthOfCableBecomesItsPretension() {
        LifelineDesign d = design();
        double tension = Statics.withDefaults().solve(d.line(), List.of()).firstTension();
        double length = Statics.withDefaults().solve(d.line(), List.of()).spans().stream()
                .mapToDouble(s -> s.unstretchedLength())
                .sum();
        LifelineDesign known = d.withLine(d.line().withInstalled(Installed.unstretchedLength(length)));
        LifelineDesign changed = DesignVariables.spanLengths(ANY).apply(known, 8);
        assertThat(Statics.withDefaults().solve(changed.line(), List.of()).firstTension())
                .isEqualTo(tension, within(1e-3));
    }

    @Test
    void simpleVariablesSetWhatTheySay() {
        LifelineDesign d = design();
        assertThat(DesignVariables.pretension(ANY)
                        .apply(d, 777)
                        .line()
                        .installed()
                        .value())
                .isEqualTo(777);
        assertThat(DesignVariables.initialSag(2, ANY)
                        .apply(d, 0.2)
                        .line()
                        .installed()
                        .span())
                .isEqualTo(2);
        assertThat(DesignVariables.lineElevation(ANY).apply(d, 20).line().supports())
                .allMatch(s -> s.position().z() == 20);
        assertThat(DesignVariables.friction(ANY)
                        .apply(d, 0.3)
                        .line()
                        .supports()
                        .get(1)
                        .passage()
                        .friction())
                .isEqualTo(0.3);
        assertThat(DesignVariables.temperature(ANY).apply(d, -7).temperatures()).containsExactly(-7.0);
        assertThat(DesignVariables.axialStiffness(ANY)
                        .apply(d, 2e6)
                        .line()
                        .cable()
                        .elongation()
                        .initialStiffness())
                .isEqualTo(2e6);
        assertThat(DesignVariables.breakingStrength(ANY)
                        .apply(d, 5e4)
                        .line()
                        .cable()
                        .breakingStrength())
                .hasValue(5e4);
        LifelineDesign force = DesignVariables.deploymentForce(ANY).apply(d, 4500);
        Worker w = force.falls().get(0).fallers().get(0);
        assertThat(w.connection().curve(DeploymentForce.MAXIMUM).activationForce())
                .isEqualTo(4500, within(1e-9));
        assertThat(w.connection().curve(DeploymentForce.CLEARANCE).activationForce())
                .isEqualTo(4500 * 3.2 / 6, within(1e-9));
        assertThat(DesignVariables.lanyardLength(ANY)
                        .apply(d, 1.1)
                        .workers()
                        .get(1)
                        .connection()
                        .tautLength(0))
                .isEqualTo(1.1);
    }

    @Test
    void stiffnessGoesWhereTheAnchorYieldsAlready() {
        LifelineDesign d = design();
        var rigid = DesignVariables.supportStiffness("post 1", ANY)
                .apply(d, 1e5)
                .line()
                .supports()
                .get(1)
                .stiffness();
        assertThat(rigid.x()).isEqualTo(1e5);
        assertThat(rigid.y()).isEqualTo(1e5);
        assertThat(rigid.z()).isInfinite();
        LifelineDesign alongX = d.withLine(d.line().withSupports(s -> s.withStiffness(Stiffness.alongX(3e5))));
        var x = DesignVariables.supportStiffness("post 1", ANY)
                .apply(alongX, 1e5)
                .line()
                .supports()
                .get(1)
                .stiffness();
        assertThat(x.x()).isEqualTo(1e5);
        assertThat(x.y()).isInfinite();
    }

    @Test
    void workersFallTogetherAsCopiesOfTheFirst() {
        LifelineDesign d = DesignVariables.workersTogether(ANY).apply(design(), 3);
        assertThat(d.falls().get(0).fallers()).extracting(Worker::id).containsExactly("A", "A (2)", "A (3)");
        assertThat(d.falls().get(0).hanging()).hasSize(1);
        assertThat(d.workers()).extracting(Worker::id).containsExactly("A", "B", "A (2)", "A (3)");
        LifelineDesign without =
                DesignVariables.workersTogether(ANY).apply(Designs.design(1, Passage.free(), Attachment.GRIPPED), 2);
        assertThat(without.falls()).hasSize(1);
    }

    @Test
    void valuesAreSpreadOnTheScale() {
        assertThat(DesignVariables.axialStiffness(Interval.of(1e5, 1e7)).at(0.5))
                .isEqualTo(1e6, within(1e-3));
        assertThat(DesignVariables.pretension(Interval.of(1, 3)).at(0.5)).isEqualTo(2);
        assertThat(DesignVariables.workersTogether(Interval.of(1, 4)).at(0.5)).isIn(2.0, 3.0);
        assertThat(Axis.even(DesignVariables.workersTogether(Interval.of(1, 3)), 9)
                        .values())
                .containsExactly(1.0, 2.0, 3.0);
        assertThat(DesignVariables.pretension(ANY)).hasToString("pretension [N]");
    }
}
