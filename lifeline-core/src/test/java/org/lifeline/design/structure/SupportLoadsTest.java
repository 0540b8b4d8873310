package org.lifeline.design.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Post;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

class SupportLoadsTest {
    /** A square tube 150 × 150 × 10 mm: I = (0.15⁴ − 0.13⁴)/12, W = I/0.075, at 235 MPa. */
    private static final double I = (Math.pow(0.15, 4) - Math.pow(0.13, 4)) / 12;

    private static final double RESISTANCE = I / 0.075 * 235e6;
    private static final double E = 210e9;
    private static final double H = 1.2;

    private static Post tube() {
        return Post.ofHeight(H)
                .elasticModulus(E)
                .secondMomentX(I)
                .secondMomentY(I)
                .momentOfResistanceX(RESISTANCE)
                .momentOfResistanceY(RESISTANCE)
                .build();
    }

    private static LifelineDesign design(double turn, Post corner) {
        Worker worker = Designs.worker("A", Attachment.FREE_RUNNING);
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.41)
                        .axialStiffness(3.3e6)
                        .breakingStrength(58e3)
                        .build())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .support(Support.intermediate("corner", Point.of(10, 0, 12.4), Passage.free())
                        .withPost(corner))
                .endAnchor("c", Point.of(10 + 8 * Math.cos(turn), 8 * Math.sin(turn), 12.4))
                .pretension(1200)
                .build();
        return LifelineDesign.builder("corner")
                .line(line)
                .worker(worker)
                .fall(Fall.builder("f").at(Place.of(1, 4)).faller(worker).build())
                .build();
    }

    private static AssessmentResult assessed(LifelineDesign design) {
        return Assessment.withDefaults().withoutMotion().solve(design);
    }

    private static SupportLoadsResult loads(LifelineDesign design, double degrees) {
        return SupportLoads.withDefaults().withAngle(Math.toRadians(degrees)).solve(assessed(design));
    }

    /** Cantilever: k = 3 E I/h³ (Gere & Goodno, table of deflections; recalled). 210 GPa, 1.8387e-5 m⁴, 1.2 m. */
    @Test
    void aPostIsACantilever() {
        Support s = Support.end("a", Point.of(0, 0, 1)).withPost(tube());
        double k = 3 * 210e9 * 1.838666666666667e-5 / 1.728;
        assertThat(I).isEqualTo(1.838666666666667e-5, within(1e-19));
        assertThat(s.stiffness().x()).isEqualTo(k, within(1e-6 * k));
        assertThat(s.stiffness().y()).isEqualTo(k, within(1e-6 * k));
        assertThat(s.stiffness().z()).isInfinite();
        assertThat(s.post()).isPresent();
    }

    /** Forces that act together carry the pull and the cable, and nothing across or along the line is left over. */
    @Test
    void partnersActTogether() {
        LifelineDesign design = design(0.6, tube());
        double weight = Statics.withDefaults().solve(design.line(), List.of()).supports().stream()
                .mapToDouble(s -> -s.vector().z())
                .sum();
        for (GoverningReaction r : loads(design, 0).byEnergyBalance()) {
            Vector3 sum = Vector3.ZERO;
            for (Vector3 each : r.forces()) {
                sum = sum.plus(each);
            }
            double p = arrest(design, r).lineLoad();
            assertThat(sum.x()).isEqualTo(0, within(1e-3));
            assertThat(sum.y()).isEqualTo(0, within(1e-3));
            // 0.1 N: the weight of cable that has run into the line's springs is the same to that.
            assertThat(-sum.z()).isEqualTo(p + weight, within(0.1));
            assertThat(r.simultaneous()).isTrue();
            assertThat(r.vector()).isEqualTo(r.forces().get(number(design, r)));
        }
    }

    private static int number(LifelineDesign design, GoverningReaction r) {
        return design.line().supports().stream()
                .map(Support::id)
                .toList()
                .indexOf(r.support().id());
    }

    private static ArrestResult arrest(LifelineDesign design, GoverningReaction r) {
        EnergyBalance analysis = EnergyBalance.withDefaults()
                .withTemperature(r.fallCase().temperature())
                .withSide(r.fallCase().side());
        return (r.fallCase().attachmentLimit().isPresent()
                        ? analysis.withAttachmentLimit(
                                r.fallCase().attachmentLimit().get())
                        : analysis)
                .solve(design.line(), r.fallCase().fall());
    }

    /** Moment and torsion against lever arms by hand; the deflection is the displacement that the arrest itself has. */
    @Test
    void theBaseGetsForceTimesLever() {
        Post bracket = Post.ofHeight(H)
                .eccentricity(new Post.Eccentricity(0, 0.25))
                .elasticModulus(E)
                .secondMomentX(I)
                .secondMomentY(I)
                .momentOfResistanceX(RESISTANCE)
                .momentOfResistanceY(RESISTANCE)
                .build();
        LifelineDesign design = design(0.6, bracket);
        SupportLoadsResult loads = loads(design, 15);
        GoverningReaction moment =
                loads.governing("corner", LoadEffect.BASE_MOMENT).orElseThrow();
        Vector3 f = moment.vector();
        double mx = 0.25 * f.z() - H * f.y();
        double my = H * f.x();
        assertThat(moment.value()).isEqualTo(Math.hypot(mx, my), within(1e-9 * moment.value()));
        GoverningReaction torsion =
                loads.governing("corner", LoadEffect.BASE_TORSION).orElseThrow();
        assertThat(torsion.value()).isEqualTo(Math.abs(0.25 * torsion.vector().x()), within(1e-9 * torsion.value()));
        GoverningReaction share =
                loads.governing("corner", LoadEffect.ELASTIC_SHARE).orElseThrow();
        Vector3 m = share.moment().orElseThrow();
        assertThat(share.value())
                .isEqualTo((Math.abs(m.x()) + Math.abs(m.y())) / RESISTANCE, within(1e-9 * share.value()));
        assertThat(loads.deflection("a")).isEmpty();
        Vector3 shear =
                loads.governing("corner", LoadEffect.SHEAR).orElseThrow().vector();
        assertThat(loads.deflection("corner").orElseThrow().horizontal())
                .isEqualTo(shear.horizontal() * H * H * H / (3 * E * I), within(1e-12));
        GoverningReaction upright =
                loads(design, 0).governing("corner", LoadEffect.SHEAR).orElseThrow();
        ArrestResult r = arrest(design, upright);
        Vector3 atRest = loads.permanent().get(1);
        // Installed, the post is drawn where the pretension holds it; the arrest counts from there.
        assertThat(r.supports().get(1).displacement().y())
                .isEqualTo((upright.vector().y() - atRest.y()) * H * H * H / (3 * E * I), within(1e-9));
    }

    /** Four times as many stations find base effects at most 0.2 % larger (measured: 0.16 %), by brute force. */
    @Test
    void aFinerScanFindsHardlyMore() {
        LifelineDesign design = design(0.6, tube());
        SupportLoadsResult loads = loads(design, 15);
        GoverningLoads fine = new GoverningLoads(design, new double[] {0, Math.toRadians(15), -Math.toRadians(15)});
        for (int span = 1; span <= 2; span++) {
            for (int i = 1; i < 48; i++) {
                for (AttachmentLimit limit : AttachmentLimit.values()) {
                    Fall f = design.falls()
                            .get(0)
                            .at(Place.of(span, design.line().run(span) * i / 48));
                    ArrestResult r = EnergyBalance.withDefaults()
                            .withAttachmentLimit(limit)
                            .solve(design.line(), f);
                    Extremes.of(design, List.of(r))
                            .all()
                            .forEach(e -> fine.add(new ComputedCase(e.fallCase(), e.arrest())));
                }
            }
        }
        for (GoverningReaction each : fine.rows(Method.ENERGY_BALANCE)) {
            double found = loads.governing(each.support().id(), each.effect())
                    .orElseThrow()
                    .value();
            assertThat(found).as("%s %s", each.support().id(), each.effect()).isGreaterThan(each.value() * 0.998);
        }
    }

    /** A fall to the side: nothing across a straight line without an angle, P sin φ in all with one. */
    @Test
    void anAngleLoadsBracketsAcrossTheLine() {
        LifelineDesign straight = design(0, Post.ofHeight(H).build());
        assertThat(loads(straight, 0).byEnergyBalance("corner", LoadEffect.PLUS_Y))
                .isEmpty();
        SupportLoadsResult leaning = loads(straight, 15);
        GoverningReaction r =
                leaning.byEnergyBalance("corner", LoadEffect.PLUS_Y).orElseThrow();
        assertThat(Math.toDegrees(r.angle())).isEqualTo(15, within(1e-9));
        double sum = r.forces().stream().mapToDouble(Vector3::y).sum();
        assertThat(sum).isBetween(6000 * Math.sin(r.angle()) - 1, 6000 * Math.sin(r.angle()) + 60);
        assertThat(leaning.governing("corner", LoadEffect.DOWN).orElseThrow().angle())
                .isEqualTo(0);
    }

    @Test
    void factorsAndWarnings() {
        Post weak = Post.ofHeight(H)
                .momentOfResistanceX(1000)
                .momentOfResistanceY(1000)
                .build();
        LifelineDesign design = design(0.6, weak).toBuilder()
                .modelFactors(new ModelFactors(1.2, 1, ""))
                .build();
        StatedFactor factor = new StatedFactor("ultimate", 1.5, "structural brief, 3.1");
        SupportLoadsResult loads =
                SupportLoads.withDefaults().withFactors(List.of(factor)).solve(assessed(design));
        GoverningReaction r = loads.governing("a", LoadEffect.RESULTANT).orElseThrow();
        assertThat(r.factored(factor)).isEqualTo(1.5 * r.value());
        assertThat(r.value()).isEqualTo(1.2 * arrest(design, r).anchorLoad("a"), within(1e-6 * r.value()));
        assertThat(loads.warnings()).hasSize(1);
        assertThat(loads.warnings().get(0).share()).isGreaterThan(1);
        assertThatThrownBy(() -> new StatedFactor("ultimate", 1.5, " "))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("source");
        assertThatThrownBy(() -> SupportLoads.withDefaults().withAngle(2))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("pullAngle");
        assertThatThrownBy(() -> Post.ofHeight(-1).elasticModulus(E).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("height")
                .hasMessageContaining("secondMomentOfArea");
    }

    @Test
    void arrestsInTimeStandBeside() {
        Lifeline single = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.41).axialStiffness(3.3e6).build())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .endAnchor("c", Point.of(8, 0, 12.4))
                .pretension(1200)
                .build();
        LifelineDesign design = design(0, tube()).toBuilder().line(single).build();
        AssessmentResult assessment = Assessment.withDefaults().solve(design);
        SupportLoadsResult loads = SupportLoads.withDefaults().withAngle(0).solve(assessment);
        assertThat(loads.inTime()).isNotEmpty().noneMatch(GoverningReaction::simultaneous);
        // What is handed over is what verdicts rest on: the peak with what its mesh may hide.
        for (GoverningReaction each : loads.inTime()) {
            if (each.effect() == LoadEffect.RESULTANT) {
                Extreme judged =
                        assessment.inTime().onSupport(each.support().id()).orElseThrow();
                assertThat(judged.allowance()).isPositive();
                assertThat(each.value()).isCloseTo(judged.value(), withinPercentage(1e-7));
                assertThat(each.vector().magnitude()).isCloseTo(each.value(), withinPercentage(1e-7));
            }
            assertThat(each.effect().of(each.support(), each.vector())).isEqualTo(each.value());
        }
        GoverningReaction top = loads.governing("a", LoadEffect.RESULTANT).orElseThrow();
        assertThat(top.value())
                .isGreaterThanOrEqualTo(loads.byEnergyBalance("a", LoadEffect.RESULTANT)
                        .orElseThrow()
                        .value());
    }
}
