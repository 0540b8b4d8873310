package org.lifeline.internal.motion.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/** The straight lines of a curve that remembers, by hand: (0, 0), (0.1 m, 2 kN), (0.5 m, 6 kN), a stop of 100 kN/m. */
class HystereticCurveLinesTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    /** Slopes of 20 and 10 kN/m; it unloads by the steeper one. */
    private static HystereticCurve rising() {
        return new HystereticCurve(
                LoadingCurve.through(List.of(new Corner(0, 0), new Corner(0.1, 2000), new Corner(0.5, 6000)), 2e4, 1e5),
                1e8);
    }

    @Test
    void linesOfFirstLoadingAndOfUnloading() {
        HystereticCurve c = rising();
        assertThat(c.stopLine()).isEqualTo(2);
        assertThat(c.end()).isEqualTo(0.5);
        assertThat(c.steepest()).isEqualTo(1e5);
        assertThat(c.lineAt(-0.1)).isEqualTo(-1);
        assertThat(c.lineAt(0)).isEqualTo(-1);
        assertThat(c.lineAt(0.05)).isZero();
        assertThat(c.lineAt(0.1)).isZero();
        assertThat(c.lineAt(0.11)).isEqualTo(1);
        assertThat(c.lineAt(0.5)).isEqualTo(1);
        assertThat(c.lineAt(0.51)).isEqualTo(2);
        assertThat(c.slopeOf(-1)).isCloseTo(2e4, within(1e-9));
        assertThat(c.slopeOf(0)).isCloseTo(2e4, within(1e-9));
        assertThat(c.slopeOf(1)).isCloseTo(1e4, within(1e-9));
        assertThat(c.slopeOf(2)).isEqualTo(1e5);
        assertThat(c.forceOn(0, 0.2)).as("beyond its end").isCloseTo(4000, within(1e-9));
        assertThat(c.forceOn(1, 0.3)).isCloseTo(4000, within(1e-9));
        assertThat(c.forceOn(2, 0.52)).isCloseTo(8000, within(1e-9));
        assertThat(c.forceOn(-1, -0.01)).as("of any sign").isCloseTo(-200, within(1e-9));
    }

    @Test
    void tornOnTheSecondPieceItUnloadsFromThere() {
        HystereticCurve c = rising();
        c.tear(0.2);
        assertThat(c.permanent()).isCloseTo(0.05, within(1e-15));
        assertThat(c.lineAt(0.2)).isEqualTo(-1);
        assertThat(c.lineAt(0.21)).isEqualTo(1);
        assertThat(c.forceOn(-1, 0.1)).isCloseTo(1000, within(1e-9));
        assertThat(c.force(0.1)).isCloseTo(1000, within(1e-9));
        assertThat(c.force(0.04)).isZero();
        assertThat(c.force(0.2)).isCloseTo(3000, within(1e-9));
        c.tear(0.15);
        assertThat(c.permanent()).as("less than it was torn to").isCloseTo(0.05, within(1e-15));
    }

    /** Asking what a force would be tears nothing. */
    @Test
    void whatIsOnlyThoughtOfIsNotRemembered() {
        HystereticCurve c = rising();
        assertThat(c.forceIf(0.3)).isCloseTo(4000, within(1e-9));
        assertThat(c.forceIf(0.52)).isCloseTo(8000, within(1e-9));
        assertThat(c.forceIf(-0.1)).isZero();
        assertThat(c.permanent()).isZero();
        assertThat(c.force(0.05)).isCloseTo(1000, within(1e-9));
        c.tear(0.3);
        assertThat(c.forceIf(0.2)).isCloseTo(2000, within(1e-9));
        assertThat(c.forceIf(0.05)).isZero();
        assertThat(c.forceIf(0.4)).isCloseTo(5000, within(1e-9));
    }

    @Test
    void theExtensionThatHoldsAForce() {
        HystereticCurve c = rising();
        for (double force : new double[] {0, 500, 2000, 3500, 6000, 8000}) {
            assertThat(c.forceIf(c.extensionFor(force))).as("%s N", force).isCloseTo(force, within(1e-8));
        }
        assertThat(c.extensionFor(1000)).isCloseTo(0.05, within(1e-15));
        assertThat(c.extensionFor(4000)).isCloseTo(0.3, within(1e-15));
        assertThat(c.extensionFor(7000)).isCloseTo(0.51, within(1e-15));
        c.tear(0.2);
        assertThat(c.extensionFor(0)).as("what is left without force").isCloseTo(0.05, within(1e-15));
        assertThat(c.extensionFor(1000)).as("on the line of unloading").isCloseTo(0.1, within(1e-15));
        assertThat(c.extensionFor(4000)).isCloseTo(0.3, within(1e-15));
        assertThat(c.extensionFor(7000)).isCloseTo(0.51, within(1e-15));
    }

    /** Beyond the stop nothing more is torn, and what is given back there is the spring of the stop. */
    @Test
    void tornToItsStop() {
        HystereticCurve c = rising();
        assertThat(c.force(0.53)).isCloseTo(9000, within(1e-9));
        assertThat(c.permanent()).isCloseTo(0.5 - 6000 / 2e4, within(1e-15));
        assertThat(c.lineAt(0.53)).isEqualTo(2);
        assertThat(c.lineAt(0.5)).isEqualTo(-1);
        assertThat(c.force(0.51)).isCloseTo(7000, within(1e-9));
        assertThat(c.force(0.4)).isCloseTo(4000, within(1e-9));
    }

    /** A rigid start with a corner right behind it: both take the room that 100 MN/m need. */
    @Test
    void aCornerRightBehindARigidStartMovesOutward() {
        HystereticCurve c = new HystereticCurve(
                LoadingCurve.through(
                        List.of(new Corner(0, 4000), new Corner(1e-5, 5000), new Corner(0.5, 5000)), INFINITE, 2e5),
                1e8);
        assertThat(c.forceIf(4e-5)).isCloseTo(4000, within(1e-6));
        assertThat(c.forceIf(5e-5)).isCloseTo(5000, within(1e-6));
        assertThat(c.forceIf(2e-5)).isCloseTo(2000, within(1e-6));
        assertThat(c.end()).as("the plateau keeps its length").isCloseTo(0.5 + 4e-5, within(1e-12));
        assertThat(c.slopeOf(-1)).isCloseTo(1e8, within(1.0));
    }

    /** A rigid start has half the way to the next corner, if it does not need less. */
    @Test
    void aRigidStartTakesAtMostHalfTheFirstPiece() {
        HystereticCurve c = new HystereticCurve(
                LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(0.1, 5000)), INFINITE, 2e5), 1e5);
        // 4 kN at 100 kN/m are 40 mm, less than 50 mm: the start as it is.
        assertThat(c.forceIf(0.02)).isCloseTo(2000, within(1e-9));
        assertThat(c.forceIf(0.04)).isCloseTo(4000, within(1e-9));
        assertThat(c.forceIf(0.1)).isCloseTo(5000, within(1e-9));
        assertThat(c.steepest()).isEqualTo(1e5);
    }

    @Test
    void theStiffestPartOfACurve() {
        List<Corner> corners = List.of(new Corner(0, 0), new Corner(0.02, 10_000), new Corner(0.7, 10_000));
        assertThat(HystereticCurve.stiffest(LoadingCurve.through(corners, 5e5, 3e5)))
                .isCloseTo(5e5, within(1e-6));
        assertThat(HystereticCurve.stiffest(LoadingCurve.through(corners, 5e5, 8e5)))
                .isEqualTo(8e5);
        List<Corner> plateau = List.of(new Corner(0, 4000), new Corner(0.5, 4000));
        assertThat(HystereticCurve.stiffest(LoadingCurve.through(plateau, INFINITE, INFINITE)))
                .as("rigid and flat")
                .isZero();
        assertThat(HystereticCurve.stiffest(LoadingCurve.through(plateau, 6e5, INFINITE)))
                .isCloseTo(6e5, within(1e-6));
    }

    /** Without a steep part of its own it unloads as its stop does. */
    @Test
    void aSpringUnloadsByItself() {
        HystereticCurve c = new HystereticCurve(LoadingCurve.spring(5e4), 1e8);
        assertThat(c.slopeOf(-1)).isEqualTo(5e4);
        assertThat(c.steepest()).isEqualTo(5e4);
        assertThat(c.stopLine()).isZero();
        assertThat(c.extensionFor(1000)).isCloseTo(0.02, within(1e-15));
        assertThat(new HystereticCurve(LoadingCurve.spring(5e4), 1e4).steepest())
                .as("limited")
                .isEqualTo(1e4);
    }
}
