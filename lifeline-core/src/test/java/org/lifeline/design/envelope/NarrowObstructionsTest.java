package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * An obstruction counts however narrow it is and whatever stands beside it: a pipe beside a machine, two pipes beside each other, a
 * base plate at the foot of a post. First places of a fall are not placed nearer to each other than a thousandth of the span; of two pipes
 * 20 mm apart the second was passed over, and a margin of −1.30 m was told as 2.70 m.
 */
class NarrowObstructionsTest {
    private static final double RUN = 30;

    private static LifelineDesign design(Attachment attachment, List<Obstruction> obstructions) {
        Lifeline line = Lifeline.builder()
                .cable(Designs.cable())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .intermediateAnchor("p", Point.of(RUN, 0, 12.4), Passage.friction(0.1))
                .endAnchor("b", Point.of(2 * RUN, 0, 12.4))
                .pretension(2000)
                .build();
        return LifelineDesign.builder("narrow")
                .line(line)
                .worker(Designs.worker("A", attachment))
                .clearance(ClearanceRules.commonPractice().withObstructions(obstructions))
                .build();
    }

    /** The least margin of falls right above an obstruction: at its ends and in its middle. */
    private static double above(LifelineDesign design, Obstruction o) {
        Worker worker = design.workers().get(0);
        double middle = 0.5 * (o.from() + o.to());
        return DoubleStream.of(middle, 0.99 * o.from() + 0.01 * o.to(), 0.01 * o.from() + 0.99 * o.to())
                .map(along -> {
                    Place place = along < RUN ? Place.of(1, along) : Place.of(2, along - RUN);
                    Fall fall = Fall.builder("f").at(place).faller(worker).build();
                    return EnergyBalance.withDefaults()
                            .withSide(DeploymentForce.CLEARANCE)
                            .withClearance(design.clearance())
                            .withAttachmentLimit(AttachmentLimit.HELD)
                            .solve(design.line(), fall)
                            .clearance()
                            .margin()
                            .orElseThrow();
                })
                .min()
                .orElseThrow();
    }

    @ParameterizedTest
    @EnumSource(Attachment.class)
    void eachOfTwoThatStandSideBySideCounts(Attachment attachment) {
        SplittableRandom random = new SplittableRandom(5);
        int[] between = {0, 0};
        for (int k = 0; k < 12; k++) {
            // Where the first places are farthest apart: in the middle of a span.
            double from = RUN * (random.nextInt(2) + random.nextDouble(0.4, 0.6));
            Obstruction low = new Obstruction(from - 0.02, from - 0.01, 3);
            Obstruction high = new Obstruction(from, from + 0.01, random.nextDouble(5, 8));
            LifelineDesign design = design(attachment, random.nextBoolean() ? List.of(low, high) : List.of(high, low));
            Extremes found = Envelope.withDefaults().solve(design).extremes();
            assertThat(found.of(Quantity.CLEARANCE_MARGIN).orElseThrow().value())
                    .as("from %s", from)
                    .isLessThanOrEqualTo(above(design, high) + 1e-3);
            for (int i = 0; i < 2; i++) {
                between[i] += found.overObstruction(i).isPresent() ? 1 : 0;
            }
        }
        assertThat(between).containsExactly(12, 12);
    }

    /** At the foot of an anchor and of a post, on either side of it, nearer than the first place of a fall beside it. */
    @ParameterizedTest
    @EnumSource(Attachment.class)
    void oneBesideASupportCounts(Attachment attachment) {
        for (double from : new double[] {0.004, RUN - 0.02, RUN + 0.004, 2 * RUN - 0.02}) {
            Obstruction plate = new Obstruction(from, from + 0.012, 9);
            LifelineDesign design = design(attachment, List.of(plate));
            assertThat(Envelope.withDefaults()
                            .solve(design)
                            .extremes()
                            .of(Quantity.CLEARANCE_MARGIN)
                            .orElseThrow()
                            .value())
                    .as("from %s", from)
                    .isLessThanOrEqualTo(above(design, plate) + 1e-3);
        }
    }
}
