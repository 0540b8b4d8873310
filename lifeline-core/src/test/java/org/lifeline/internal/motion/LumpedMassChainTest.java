package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The chain of lumped masses: what its quantities mean, and that inserting and removing nodes keeps what must be kept. */
class LumpedMassChainTest {
    private static final double SPAN = 10;
    private static final double MASS = 0.5;
    private static final double TENSION = 2000;
    private static final double EA = 4e6;
    private static final int SEGMENTS = 20;

    private static LumpedMassChain chain() {
        MotionSystem s = Strings.string(new double[] {TENSION, EA}, new double[] {SPAN, MASS}, Strings.NONE, SEGMENTS);
        ChainStep.geometry(s.chain);
        ChainStep.tensions(s.chain);
        return s.chain;
    }

    private static double length(LumpedMassChain c) {
        double sum = 0;
        for (int j = 0; j < c.segments(); j++) {
            sum += c.length[j];
        }
        return sum;
    }

    private static double mass(LumpedMassChain c) {
        double sum = 0;
        for (int i = 0; i < c.nodes; i++) {
            sum += c.mass(i);
        }
        return sum;
    }

    @Test
    void massesAndLengthsAddUp() {
        LumpedMassChain c = chain();
        assertThat(c.segments()).isEqualTo(SEGMENTS);
        assertThat(length(c)).isCloseTo(SPAN / (1 + TENSION / EA), within(1e-9));
        assertThat(mass(c)).isCloseTo(MASS * SPAN, within(1e-9));
        assertThat(c.mass(0)).isCloseTo(0.5 * c.mass(1), within(1e-12));
    }

    @Test
    void tensionRatioAndPullBelongTogether() {
        LumpedMassChain c = chain();
        for (int j = 0; j < c.segments(); j++) {
            double strain = TENSION / EA;
            assertThat(c.elastic[j]).isCloseTo(TENSION, within(1e-3));
            assertThat(c.ratio(j)).isCloseTo(1 + strain, within(1e-9));
            // G = r T − U, U = T²/(2 EA): for small strains the tension.
            assertThat(c.pull(j, c.elastic[j]))
                    .isCloseTo((1 + strain) * TENSION - TENSION * TENSION / (2 * EA), within(1e-2));
            assertThat(c.strainEnergy(j)).isCloseTo(c.length[j] * TENSION * TENSION / (2 * EA), within(1e-5));
        }
        for (int j = 0; j < c.segments() - 1; j++) {
            assertThat(c.cosine(j)).isCloseTo(1, within(1e-9));
        }
    }

    @Test
    void removingANodeKeepsLengthAndWhatIsBehind() {
        LumpedMassChain c = chain();
        double before = length(c);
        double x = c.x[8];
        c.remove(7);
        assertThat(c.segments()).isEqualTo(SEGMENTS - 1);
        assertThat(c.x[7]).isEqualTo(x);
        assertThat(length(c)).isCloseTo(before, within(1e-12));
        assertThat(c.perLength[6] * c.length[6]).isCloseTo(1, within(1e-12));
        assertThat(c.length[6]).isCloseTo(c.length[4] + c.length[5], within(1e-9));
    }

    @Test
    void insertingANodeKeepsLengthAndStretch() {
        LumpedMassChain c = chain();
        double before = length(c);
        double x3 = c.x[3];
        double x4 = c.x[4];
        c.insert(3, 0.3 * c.length[3]);
        assertThat(c.segments()).isEqualTo(SEGMENTS + 1);
        assertThat(length(c)).isCloseTo(before, within(1e-12));
        assertThat(c.x[4]).isCloseTo(x3 + 0.3 * (x4 - x3), within(1e-12));
        assertThat(c.x[5]).isEqualTo(x4);
        ChainStep.geometry(c);
        assertThat(c.elastic[3]).isCloseTo(TENSION, within(1e-2));
        assertThat(c.elastic[4]).isCloseTo(TENSION, within(1e-2));
    }

    /** The link of an in-line absorber beside its anchor stays whole when its segment is split. */
    @Test
    void aLinkStaysWholeWhenItsSegmentIsSplit() {
        LumpedMassChain c = chain();
        c.firstLink = 0.1;
        double cable = c.x[1] - c.x[0] - c.firstLink;
        c.insert(0, 0.5 * c.length[0]);
        assertThat(c.x[1] - c.x[0]).isCloseTo(0.1 + 0.5 * cable, within(1e-9));
        assertThat(c.x[2] - c.x[1]).isCloseTo(0.5 * cable, within(1e-9));
        assertThat(c.link(0)).isEqualTo(0.1);
        assertThat(c.link(1)).isZero();
    }

    /** A node whose mass changes keeps its momentum. */
    @Test
    void reweighingKeepsMomentum() {
        LumpedMassChain c = chain();
        c.vx[5] = 3;
        c.vz[5] = -2;
        double m = c.mass(5);
        c.setLength(5, 3 * c.length[5]);
        c.reweigh(5);
        assertThat(c.mass(5)).isCloseTo(2 * m, within(1e-12));
        assertThat(c.mass(5) * c.vx[5]).isCloseTo(3 * m, within(1e-12));
        assertThat(c.mass(5) * c.vz[5]).isCloseTo(-2 * m, within(1e-12));
        assertThat(c.speedSquared(5)).isCloseTo(0.25 * 13, within(1e-12));
    }
}
