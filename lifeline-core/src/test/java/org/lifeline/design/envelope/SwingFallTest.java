package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

class SwingFallTest {
    private static final Lifeline LINE = Designs.line(1, Passage.free());

    private static ArrestResult arrest(Worker worker, double station) {
        return EnergyBalance.withDefaults()
                .solve(
                        LINE,
                        Fall.builder("f")
                                .at(Place.of(1, station))
                                .faller(worker)
                                .build());
    }

    private static Worker off(double offset, Attachment attachment) {
        return Designs.worker("A", attachment).toBuilder("A").offset(offset).build();
    }

    @Test
    void aWorkerBelowTheLineDoesNotSwing() {
        SwingFall s = SwingFall.of(arrest(off(0, Attachment.GRIPPED), 6));
        // Mid-span by symmetry the attachment goes straight down.
        assertThat(s.displacement()).isEqualTo(0, within(1e-6));
        assertThat(s.angle()).isEqualTo(0, within(1e-6));
        assertThat(s.drop()).isEqualTo(0, within(1e-9));
    }

    /** Geometry of a pendulum of 1.8 m whose bob is 0.9 m off: sin θ = 1/2, drop ℓ(1 − cos 30°). */
    @Test
    void aWorkerOffTheLineSwingsLikeAPendulum() {
        SwingFall s = SwingFall.of(arrest(off(0.9, Attachment.GRIPPED), 6));
        assertThat(s.displacement()).isEqualTo(0.9, within(1e-6));
        assertThat(Math.toDegrees(s.angle())).isEqualTo(30, within(1e-4));
        assertThat(s.drop()).isEqualTo(1.8 * (1 - Math.cos(Math.PI / 6)), within(1e-6));
        assertThat(s.speed()).isEqualTo(Math.sqrt(2 * 9.80665 * s.drop()), within(1e-12));
        assertThat(s.length()).isEqualTo(1.8);
        assertThat(s.worker().id()).isEqualTo("A");
    }

    /** A free-running attachment comes to rest at mid-span (symmetry), and the worker stood 5 m from there. */
    @Test
    void anAttachmentThatRunsAwayMakesTheWorkerSwing() {
        SwingFall s = SwingFall.of(arrest(off(0.3, Attachment.FREE_RUNNING), 1));
        assertThat(s.displacement()).isEqualTo(Math.hypot(5, 0.3), within(1e-3));
        assertThat(s.angle()).as("farther than the lanyard is long").isEqualTo(Math.PI / 2);
        assertThat(s.drop()).isEqualTo(1.8);
    }
}
