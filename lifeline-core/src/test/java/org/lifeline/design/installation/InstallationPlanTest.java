package org.lifeline.design.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.field.StringingRow;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.cable.Cable;

class InstallationPlanTest {
    private static final double EA = 3.3e6;
    private static final InstallationRequest REQUEST = new InstallationRequest(
            Interval.of(-10, 30), 100, Interval.of(0.9, 1.1), Optional.of(ConstructionalStretch.STEEL_CORE));

    private static LifelineDesign design(int spans, double stiffness) {
        Cable cable = Cable.builder().massPerLength(0.41).axialStiffness(EA).build();
        Lifeline.Builder b = Lifeline.builder()
                .cable(cable)
                .support(Support.end("a", Point.of(0, 0, 12.4)).withStiffness(Stiffness.alongX(stiffness)));
        for (int i = 1; i < spans; i++) {
            b.intermediateAnchor("p" + i, Point.of(12 * i, 0, 12.4), Passage.clamped());
        }
        return LifelineDesign.builder("line")
                .line(b.endAnchor("z", Point.of(12 * spans, 0, 12.4))
                        .pretension(1500)
                        .build())
                .worker(Designs.worker("A", Attachment.FREE_RUNNING))
                .build();
    }

    private static InstallationResult plan(LifelineDesign design) {
        return InstallationPlan.of(REQUEST).withoutReadings().solve(design);
    }

    /**
     * Stress-free length of a level span with end tension T, by closed forms: H from H cosh(w L/2H) = T, arc 2 (H/w) sinh(w
     * L/2H), less its elastic stretch ∫ T ds/EA = (H/EA) (L/2 + (H/2w) sinh(w L/H)) (Irvine, Cable Structures, 1981, ch. 1;
     * recalled).
     */
    private static double length(double tension, double run, double w) {
        double h = tension;
        for (int i = 0; i < 200; i++) {
            h = tension / Math.cosh(w * run / 2 / h);
        }
        double arc = 2 * h / w * Math.sinh(w * run / 2 / h);
        return arc - h / EA * (run / 2 + h / (2 * w) * Math.sinh(w * run / h));
    }

    @Test
    void lengthsAndTakeUpFollowTheCatenary() {
        LifelineDesign design = design(1, Double.POSITIVE_INFINITY);
        InstallationResult r = plan(design);
        double w = design.line().weightPerLength();
        // The closed form is of the first order in the strain ε = 4.5e-4; the second is ε² L = 2.5e-6 m.
        assertThat(r.totalLength()).isEqualTo(length(1500, 12, w), within(3e-6));
        assertThat(r.lengths()).hasSize(1);
        assertThat(r.totalLengthAt(25)).isEqualTo(r.totalLength() * (1 + 10 * 12e-6), within(1e-12));
        assertThat(r.takeUps()).extracting(TakeUp::temperature).containsExactly(-10.0, 15.0, 30.0);
        TakeUp designed = r.takeUps().get(1);
        // And its weight lies along the stretched arc: 2 ε of the 0.12 m that sag adds, ε = 3e-5 by hand: 8e-6 m more.
        assertThat(designed.rope()).isEqualTo(length(100, 12, w) - length(1500, 12, w), within(1.2e-5));
        assertThat(designed.structure()).isZero();
        assertThat(designed.tensions().high()).isEqualTo(1500, within(1e-6));
        // Colder: more tension to be read, more rope to be drawn out.
        assertThat(r.takeUps().get(0).tensions().high()).isGreaterThan(1500);
        assertThat(r.takeUps().get(0).total()).isGreaterThan(designed.total());
        assertThat(r.tensionerTravel()).isEqualTo(r.takeUps().get(0).total() + 0.0025 * r.totalLength(), within(1e-12));
    }

    /**
     * Clamps are open while the line is tensioned, and a yielding anchor is followed. Second way: the line of the design is made
     * longer by heat until it is as slack as drawn by hand; what it has grown by is the travel of the tensioner.
     */
    @Test
    void theAnchorGivesWayMeanwhile() {
        LifelineDesign design = design(3, 1e5);
        TakeUp found = plan(design).takeUps().get(1);
        Lifeline free = design.line().withSupports(s -> s.isEnd() ? s : s.withPassage(Passage.free()));
        double low = 0;
        double high = 980;
        for (int i = 0; i < 60; i++) {
            double rise = 0.5 * (low + high);
            // The rope that is added on site weighs something; heat spreads the weight that is there.
            Lifeline line = free.withCable(free.cable().toBuilder()
                    .massPerLength(0.41 * (1 + 12e-6 * rise))
                    .build());
            double t = Statics.withDefaults()
                    .withTemperature(15 + rise)
                    .solve(line, List.of())
                    .firstTension();
            if (t > 100) {
                low = rise;
            } else {
                high = rise;
            }
        }
        double length = Statics.withDefaults().solve(free, List.of()).spans().stream()
                .mapToDouble(s -> s.unstretchedLength())
                .sum();
        double grown = length * 12e-6 * low;
        assertThat(found.structure()).isEqualTo(1400 / 1e5, within(1e-4));
        // 0.45 mm: with its anchor out by 14 mm the first span of 12 m is longer, and 0.13 m of sag excess goes with
        // its cube.
        assertThat(found.total()).isEqualTo(grown, within(4.5e-4));
    }

    /** Constructional stretch by the other way: a line of given stress-free length, on anchors that stay. */
    @Test
    void stretchLeavesLessPretension() {
        LifelineDesign design = design(2, Double.POSITIVE_INFINITY);
        InstallationResult r = plan(design);
        Lifeline free = design.line().withSupports(s -> s.isEnd() ? s : s.withPassage(Passage.free()));
        // Published range of a rope maker's guide for steel cores: 0.125 to 0.25 %.
        assertThat(r.stretch()).extracting(StretchEffect::stretch).containsExactly(0.00125, 0.0025);
        for (StretchEffect each : r.stretch()) {
            LineEquilibrium longer = Statics.withDefaults()
                    .solve(
                            free.withInstalled(Installed.unstretchedLength(r.totalLength() * (1 + each.stretch()))),
                            List.of());
            // 0.3 %: there the rope that is added weighs something, here it is the same rope, only longer.
            assertThat(each.pretension()).isEqualTo(longer.firstTension(), within(3e-3 * longer.firstTension()));
            assertThat(each.sag())
                    .isEqualTo(
                            longer.span(1).sag(), within(3e-3 * longer.span(1).sag()));
            assertThat(each.retension()).isEqualTo(each.stretch() * r.totalLength(), within(1e-12));
            assertThat(each.pretension()).isLessThan(700);
        }
        assertThat(ConstructionalStretch.FIBRE_CORE.range()).isEqualTo(Interval.of(0.0025, 0.005));
    }

    @Test
    void theStringingTableHasTheTolerance() {
        InstallationResult r = plan(design(2, Double.POSITIVE_INFINITY));
        assertThat(r.stringing()).hasSize(6);
        StringingRow row = r.stringing().get(2);
        assertThat(row.temperature()).isEqualTo(15);
        assertThat(row.tension().low()).isEqualTo(0.9 * row.tension().nominal(), within(1e-3));
        assertThat(row.tension().high()).isEqualTo(1.1 * row.tension().nominal(), within(1e-3));
    }

    /** A reading means what a design with that pretension means: the envelope of that design, directly. */
    @Test
    void aReadingOutsideTheToleranceIsFollowedUp() {
        LifelineDesign design = design(1, Double.POSITIVE_INFINITY);
        InstallationResult r = InstallationPlan.of(
                        new InstallationRequest(Interval.of(0, 30), 100, Interval.of(0.8, 1.25), Optional.empty()))
                .solve(design);
        assertThat(r.readings()).hasSize(5);
        ReadingEffect half = r.readings().get(3);
        assertThat(half.pretension()).isEqualTo(600, within(1e-6));
        double direct = Envelope.withDefaults()
                .extremes(design.withLine(design.line().withInstalled(Installed.pretension(600))))
                .of(Quantity.REQUIRED_BELOW_LINE)
                .orElseThrow()
                .value();
        assertThat(half.worst(Quantity.REQUIRED_BELOW_LINE).orElseThrow()).isEqualTo(direct, within(1e-6));
        ReadingEffect designed = r.readings().get(0);
        ReadingEffect twice = r.readings().get(4);
        assertThat(twice.pretension()).isEqualTo(3750, within(1e-6));
        assertThat(twice.worst(Quantity.END_ANCHOR_LOAD).orElseThrow())
                .isGreaterThan(designed.worst(Quantity.END_ANCHOR_LOAD).orElseThrow());
        assertThat(half.worst(Quantity.REQUIRED_ELEVATION).orElseThrow())
                .isLessThan(designed.worst(Quantity.REQUIRED_ELEVATION).orElseThrow());
    }

    /** Twice the upper end of 15 kN is 33 kN, far from the 81.6 kN that the line holds: the search must not start beyond. */
    @Test
    void readingsOfATightLineAreFollowedUp() {
        LifelineDesign loose = Designs.design(1, Passage.free(), Attachment.FREE_RUNNING);
        LifelineDesign tight = loose.withLine(loose.line().withInstalled(Installed.pretension(15e3)));
        InstallationResult r = InstallationPlan.of(InstallationRequest.between(Interval.of(0, 30)))
                .withAnalysis(d -> Extremes.of(d, List.of()))
                .solve(tight);
        assertThat(r.readings())
                .extracting(ReadingEffect::pretension)
                .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-3 ? 0 : 1)
                .containsExactly(15e3, 13.5e3, 16.5e3, 6.75e3, 33e3);
        LifelineDesign tighter = loose.withLine(loose.line().withInstalled(Installed.pretension(45e3)));
        assertThatThrownBy(() -> InstallationPlan.of(InstallationRequest.between(Interval.of(0, 30)))
                        .withAnalysis(d -> Extremes.of(d, List.of()))
                        .solve(tighter))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("twice the upper end, tension at the first end anchor: 99000")
                .hasMessageContaining("cable and terminations hold, 81630.0 N");
    }

    @Test
    void badRequestsAreRefused() {
        assertThatThrownBy(() ->
                        new InstallationRequest(Interval.of(-300, 30), -1, Interval.of(1.1, 1.2), Optional.empty()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("temperatures[0]")
                .hasMessageContaining("handTight")
                .hasMessageContaining("tolerance");
        assertThatThrownBy(() -> new ConstructionalStretch(Interval.of(0, 0.2), ""))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("5 %")
                .hasMessageContaining("source");
        assertThat(InstallationRequest.between(Interval.of(0, 30)).handTight()).isEqualTo(100);
    }
}
