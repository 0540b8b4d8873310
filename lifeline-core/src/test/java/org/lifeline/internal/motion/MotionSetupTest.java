package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
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
}
