package org.lifeline.analysis.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;

/** What a mesh may hide, the account of energies and the summary of a motion, each from numbers of its own. */
class PeakAllowancesTest {
    private static final PeakAllowances.Force TENSION = new PeakAllowances.Force(100, 60);
    private static final PeakAllowances.Force ARREST = new PeakAllowances.Force(50, 30);
    private static final PeakAllowances.Force NORTH = new PeakAllowances.Force(80, 40);

    private static PeakAllowances allowances(double relative) {
        return new PeakAllowances(
                TENSION,
                ARREST,
                Map.of("north", NORTH),
                new PeakAllowances.Bounds(0.02, new PeakAllowances.Extensions(0.004, 0.001), relative));
    }

    @Test
    void everyAllowanceIsThatOfItsPeak() {
        PeakAllowances a = allowances(0.01);
        assertThat(a.tension()).isEqualTo(TENSION);
        assertThat(a.arrestForce()).isEqualTo(ARREST);
        assertThat(a.support("north")).isEqualTo(NORTH);
        assertThat(a.lowest()).isEqualTo(0.02);
        assertThat(a.extensions().connection()).isEqualTo(0.004);
        assertThat(a.extensions().inline()).isEqualTo(0.001);
        assertThat(a.relative()).isEqualTo(0.01);
    }

    @ParameterizedTest
    @CsvSource({"0, true", "0.01, true", "NaN, false", "Infinity, false"})
    void allowancesAreKnownWhereTheirBoundIsFinite(double relative, boolean known) {
        assertThat(allowances(relative).known()).isEqualTo(known);
    }

    @Test
    @SuppressWarnings("NullAway")
    void aSupportThatIsNoneIsRefusedByItsId() {
        assertThatThrownBy(() -> allowances(0).support("south"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id")
                .hasMessageContaining("south");
        assertThatThrownBy(() -> allowances(0).support(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("null");
        assertThatThrownBy(() -> new PeakAllowances(TENSION, ARREST, null, new PeakAllowances.Bounds(0, null, 0)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("supports");
    }

    @Test
    void allowancesKeepACopyOfTheirSupports() {
        Map<String, PeakAllowances.Force> supports = new HashMap<>(Map.of("north", NORTH));
        PeakAllowances a = new PeakAllowances(
                TENSION, ARREST, supports, new PeakAllowances.Bounds(0, new PeakAllowances.Extensions(0, 0), 0));
        supports.clear();
        assertThat(a.support("north")).isEqualTo(NORTH);
    }

    @ParameterizedTest
    @EnumSource(EnergyHistory.Part.class)
    void everyPartCountsFromItsStart(EnergyHistory.Part part) {
        double[] values = {500, 480, 530};
        EnergyHistory e = new EnergyHistory(Map.of(part, values));
        assertThat(e.of(part)).containsExactly(0, -20, 30);
        values[1] = 9;
        e.of(part)[2] = 9;
        assertThat(e.of(part)).as("copies in and out").containsExactly(0, -20, 30);
        for (EnergyHistory.Part other : EnergyHistory.Part.values()) {
            if (other != part) {
                assertThat(e.of(other)).as("what was not recorded").isEmpty();
            }
        }
    }

    @Test
    void theDriftIsTheSumOfAllParts() {
        for (long seed = 1; seed <= 20; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Map<EnergyHistory.Part, double[]> parts = new EnumMap<>(EnergyHistory.Part.class);
            double[] sum = new double[6];
            for (EnergyHistory.Part part : EnergyHistory.Part.values()) {
                double[] v = r.doubles(6, -1000, 1000).toArray();
                parts.put(part, v);
                for (int i = 0; i < 6; i++) {
                    sum[i] += v[i] - v[0];
                }
            }
            double[] drift = new EnergyHistory(parts).drift();
            assertThat(drift[0]).as("seed %d", seed).isZero();
            for (int i = 0; i < 6; i++) {
                assertThat(drift[i]).as("seed %d, %d", seed, i).isCloseTo(sum[i], within(1e-9));
            }
        }
    }

    @Test
    void anAccountThatClosesDoesNotDrift() {
        // A stone that falls: what its weight loses its motion gains.
        double[] lost = {0, -10, -40, -90};
        double[] gained = {0, 10, 40, 90};
        double[] none = {0, 0, 0, 0};
        Map<EnergyHistory.Part, double[]> parts = new EnumMap<>(EnergyHistory.Part.class);
        for (EnergyHistory.Part part : EnergyHistory.Part.values()) {
            parts.put(part, none);
        }
        parts.put(EnergyHistory.Part.WORKER_WEIGHT, lost);
        parts.put(EnergyHistory.Part.WORKER_MOTION, gained);
        assertThat(new EnergyHistory(parts).drift()).containsExactly(0, 0, 0, 0);
    }

    @Test
    void filtersHaveKeysAndWords() {
        assertThat(ForceFilter.NONE.key()).isEqualTo("none");
        assertThat(ForceFilter.LOW_PASS_100_HZ.key()).isEqualTo("low-pass-100-Hz");
        assertThat(ForceFilter.NONE.words()).isEqualTo("forces as they are");
        assertThat(ForceFilter.LOW_PASS_100_HZ.words()).contains("100 Hz");
    }

    @Test
    void aSummaryReadsItsQuality() {
        MeshRun run = new MeshRun(new MeshRun.Mesh(0.25, 49), 4000, new MeshRun.Peaks(6000, 9000, 7.5), 0.004);
        MotionPeaks peaks = new MotionPeaks(new Peak(9000, 0.7), 8500, Point.of(5, 0, 11), List.of(), List.of());
        MotionSummary s = new MotionSummary(new MotionSummary.Quality(run, allowances(0.01), 0.0005), peaks, 3.2, true);
        assertThat(s.mesh()).isEqualTo(run);
        assertThat(s.allowances().tension()).isEqualTo(TENSION);
        assertThat(s.relativeDrift()).isEqualTo(0.0005);
        assertThat(s.wholeRun().tensionPlace()).isEqualTo(Point.of(5, 0, 11));
        assertThat(s.harnessFall()).isEqualTo(3.2);
        assertThat(s.firstCatchOver()).isTrue();
    }

    @Test
    void lastingPeaksAreFoundByTheirIds() {
        WorkerPeaks w = new WorkerPeaks("A", new Peak(6000, 0.7), 5800, new Peak(8, 0.8), 0.9);
        SupportPeaks p = new SupportPeaks("north", new Peak(9000, 0.7), 8700, 0, 9000);
        MotionPeaks peaks = new MotionPeaks(new Peak(9000, 0.7), 8500, Point.of(5, 0, 11), List.of(w), List.of(p));
        assertThat(peaks.worker("A")).isEqualTo(w);
        assertThat(peaks.support("north")).isEqualTo(p);
        assertThat(peaks.filteredTension()).isEqualTo(8500);
        assertThatThrownBy(() -> peaks.worker("north"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("north");
        assertThatThrownBy(() -> peaks.support("A"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("A");
    }
}
