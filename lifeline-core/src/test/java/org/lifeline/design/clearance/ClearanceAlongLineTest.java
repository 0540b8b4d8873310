package org.lifeline.design.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.FollowedArrest;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Quantity;
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

class ClearanceAlongLineTest {
    private static LifelineDesign design(double offset, List<Obstruction> obstructions) {
        return design(Attachment.FREE_RUNNING, offset, obstructions);
    }

    private static LifelineDesign design(Attachment attachment, double offset, List<Obstruction> obstructions) {
        Worker worker =
                Designs.worker("A", attachment).toBuilder("A").offset(offset).build();
        return LifelineDesign.builder("walkway")
                .line(Designs.line(2, Passage.free()))
                .temperature(-30)
                .temperature(40)
                .worker(worker)
                .clearance(ClearanceRules.commonPractice().withObstructions(obstructions))
                .fall(Fall.builder("f").at(Place.of(1, 4)).faller(worker).build())
                .build();
    }

    private static AssessmentResult assessed(LifelineDesign design) {
        return Assessment.withDefaults().withoutMotion().solve(design);
    }

    /** Every stretch against 20 places in it, each at every temperature, side and limit; the whole against the envelope. */
    @Test
    void noPlaceNeedsMoreThanItsStretch() {
        LifelineDesign design = design(0, List.of());
        AssessmentResult assessment = assessed(design);
        ClearanceAlongLineResult result = ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(3, 0.05))
                .solve(assessment);
        assertThat(result.stretches()).hasSize(8);
        double least = Double.POSITIVE_INFINITY;
        for (ClearanceStretch each : result.stretches()) {
            least = Math.min(least, each.requiredElevation());
            double brute = Double.POSITIVE_INFINITY;
            for (int i = 1; i < 20; i++) {
                double station = each.stations().low() + each.stations().width() * i / 20;
                for (double t : design.temperatures()) {
                    for (AttachmentLimit limit : AttachmentLimit.values()) {
                        brute = Math.min(
                                brute,
                                EnergyBalance.withDefaults()
                                        .withTemperature(t)
                                        .withSide(DeploymentForce.CLEARANCE)
                                        .withAttachmentLimit(limit)
                                        .solve(
                                                design.line(),
                                                design.falls().get(0).at(Place.of(each.span(), station)))
                                        .clearance()
                                        .requiredElevation());
                    }
                }
            }
            // 1 mm: the parabola through three places of a stretch of 3 m; the printed rounding is 50 mm.
            assertThat(each.requiredElevation()).isLessThanOrEqualTo(brute + 1e-3);
            assertThat(each.requiredElevation()).isGreaterThan(brute - 0.02);
        }
        double worst = assessment
                .envelope()
                .extremes()
                .of(Quantity.REQUIRED_ELEVATION)
                .orElseThrow()
                .value();
        assertThat(least).isEqualTo(worst, within(1e-3));
        // Distances come from the clearance deployment force: CSA Z259.16-21, preface (as summarised publicly;
        // published).
        assertThat(result.stretches()).allMatch(s -> s.governing().orElseThrow().side() == DeploymentForce.CLEARANCE);
        assertThat(result.mustNotBeUsed()).isEmpty();
        assertThat(result.additionInTime()).isZero();
    }

    /** What stands in the table is no less than what verdicts rest on: lowest points in time with what their meshes may hide. */
    @Test
    void arrestsInTimeCountWithTheirAllowance() {
        LifelineDesign design = design(0, List.of()).toBuilder()
                .modelFactors(new ModelFactors(1.1, 1.2, "test"))
                .build();
        AssessmentResult assessment = Assessment.withDefaults().solve(design);
        ClearanceAlongLineResult result = ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(6, 0.05))
                .solve(assessment);
        assertThat(result.arrestsInTime()).isEqualTo(assessment.followed().size());
        double most = 0;
        for (FollowedArrest each : assessment.followed()) {
            ArrestResult fast = each.arrest();
            ArrestResult slow = EnergyBalance.withDefaults()
                    .withTemperature(fast.temperature())
                    .withSide(fast.side())
                    .withClearance(design.clearance())
                    .withAttachmentLimit(each.fallCase().attachmentLimit().orElse(AttachmentLimit.RUNNING))
                    .solve(fast.line(), fast.fall());
            // By hand: lower by all that the line and the subsystem give more, times 1.2, and by the bound of the mesh,
            // times 1.2.
            double dropped = slow.clearance().requiredElevation()
                    - 0.2 * (slow.lineDescent() + slow.deployment())
                    - fast.clearance().requiredElevation()
                    + 0.2 * (fast.lineDescent() + fast.deployment());
            double hidden = fast.motion().orElseThrow().allowances().lowest();
            assertThat(hidden).isPositive();
            most = Math.max(most, dropped + 1.2 * hidden);
        }
        assertThat(result.additionInTime()).isEqualTo(most, within(1e-9));
        double judged = assessment
                .inTime()
                .of(Quantity.REQUIRED_ELEVATION)
                .orElseThrow()
                .value();
        double least = result.stretches().stream()
                .mapToDouble(ClearanceStretch::requiredElevation)
                .min()
                .orElseThrow();
        assertThat(least).isLessThanOrEqualTo(judged + 1e-3);
    }

    @Test
    void theLineMustNotBeUsedOverAHighObstruction() {
        ClearanceAlongLineResult result = ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(2, 0.1))
                .solve(assessed(design(0, List.of(new Obstruction(0, 24, 1), new Obstruction(16.5, 19, 8)))));
        // Held attachments fall where they are; running ones pass over it from anywhere in span 2 on their way.
        assertThat(result.mustNotBeUsed()).isNotEmpty();
        Interval first = result.mustNotBeUsed().get(0);
        assertThat(first.low()).isBetween(12.0, 16.0);
        assertThat(first.high()).isGreaterThanOrEqualTo(20);
        ClearanceStretch over = result.stretches().get(8);
        assertThat(over.stations()).isEqualTo(Interval.of(4, 6));
        assertThat(over.margin().orElseThrow()).isNegative();
        assertThat(over.reasons()).contains("the clearance is not enough");
        ClearanceStretch away = result.stretches().get(1);
        assertThat(away.mustNotBeUsed()).isFalse();
        assertThat(away.availableBelowLine().orElseThrow())
                .isEqualTo(away.lineElevation().low() - 1);
        assertThat(away.requiredBelowWalkingLevel()).isEqualTo(10.9 - away.requiredElevation(), within(2e-3));
    }

    /**
     * A pipe below the line, 0.1 m wide, wherever it lies in a stretch of 2 m: whoever falls above it strikes it. Falls are computed
     * at the ends and in the middle of the stretch, and a gripped attachment stays where it is.
     */
    @ParameterizedTest
    @EnumSource(Attachment.class)
    void aNarrowObstructionBetweenTheComputedFallsIsStruck(Attachment attachment) {
        for (double from : new double[] {2.05, 2.6, 3.05, 3.85, 5.3}) {
            LifelineDesign design = design(attachment, 0, List.of(new Obstruction(from, from + 0.1, 8)));
            ClearanceStretch over = ClearanceAlongLine.withDefaults()
                    .withSteps(new StationSteps(2, 0.1))
                    .solve(assessed(design))
                    .stretches()
                    .get((int) (from / 2));
            ArrestResult above = EnergyBalance.withDefaults()
                    .withTemperature(40)
                    .withSide(DeploymentForce.CLEARANCE)
                    .solve(design.line(), design.falls().get(0).at(Place.of(1, from + 0.05)));
            assertThat(above.clearance().requiredElevation()).isLessThan(8);
            assertThat(over.obstruction()).hasValue(8);
            assertThat(over.reasons()).containsExactly("the clearance is not enough");
        }
    }

    /**
     * Where along the line a fall is stated says nothing of where it is moved to. Stated at a support, where no attachment runs, it
     * is held in the spans as well, and then reaches the obstruction over which an attachment that runs from there never comes.
     */
    @Test
    void aFallThatIsStatedAtASupportGivesTheSameClearance() {
        LifelineDesign inSpan = design(0, List.of(new Obstruction(0, 24, 1), new Obstruction(2, 3, 8)));
        LifelineDesign atSupport =
                inSpan.withFalls(List.of(inSpan.falls().get(0).at(Place.atSupport("north"))));
        List<ClearanceStretch> expected =
                ClearanceAlongLine.withDefaults().solve(assessed(inSpan)).stretches();
        List<ClearanceStretch> stretches =
                ClearanceAlongLine.withDefaults().solve(assessed(atSupport)).stretches();
        for (int i = 0; i < expected.size(); i++) {
            assertThat(stretches.get(i).requiredElevation())
                    .isEqualTo(expected.get(i).requiredElevation());
            assertThat(stretches.get(i).obstruction())
                    .as("stretch %d", i + 1)
                    .isEqualTo(expected.get(i).obstruction());
            assertThat(stretches.get(i).reasons()).isEqualTo(expected.get(i).reasons());
        }
        assertThat(stretches).anyMatch(s -> s.obstruction().orElseThrow() == 8);
    }

    /** A narrow column beside the line and beside every computed fall, where the swing does not reach along the line. */
    @Test
    void aNarrowColumnBetweenTheComputedFallsIsStruck() {
        for (double from : new double[] {1.4, 4.5}) {
            LifelineDesign design = design(Attachment.GRIPPED, 0.4, List.of(new Obstruction(from, from + 0.05, 20, 1)));
            ClearanceAlongLineResult result = ClearanceAlongLine.withDefaults()
                    .withSteps(new StationSteps(6, 0.1))
                    .solve(assessed(design));
            assertThat(result.stretches().get(0).reasons())
                    .containsExactly("a swing strikes obstruction 1 beside the line");
        }
    }

    /**
     * A column beside the line. By hand: the worker stands 0.9 m off on a lanyard of 1.8 m, so sin θ = 1/2; feet reach half the
     * length from the line to the feet, 1.8 m + deployment + 0.3 m + 1.5 m, that is 1.8 m and more, and half a breadth further.
     */
    @Test
    void aSwingStrikesAColumn() {
        assertThat(reasonsAt(0.9, new Obstruction(5, 7, 20, 2.05))).anyMatch(r -> r.contains("obstruction 1 beside"));
        assertThat(reasonsAt(0.9, new Obstruction(5, 7, 20, 4))).isEmpty();
        // No swing without an offset; within half a breadth it is below the worker, and in the way of the fall itself.
        assertThat(reasonsAt(0, new Obstruction(5, 7, 20, 2.05))).isEmpty();
        assertThat(reasonsAt(0, new Obstruction(5, 7, 20, 0.25))).contains("the clearance is not enough");
        // A low object beside the line stays below the feet.
        assertThat(reasonsAt(0.9, new Obstruction(5, 7, 1, 2.05))).isEmpty();
    }

    private static List<String> reasonsAt(double offset, Obstruction o) {
        return ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(6, 0.1))
                .solve(assessed(design(offset, List.of(o))))
                .stretches()
                .get(0)
                .reasons();
    }

    @Test
    void roundsToTheSafeSide() {
        StationSteps s = new StationSteps(1, 0.05);
        assertThat(s.up(3.01)).isEqualTo(3.05, within(1e-12));
        assertThat(s.up(3.05)).isEqualTo(3.05, within(1e-12));
        assertThat(s.down(3.09)).isEqualTo(3.05, within(1e-12));
        assertThat(s.down(3.10)).isEqualTo(3.10, within(1e-12));
        assertThatThrownBy(() -> new StationSteps(0, 2))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("step")
                .hasMessageContaining("rounding");
        assertThat(StretchFalls.vertex(1, 0, 1)).isEqualTo(0);
        // z = (x − 0.2)² at −1, 0, 1: 1.44, 0.04, 0.64; lowest 0.
        assertThat(StretchFalls.vertex(1.44, 0.04, 0.64)).isEqualTo(0, within(1e-12));
    }
}
