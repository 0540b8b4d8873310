package org.lifeline.analysis.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;

/** Peaks and their allowances by hand. */
class MotionPeaksTest {
    private static WorkerPeaks worker(String id) {
        return new WorkerPeaks(id, new Peak(5000, 0.5), 4800, new Peak(6.5, 0.7), 1.1);
    }

    private static SupportPeaks support(String id) {
        return new SupportPeaks(id, new Peak(12000, 0.6), 11500, 0, 11800);
    }

    @Test
    void peaksAreFoundByTheirIds() {
        List<WorkerPeaks> workers = new ArrayList<>(List.of(worker("a"), worker("b")));
        List<SupportPeaks> supports = new ArrayList<>(List.of(support("north"), support("south")));
        MotionPeaks peaks = new MotionPeaks(new Peak(12500, 0.61), 12100, Point.of(1, 2, 3), workers, supports);
        workers.clear();
        supports.clear();
        assertThat(peaks.tension()).isEqualTo(new Peak(12500, 0.61));
        assertThat(peaks.filteredTension()).isEqualTo(12100);
        assertThat(peaks.tensionPlace()).isEqualTo(Point.of(1, 2, 3));
        assertThat(peaks.workers()).extracting(WorkerPeaks::id).containsExactly("a", "b");
        assertThat(peaks.supports()).extracting(SupportPeaks::id).containsExactly("north", "south");
        assertThat(peaks.worker("b")).isEqualTo(worker("b"));
        assertThat(peaks.support("south")).isEqualTo(support("south"));
        assertThatThrownBy(() -> peaks.worker("c"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id: c: must be the id of a worker");
        assertThatThrownBy(() -> peaks.support("west"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id: west: must be the id of a support");
    }

    @Test
    void allowancesAreKeptApart() {
        Map<String, PeakAllowances.Force> supports = new LinkedHashMap<>();
        supports.put("north", new PeakAllowances.Force(3, 4));
        PeakAllowances allowances = new PeakAllowances(
                new PeakAllowances.Force(1, 2),
                new PeakAllowances.Force(5, 6),
                supports,
                new PeakAllowances.Bounds(0.01, new PeakAllowances.Extensions(0.003, 0.004), 0.02));
        supports.clear();
        assertThat(allowances.tension()).isEqualTo(new PeakAllowances.Force(1, 2));
        assertThat(allowances.arrestForce()).isEqualTo(new PeakAllowances.Force(5, 6));
        assertThat(allowances.support("north")).isEqualTo(new PeakAllowances.Force(3, 4));
        assertThat(allowances.lowest()).isEqualTo(0.01);
        assertThat(allowances.relative()).isEqualTo(0.02);
        assertThatThrownBy(() -> allowances.support("west"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id: west: must be the id of a support");
    }
}
