package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** The rules of thumb of the tutorials over a range, each with its exceptions, on the line of the span study. */
class RulesOfThumbTest {
    private static final Worker WORKER = Worker.builder("worker")
            .mass(100)
            .walkingLevel(10)
            .connection(Connection.lanyard(
                    1.5,
                    Connection.PersonalAbsorber.builder()
                            .clearanceForce(3200)
                            .maximumForce(6000)
                            .maximumExtension(1.2)
                            .initialStiffness(1e5)
                            .build()))
            .build();

    private static Lifeline line(double span, Installed installed) {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.41).axialStiffness(3.3e6).build())
                .endAnchor("left", Point.of(0, 0, 11.5))
                .endAnchor("right", Point.of(span, 0, 11.5))
                .installed(installed)
                .build();
    }

    private static Fall middle(double span) {
        return Fall.builder("middle").at(Place.of(1, span / 2)).faller(WORKER).build();
    }

    private static double balance(double span, Installed installed) {
        return EnergyBalance.withDefaults()
                .solve(line(span, installed), middle(span))
                .endAnchorLoad();
    }

    private static double inTime(double span) {
        return TransientArrest.withDefaults()
                .withEndAfterFirstCatch(0)
                .withRefinements(2)
                .solve(line(span, Installed.initialSag(1, 0.01 * span)), middle(span))
                .arrest()
                .endAnchorLoad();
    }

    /** By energy balance the load changes by 4 % from 6 to 40 m; in time it falls by more than a tenth already at 32 m. */
    @Test
    void theSpanChangesTheAnchorLoadLittleByEnergyBalanceAndMuchInTime() {
        double shortest = balance(6, Installed.initialSag(1, 0.06));
        for (double span : new double[] {10, 16, 24, 32, 40}) {
            assertThat(balance(span, Installed.initialSag(1, 0.01 * span)) / shortest)
                    .as("span %s m", span)
                    .isBetween(1.0, 1.04);
        }
        double fast = inTime(6);
        assertThat(fast / shortest).isBetween(1.2, 1.3);
        assertThat(inTime(32) / fast).isBetween(0.84, 0.9);
    }

    /** On a short span and on a tight long one; where a long line hangs slack it grows by a fifth. */
    @Test
    void pretensionChangesTheLoadLittleExceptWhereALongLineHangsSlack() {
        assertThat(balance(8, Installed.pretension(2000)) / balance(8, Installed.pretension(500)))
                .isBetween(1.0, 1.04);
        assertThat(balance(40, Installed.pretension(4000)) / balance(40, Installed.pretension(2000)))
                .isEqualTo(1, within(0.01));
        assertThat(balance(40, Installed.pretension(2000)) / balance(40, Installed.pretension(500)))
                .isBetween(1.18, 1.23);
    }
}
