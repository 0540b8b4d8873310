package org.lifeline.report.handover;

import java.util.List;
import java.util.Optional;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.clearance.StationSteps;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.handover.Handover;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.design.installation.ConstructionalStretch;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.structure.StatedFactor;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Post;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;

/** Parts that are handed over, computed once for the tests of their sections. */
final class HandedOver {
    static final Worker WIDE = Designs.worker("A", Attachment.GRIPPED);

    /** Average and maximum closer together than they were found to be. */
    static final Worker NARROW = Designs.narrow("B").withMass(80);

    private HandedOver() {}

    /** Everything that can be drawn up, on two spans with an obstruction that is too high below the second. */
    static final class Full {
        static final LifelineDesign DESIGN = LifelineDesign.builder("walkway")
                .line(postLine())
                .temperature(-20)
                .temperature(40)
                .worker(WIDE)
                .worker(NARROW)
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(0, 8, 2), new Obstruction(18, 24, 8.5))))
                .fall(Fall.builder("f").at(Place.of(1, 4)).faller(WIDE).build())
                .build();

        static final HandoverResult RESULT = Handover.of(request())
                .solve(Assessment.withDefaults()
                        .withCriteria(List.of(
                                Criterion.stated(
                                        "anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 12.3e3, "brief 1"),
                                Criterion.stated(
                                        "arrest force", CheckedQuantity.of(Quantity.ARREST_FORCE), 6.5e3, "brief 2")))
                        .withoutMotion()
                        .solve(DESIGN));

        private Full() {}

        private static Lifeline postLine() {
            Lifeline.Builder b =
                    Lifeline.builder().cable(Designs.line(1, Passage.free()).cable());
            b.support(Support.end("north", Point.of(0, 0, 12.4)).withCapacity(45e3));
            b.support(Support.intermediate("post <1>", Point.of(12, 0, 12.4), Passage.free())
                    .withPost(Post.ofHeight(1.5)
                            .elasticModulus(210e9)
                            .secondMomentX(8e-6)
                            .secondMomentY(8e-6)
                            .momentOfResistanceX(20e3)
                            .build()));
            b.support(Support.end("south", Point.of(24, 0, 12.4)));
            return b.pretension(1500).build();
        }

        private static HandoverRequest request() {
            return HandoverRequest.nothing()
                    .withStructure(SupportLoads.withDefaults()
                            .withAngle(0)
                            .withFactors(List.of(new StatedFactor("ultimate", 1.5, "brief 3"))))
                    .withClearance(ClearanceAlongLine.withDefaults().withSteps(new StationSteps(3, 0.05)))
                    .withInstallation(InstallationPlan.of(new InstallationRequest(
                                    Interval.of(0, 30),
                                    100,
                                    Interval.of(0.9, 1.1),
                                    Optional.of(ConstructionalStretch.STEEL_CORE)))
                            .withAnalysis(DesignAnalysis.withDefaults()))
                    .withNumberOfWorkers();
        }
    }

    /** One span, one worker, one temperature: quickly followed in time. */
    static final class Single {
        static final LifelineDesign DESIGN = LifelineDesign.builder("single")
                .line(Lifeline.builder()
                        .cable(org.lifeline.model.cable.Cable.builder()
                                .massPerLength(0.41)
                                .axialStiffness(3.3e6)
                                .build())
                        .endAnchor("east", Point.of(0, 0, 12.4))
                        .endAnchor("west", Point.of(11, 0, 12.4))
                        .pretension(1500)
                        .build())
                .temperature(15)
                .worker(WIDE)
                .fall(Fall.builder("f").at(Place.of(1, 5.5)).faller(WIDE).build())
                .build();

        private Single() {}
    }

    /** Nothing but what the data sheet says by itself; connections of every other kind. */
    static final class Bare {
        static final LifelineDesign DESIGN = LifelineDesign.builder("bare")
                .line(Lifeline.builder()
                        .cable(org.lifeline.model.cable.Cable.builder()
                                .massPerLength(0.4)
                                .axialStiffness(3e6)
                                .build())
                        .endAnchor("a", Point.of(0, 0, 12.4))
                        .endAnchor("<b>", Point.of(9, 0, 12.4))
                        .pretension(1500)
                        .build())
                .temperature(15)
                .worker(WIDE.toBuilder("plain")
                        .mass(70)
                        .connection(Connection.plainLanyard(1.5, LoadingCurve.spring(60_000)))
                        .build())
                .worker(WIDE.toBuilder("block")
                        .mass(110)
                        .connection(Connection.selfRetracting(
                                0.6,
                                Connection.PersonalAbsorber.builder()
                                        .clearanceForce(2500)
                                        .maximumForce(4500)
                                        .maximumExtension(1)
                                        .build()))
                        .build())
                .worker(WIDE.toBuilder("curve")
                        .connection(Connection.givenCurve(
                                1.6,
                                LoadingCurve.through(
                                        List.of(
                                                new LoadingCurve.Corner(0, 0),
                                                new LoadingCurve.Corner(0.05, 3000),
                                                new LoadingCurve.Corner(1.3, 5500)),
                                        Double.POSITIVE_INFINITY,
                                        250_000)))
                        .build())
                .build();

        static final HandoverResult RESULT = Handover.of(
                        HandoverRequest.nothing().withNumberOfWorkers())
                .solve(Assessment.withDefaults()
                        .withCriteria(List.of())
                        .withoutMotion()
                        .solve(DESIGN));

        private Bare() {}
    }
}
