package org.lifeline.design.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.SwingFall;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/** One level span of 12 m, one worker with a gripped attachment, one temperature: few falls, each solved again directly. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class StretchesOfOneSpanTest {
    private static final LifelineDesign DESIGN = design(0, List.of());
    private static final AssessmentResult ASSESSMENT =
            Assessment.withDefaults().withoutMotion().solve(DESIGN);

    private static LifelineDesign design(double offset, List<Obstruction> obstructions) {
        Worker worker = Designs.worker("A", Attachment.GRIPPED).toBuilder("A")
                .offset(offset)
                .build();
        return LifelineDesign.builder("walkway")
                .line(Designs.line(1, Passage.free()))
                .worker(worker)
                .clearance(ClearanceRules.commonPractice().withObstructions(obstructions))
                .fall(Fall.builder("f").at(Place.of(1, 4)).faller(worker).build())
                .build();
    }

    private static ClearanceAlongLineResult along(double step) {
        return ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(step, 0.05))
                .solve(ASSESSMENT);
    }

    private static ArrestResult direct(LifelineDesign design, Place place) {
        return EnergyBalance.withDefaults()
                .withSide(DeploymentForce.CLEARANCE)
                .withClearance(design.clearance())
                .solve(design.line(), design.falls().get(0).at(place));
    }

    /** Falls at given places, and none at supports, without the rest of the analysis. */
    private static StretchFalls falls(LifelineDesign design, double... stations) {
        StretchFalls falls = new StretchFalls(design);
        List<Place> places = new ArrayList<>();
        for (double each : stations) {
            places.add(Place.of(1, each));
        }
        falls.run(Envelope.withDefaults(), places, List.of());
        return falls;
    }

    private static ClearanceStretch stretch(StretchFalls falls, double addition) {
        return falls.stretch(
                new ClearanceStretch.Extent(1, Interval.of(0, 6), Interval.of(0, 6)),
                Interval.of(12.3, 12.4),
                addition);
    }

    @Test
    void stretchesCoverTheSpanWithoutGaps() {
        assertThat(along(5).stretches())
                .extracting(ClearanceStretch::stations)
                .containsExactly(Interval.of(0, 5), Interval.of(5, 10), Interval.of(10, 12));
        assertThat(along(6).stretches()).hasSize(2);
        assertThat(along(20).stretches())
                .singleElement()
                .satisfies(s -> assertThat(s.along()).isEqualTo(Interval.of(0, 12)));
        // A rest below a thousandth of the step makes no stretch of its own.
        assertThat(along(3.9999).stretches()).hasSize(3);
        assertThat(along(3.99).stretches()).hasSize(4);
    }

    /** A taut line as a parabola: z = 12.4 − w x (L − x)/(2 H), the catenary is within a thousandth of its sag. */
    @Test
    void theElevationOfTheLineIsThatOfAParabola() {
        double w = DESIGN.line().weightPerLength();
        for (ClearanceStretch each : along(3).stretches()) {
            double a = each.stations().low();
            double b = each.stations().high();
            double lowest = a <= 6 && b >= 6 ? 6 : Math.abs(a - 6) < Math.abs(b - 6) ? a : b;
            double highest = Math.abs(a - 6) > Math.abs(b - 6) ? a : b;
            assertThat(each.lineElevation().low()).isEqualTo(12.4 - w * lowest * (12 - lowest) / 3000, within(1e-4));
            assertThat(each.lineElevation().high()).isEqualTo(12.4 - w * highest * (12 - highest) / 3000, within(1e-4));
        }
        // Across the middle the lowest point is that of the vertex.
        assertThat(along(20).stretches().get(0).lineElevation().low()).isEqualTo(12.4 - w * 36 / 3000, within(1e-4));
        assertThat(along(20).stretches().get(0).lineElevation().high()).isEqualTo(12.4, within(1e-9));
    }

    @Test
    void aMirroredLineHasAMirroredTable() {
        List<ClearanceStretch> list = along(2).stretches();
        assertThat(list).hasSize(6);
        for (int i = 0; i < 3; i++) {
            ClearanceStretch left = list.get(i);
            ClearanceStretch right = list.get(5 - i);
            assertThat(right.requiredElevation()).isEqualTo(left.requiredElevation(), within(1e-6));
            assertThat(right.requiredBelowWalkingLevel()).isEqualTo(left.requiredBelowWalkingLevel(), within(1e-6));
            assertThat(right.lineElevation().low())
                    .isEqualTo(left.lineElevation().low(), within(1e-9));
            assertThat(right.swing().displacement()).isEqualTo(left.swing().displacement(), within(1e-6));
        }
        assertThat(list.get(2).requiredElevation())
                .as("the middle sags most")
                .isLessThan(list.get(0).requiredElevation());
    }

    /** The stretch from 6 m to 12 m against falls at 6 m, 9 m, 12 m less 1 mm, and at the anchor. */
    @Test
    void aStretchIsWorkedOutFromItsThreePlacesAndItsSupport() {
        ClearanceStretch s = along(6).stretches().get(1);
        double[] z = new double[3];
        double below = 0;
        for (int i = 0; i < 3; i++) {
            ArrestResult r = direct(DESIGN, Place.of(1, new double[] {6, 0.5 * (6 + 11.999), 11.999}[i]));
            z[i] = r.clearance().requiredElevation();
            below = Math.max(below, r.clearance().requiredBelowWalkingLevel());
        }
        double support = direct(DESIGN, Place.atSupport("south")).clearance().requiredElevation();
        assertThat(s.requiredElevation())
                .isEqualTo(Math.min(StretchFalls.vertex(z[0], z[1], z[2]), support), within(1e-9));
        assertThat(s.requiredBelowWalkingLevel()).isEqualTo(Math.max(below, 10.9 - support), within(1e-9));
        assertThat(s.governing().orElseThrow().fall().place()).isEqualTo(Place.of(1, 6));
        assertThat(s.governing().orElseThrow().side()).isEqualTo(DeploymentForce.CLEARANCE);
    }

    @Test
    void aFinerTableNeedsTheSameInAll() {
        double coarse = along(12).stretches().get(0).requiredElevation();
        double fine = along(1.5).stretches().stream()
                .mapToDouble(ClearanceStretch::requiredElevation)
                .min()
                .orElseThrow();
        assertThat(fine).isEqualTo(coarse, within(1e-3));
        // The envelope looks for the lowest place by itself.
        double searched = ASSESSMENT.governing("requiredElevation").isPresent()
                ? ASSESSMENT.governing("requiredElevation").orElseThrow().factored()
                : ASSESSMENT
                        .governing("requiredBelowLine")
                        .orElseThrow()
                        .arrest()
                        .clearance()
                        .requiredElevation();
        assertThat(fine).isEqualTo(searched, within(2e-3));
    }

    /** 20 % more for what line and subsystem give, on each place by itself. */
    @Test
    void theModelFactorIsOnDescentAndDeployment() {
        LifelineDesign factored = DESIGN.toBuilder()
                .modelFactors(new ModelFactors(1.5, 1.2, "test"))
                .build();
        ArrestResult r = direct(DESIGN, Place.of(1, 6));
        double more = 0.2 * (r.deployment() + r.lineDescent());

        ClearanceStretch s = stretch(falls(factored, 6, 6, 6), 0);

        assertThat(s.requiredElevation()).isEqualTo(r.clearance().requiredElevation() - more, within(1e-9));
        assertThat(s.requiredBelowWalkingLevel())
                .isEqualTo(r.clearance().requiredBelowWalkingLevel() + more, within(1e-9));
    }

    @Test
    void whatArrestsInTimeAddIsTakenOffTheElevation() {
        ClearanceStretch plain = stretch(falls(DESIGN, 6, 6, 6), 0);
        ClearanceStretch added = stretch(falls(DESIGN, 6, 6, 6), 0.25);
        assertThat(added.requiredElevation()).isEqualTo(plain.requiredElevation() - 0.25, within(1e-12));
        assertThat(added.requiredBelowWalkingLevel())
                .isEqualTo(plain.requiredBelowWalkingLevel() + 0.25, within(1e-12));
    }

    /** An object 0.1 m below what is required: enough by energy balance, not with 0.25 m more in time. */
    @Test
    void theAdditionCanForbidAStretch() {
        double required = direct(DESIGN, Place.of(1, 6)).clearance().requiredElevation();
        LifelineDesign low = design(0, List.of(new Obstruction(0, 12, required - 0.1)));
        ClearanceStretch enough = stretch(falls(low, 6, 6, 6), 0);
        ClearanceStretch lacking = stretch(falls(low, 6, 6, 6), 0.25);
        assertThat(enough.mustNotBeUsed()).isFalse();
        assertThat(enough.margin().orElseThrow()).isEqualTo(0.1, within(1e-9));
        assertThat(lacking.reasons()).containsExactly("the clearance is not enough");
        assertThat(lacking.margin().orElseThrow()).isEqualTo(-0.15, within(1e-9));
    }

    /** Nothing required, nothing known: the table says the line itself, and no case. */
    @Test
    void withoutAFallTheLineItselfIsAllThatIsRequired() {
        ClearanceStretch s = stretch(new StretchFalls(DESIGN), 0.25);
        assertThat(s.requiredElevation()).isEqualTo(12.3);
        assertThat(s.requiredBelowWalkingLevel()).isZero();
        assertThat(s.governing()).isEmpty();
        assertThat(s.swing()).isEqualTo(new ClearanceStretch.Swing(0, 0, 0, 0));
    }

    /** A place that the span does not have cannot be computed; that is a reason, and the others still count. */
    @Test
    void aFallThatCannotBeComputedIsAReason() {
        ClearanceStretch s = stretch(falls(DESIGN, 6, 15, 6), 0);
        assertThat(s.reasons()).isNotEmpty().allMatch(r -> r.startsWith("not computed: "));
        assertThat(s.requiredElevation())
                .isEqualTo(direct(DESIGN, Place.of(1, 6)).clearance().requiredElevation(), within(1e-9));
    }

    /** The highest object below the way counts; one that ends just before the place of the fall does not. */
    @Test
    void theHighestObjectBelowTheWayCounts() {
        LifelineDesign d = design(
                0,
                List.of(
                        new Obstruction(5, 7, 3),
                        new Obstruction(5.5, 6, 4.5),
                        new Obstruction(6, 6.5, 4),
                        new Obstruction(0, 5.99, 5),
                        new Obstruction(6.01, 12, 5),
                        new Obstruction(0, 12, 5, 0.31)));
        assertThat(stretch(falls(d, 6, 6, 6), 0).obstruction()).hasValue(4.5);
        LifelineDesign free = design(0, List.of(new Obstruction(0, 5.99, 5)));
        assertThat(stretch(falls(free, 6, 6, 6), 0).obstruction()).isEmpty();
    }

    /** Pendulum by hand: 0.9 m off on a lanyard of 1.8 m is 30°, drop 1.8 (1 − cos 30°). */
    @Test
    void theSwingIsThatOfThePendulum() {
        ClearanceStretch.Swing s =
                stretch(falls(design(0.9, List.of()), 6, 6, 6), 0).swing();
        assertThat(s.displacement()).isEqualTo(0.9, within(1e-9));
        assertThat(s.amplitude()).isEqualTo(0.9, within(1e-9));
        assertThat(s.angle()).isEqualTo(Math.PI / 6, within(1e-9));
        assertThat(s.drop()).isEqualTo(1.8 * (1 - Math.cos(Math.PI / 6)), within(1e-9));
    }

    /** Off the middle the attachment travels: the largest of each measure over all falls, one by one. */
    @Test
    void theSwingIsTheLargestOfAllFalls() {
        LifelineDesign d = design(0.5, List.of());
        List<SwingFall> all = Stream.of(2.0, 4.0, 6.0)
                .flatMap(x -> Stream.of(DeploymentForce.values())
                        .map(side -> SwingFall.of(EnergyBalance.withDefaults()
                                .withSide(side)
                                .solve(d.line(), d.falls().get(0).at(Place.of(1, x))))))
                .toList();
        ClearanceStretch.Swing s = stretch(falls(d, 2, 4, 6), 0).swing();
        assertThat(s.displacement())
                .isEqualTo(
                        all.stream().mapToDouble(SwingFall::displacement).max().orElse(0));
        assertThat(s.amplitude())
                .isEqualTo(all.stream().mapToDouble(SwingFall::amplitude).max().orElse(0));
        assertThat(s.angle())
                .isEqualTo(all.stream().mapToDouble(SwingFall::angle).max().orElse(0));
        assertThat(s.drop())
                .isEqualTo(all.stream().mapToDouble(SwingFall::drop).max().orElse(0));
        assertThat(s.displacement()).isGreaterThan(0.5);
    }

    /** Half a millimetre beside an anchor only the fall at the anchor itself passes over the object. */
    @Test
    void fallsAtTheAnchorsBelongToTheStretchesThatTouchThem() {
        LifelineDesign d = design(0, List.of(new Obstruction(-1, 0.0005, 3), new Obstruction(11.9995, 13, 2)));
        List<ClearanceStretch> list = ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(4, 0.05))
                .solve(Assessment.withDefaults().withoutMotion().solve(d))
                .stretches();
        assertThat(list.get(0).obstruction()).hasValue(3);
        assertThat(list.get(1).obstruction()).isEmpty();
        assertThat(list.get(2).obstruction()).hasValue(2);
    }

    /** Distances along the line go on where the second span begins; clamped level spans of one length have one table. */
    @Test
    void theSecondSpanGoesOnWhereTheFirstEnds() {
        LifelineDesign two =
                DESIGN.toBuilder().line(Designs.line(2, Passage.clamped())).build();
        List<ClearanceStretch> list = ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(7, 0.05))
                .solve(Assessment.withDefaults().withoutMotion().solve(two))
                .stretches();
        assertThat(list)
                .extracting(ClearanceStretch::along)
                .containsExactly(Interval.of(0, 7), Interval.of(7, 12), Interval.of(12, 19), Interval.of(19, 24));
        assertThat(list).extracting(ClearanceStretch::span).containsExactly(1, 1, 2, 2);
        for (int i = 0; i < 2; i++) {
            assertThat(list.get(2 + i).stations()).isEqualTo(list.get(i).stations());
            assertThat(list.get(2 + i).requiredElevation())
                    .isEqualTo(list.get(i).requiredElevation(), within(1e-4));
        }
    }

    @Test
    void whatIsMissingIsNamed() {
        assertThatThrownBy(() -> ClearanceAlongLine.withDefaults().withSteps(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("value");
        assertThatThrownBy(() -> ClearanceAlongLine.withDefaults().solve(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("assessment");
        assertThat(along(5).additionInTime()).as("no arrest was followed").isZero();
        assertThat(along(5).arrestsInTime()).isZero();
    }
}
