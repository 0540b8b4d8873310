package org.lifeline.model.absorber;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The force on the piece of a rigid stop, at the very place where the stop begins, was not a number (∞ · 0). */
class ForceAtARigidStopTest {
    @Test
    void isThatOfTheLastCorner() {
        LoadingCurve c = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 4000), new LoadingCurve.Corner(1, 5000)),
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
        assertThat(c.forceOnPiece(c.piece(1), 1)).isEqualTo(5000);
        assertThat(c.forceOnPiece(1, 1.01)).isInfinite();
    }
}
