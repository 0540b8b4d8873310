package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lifeline.base.Units.kN;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** What a result does not have is refused with the range of what it has. */
class BorderTest {
    private static final ArrestResult RESULT = EnergyBalance.withDefaults().solve(line(), fall());

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3.2e6).build())
                .endAnchor("left", Point.of(0, 0, 8))
                .endAnchor("right", Point.of(12, 0, 8))
                .installed(Installed.pretension(1200))
                .build();
    }

    private static Fall fall() {
        Connection lanyard = Connection.lanyard(
                1.8,
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(kN(3))
                        .maximumForce(kN(6))
                        .maximumExtension(1.2)
                        .build());
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(6.5)
                .connection(lanyard)
                .build();
        return Fall.builder("middle").at(Place.of(1, 6)).faller(worker).build();
    }

    private static void refused(ThrowingCallable call, String message) {
        assertThatThrownBy(call).isInstanceOf(InvalidInputException.class).hasMessageContaining(message);
    }

    @Test
    void spansAndSupportsThatAreNotThere() {
        for (int number : new int[] {-1, 0, 2, 99, Integer.MIN_VALUE, Integer.MAX_VALUE}) {
            refused(() -> RESULT.peak().span(number), "span: " + number + ": must be a span from 1 to 1");
        }
        for (int number : new int[] {-1, 2, 99, Integer.MAX_VALUE}) {
            refused(() -> RESULT.slip(number), "support: " + number + ": must be the number of a support from 0 to 1");
        }
        for (String id : List.of("nope", "", "LEFT")) {
            refused(() -> RESULT.anchorLoad(id), "must be the id of a support of the line");
            refused(() -> RESULT.peak().support(id), "must be the id of a support of the line");
        }
        refused(() -> RESULT.peak().shape(0), "intervalsPerPiece: 0: must be at least 1");
        assertThat(RESULT.peak().span(1).number()).isEqualTo(1);
        assertThat(RESULT.anchorLoad("left")).isPositive();
    }
}
