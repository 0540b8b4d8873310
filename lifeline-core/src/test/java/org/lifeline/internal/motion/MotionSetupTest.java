package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;

/** Who is attached where. */
class MotionSetupTest {
    private final LineModel model = MotionCases.two(Passage.friction(0.1));

    @Test
    void numbersFollowTheOrderOfAttaching() {
        MotionSetup setup = new MotionSetup(model, 0);
        Point here = model.pointAtStation(0, 3);
        assertThat(setup.attach(0, here, true, List.of(MotionCases.person(0, 1, true), MotionCases.person(0, 1, true))))
                .isZero();
        assertThat(setup.attachToSupport(2, List.of(MotionCases.person(0, 1, false))))
                .isEqualTo(2);
        assertThat(setup.attach(1, model.pointAtStation(1, 5), true, List.of(MotionCases.person(1, 1, false))))
                .isEqualTo(3);
        assertThat(setup.people()).isEqualTo(4);
        assertThat(setup.spots).hasSize(3);
    }

    /** Two attachments within a centimetre are one joint, farther apart they are two. */
    @Test
    void attachmentsTogetherAreOneJoint() {
        MotionSetup setup = new MotionSetup(model, 0);
        setup.attach(0, model.pointAtStation(0, 3), true, List.of(MotionCases.person(0, 1, true)));
        setup.attach(0, model.pointAtStation(0, 3.009), true, List.of(MotionCases.person(0, 1, true)));
        assertThat(setup.spots).hasSize(1);
        setup.attach(0, model.pointAtStation(0, 3.02), true, List.of(MotionCases.person(0, 1, true)));
        setup.attach(1, model.pointAtStation(1, 3), true, List.of(MotionCases.person(0, 1, true)));
        assertThat(setup.spots).hasSize(3);
    }

    /** The unstretched length from the start of the span is found from the place: half of it at the middle. */
    @Test
    void thePlaceOfAnAttachmentIsAnUnstretchedLength() {
        MotionSetup setup = new MotionSetup(model, 0);
        setup.attach(0, model.pointAtStation(0, 0.5 * MotionCases.SPAN), true, List.of(MotionCases.person(0, 1, true)));
        double whole = model.pieces(0).stream().mapToDouble(p -> p.length()).sum();
        assertThat(setup.spots.get(0).distance).isCloseTo(0.5 * whole, within(1e-6));
    }

    @Test
    void whoHangsIsNoFall() {
        MotionSetup setup = new MotionSetup(model, 0);
        MotionSetup.Person hanging =
                new MotionSetup.Person(100, MotionCases.person(0, 0, true).curve(), 1.5, MotionSetup.Timing.hanging());
        setup.attach(0, model.pointAtStation(0, 3), true, List.of(hanging));
        assertThat(setup.fallsAt(0)).isFalse();
        assertThat(setup.fallsAt(1)).isFalse();
        setup.attachToSupport(1, List.of(MotionCases.person(0.5, 1, false)));
        assertThat(setup.fallsAt(0)).isTrue();
        assertThat(setup.fallsAt(1)).isTrue();
    }

    /** Beyond one who hangs the cable begins anew: unstretched lengths count on from the start of the span. */
    @Test
    void placesBeyondOneWhoHangsCountFromTheStartOfTheSpan() {
        LineModel.Load hangs = model.hook(0, 6, true);
        model.hang(hangs, 800);
        MotionSetup setup = new MotionSetup(model, 0);
        List<MotionSetup.Person> who = List.of(MotionCases.person(0, 1, true));
        double first = model.pieces(0).get(0).length();
        double second = model.pieces(0).get(1).length();
        setup.attach(0, model.position(hangs), true, who);
        setup.attach(0, model.pieces(0).get(1).at(0.75 * second), true, who);
        setup.attach(0, model.pieces(0).get(0).at(0.25 * first), true, who);
        setup.attach(0, model.support(1), true, who);
        assertThat(setup.spots.get(0).distance).isCloseTo(first, within(1e-9));
        assertThat(setup.spots.get(1).distance).isCloseTo(first + 0.75 * second, within(1e-9));
        assertThat(setup.spots.get(2).distance).isCloseTo(0.25 * first, within(1e-9));
        assertThat(setup.spots.get(3).distance).isCloseTo(first + second, within(1e-9));
    }

    /** One at an end anchor touches one span, one at a post two, one on the cable that of the cable. */
    @Test
    void whichSpansAFallTouches() {
        int[] supports = {0, 1, 2};
        boolean[][] touched = {{true, false}, {true, true}, {false, true}};
        for (int k = 0; k < supports.length; k++) {
            MotionSetup setup = new MotionSetup(model, 0);
            assertThat(setup.shortestSpan()).as("nobody falls: a metre").isEqualTo(1);
            setup.attachToSupport(supports[k], List.of(MotionCases.person(0, 1, true)));
            assertThat(new boolean[] {setup.fallsAt(0), setup.fallsAt(1)}).containsExactly(touched[k]);
            assertThat(setup.shortestSpan()).isCloseTo(MotionCases.SPAN, within(1e-12));
        }
        LineModel uneven = new LineModel(Lifeline.builder()
                .cable(model.line().cable())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(4, 3, 10), Passage.free())
                .endAnchor("b", Point.of(4, 7, 10))
                .pretension(1500)
                .build());
        for (int span = 0; span < 2; span++) {
            MotionSetup setup = new MotionSetup(uneven, 0);
            setup.attach(span, uneven.pointAtStation(span, 2), true, List.of(MotionCases.person(0, 1, true)));
            assertThat(setup.shortestSpan()).isCloseTo(span == 0 ? 5 : 4, within(1e-12));
            setup.attach(1 - span, uneven.pointAtStation(1 - span, 2), true, List.of(MotionCases.person(0, 1, true)));
            assertThat(setup.shortestSpan()).isCloseTo(4, within(1e-12));
        }
    }
}
