package org.lifeline.analysis.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.InvalidInputException;

/** Histories by hand: each column comes out where it belongs, and nothing that is handed in or out can change it. */
class MotionHistoryTest {
    private static final Map<WorkerHistory.Quantity, Function<WorkerHistory, double[]>> OF_WORKER = Map.of(
            WorkerHistory.Quantity.FORCE, WorkerHistory::force,
            WorkerHistory.Quantity.EXTENSION, WorkerHistory::extension,
            WorkerHistory.Quantity.X, WorkerHistory::x,
            WorkerHistory.Quantity.Y, WorkerHistory::y,
            WorkerHistory.Quantity.Z, WorkerHistory::z,
            WorkerHistory.Quantity.LINE_X, WorkerHistory::lineX,
            WorkerHistory.Quantity.LINE_Y, WorkerHistory::lineY,
            WorkerHistory.Quantity.LINE_Z, WorkerHistory::lineZ);

    private static final Map<SupportHistory.Quantity, Function<SupportHistory, double[]>> OF_SUPPORT = Map.of(
            SupportHistory.Quantity.TENSION_BEFORE, SupportHistory::tensionBefore,
            SupportHistory.Quantity.TENSION_BEHIND, SupportHistory::tensionBehind,
            SupportHistory.Quantity.SLIP, SupportHistory::slip,
            SupportHistory.Quantity.FORCE_X, s -> s.forceAlong(0),
            SupportHistory.Quantity.FORCE_Y, s -> s.forceAlong(1),
            SupportHistory.Quantity.FORCE_Z, s -> s.forceAlong(2),
            SupportHistory.Quantity.DISPLACEMENT_X, s -> s.displacement(0),
            SupportHistory.Quantity.DISPLACEMENT_Y, s -> s.displacement(1),
            SupportHistory.Quantity.DISPLACEMENT_Z, s -> s.displacement(2),
            SupportHistory.Quantity.INLINE_EXTENSION, SupportHistory::inlineExtension);

    private static <Q extends Enum<Q>> Map<Q, double[]> columns(Class<Q> type) {
        Map<Q, double[]> map = new EnumMap<>(type);
        for (Q each : type.getEnumConstants()) {
            map.put(each, new double[] {number(each), 10 + number(each)});
        }
        return map;
    }

    /** A number of its own for each constant. */
    private static int number(Enum<?> constant) {
        return List.of(constant.getDeclaringClass().getEnumConstants()).indexOf(constant);
    }

    private static WorkerHistory worker(String id) {
        return new WorkerHistory(id, columns(WorkerHistory.Quantity.class));
    }

    private static SupportHistory support(String id) {
        return new SupportHistory(id, columns(SupportHistory.Quantity.class));
    }

    @ParameterizedTest
    @EnumSource(WorkerHistory.Quantity.class)
    void everyColumnOfAWorker(WorkerHistory.Quantity quantity) {
        Map<WorkerHistory.Quantity, double[]> columns = columns(WorkerHistory.Quantity.class);
        WorkerHistory history = new WorkerHistory("w", columns);
        double[] expected = {number(quantity), 10 + number(quantity)};
        Function<WorkerHistory, double[]> read = OF_WORKER.getOrDefault(quantity, w -> new double[0]);
        assertThat(read.apply(history)).isEqualTo(expected);
        columns.getOrDefault(quantity, new double[1])[0] = 99;
        read.apply(history)[1] = 99;
        assertThat(read.apply(history)).isEqualTo(expected);
        assertThat(read.apply(new WorkerHistory("w", Map.of()))).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(SupportHistory.Quantity.class)
    void everyColumnOfASupport(SupportHistory.Quantity quantity) {
        Map<SupportHistory.Quantity, double[]> columns = columns(SupportHistory.Quantity.class);
        SupportHistory history = new SupportHistory("s", columns);
        double[] expected = {number(quantity), 10 + number(quantity)};
        Function<SupportHistory, double[]> read = OF_SUPPORT.getOrDefault(quantity, s -> new double[0]);
        assertThat(read.apply(history)).isEqualTo(expected);
        columns.getOrDefault(quantity, new double[1])[0] = 99;
        read.apply(history)[1] = 99;
        assertThat(read.apply(history)).isEqualTo(expected);
    }

    /** 2 ² + 3² + 6² = 7², 1² + 4² + 8² = 9². */
    @Test
    void theForceOnASupportIsTheLengthOfItsComponents() {
        SupportHistory history = new SupportHistory(
                "s",
                Map.of(
                        SupportHistory.Quantity.FORCE_X, new double[] {2, -1},
                        SupportHistory.Quantity.FORCE_Y, new double[] {-3, 4},
                        SupportHistory.Quantity.FORCE_Z, new double[] {6, 8}));
        assertThat(history.force()).containsExactly(new double[] {7, 9}, within(1e-12));
        assertThat(history.forceAlong(0)).containsExactly(2, -1);
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 3, Integer.MAX_VALUE})
    void anAxisThatIsNoneIsRefused(int axis) {
        SupportHistory history = support("s");
        assertThatThrownBy(() -> history.forceAlong(axis))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("axis: " + axis);
        assertThatThrownBy(() -> history.displacement(axis))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("must be a number from 0 to 2");
    }

    @Test
    void workersAndSupportsAreFoundByTheirIds() {
        List<WorkerHistory> workers = new ArrayList<>(List.of(worker("a"), worker("b")));
        List<SupportHistory> supports = new ArrayList<>(List.of(support("north"), support("south")));
        double[] times = {0, 0.1};
        MotionHistory history = new MotionHistory(times, workers, supports, new EnergyHistory(Map.of()));
        times[0] = 5;
        history.times()[1] = 5;
        workers.clear();
        supports.clear();
        assertThat(history.times()).containsExactly(0, 0.1);
        assertThat(history.workers()).hasSize(2);
        assertThat(history.supports()).hasSize(2);
        assertThat(history.worker("b")).isSameAs(history.workers().get(1));
        assertThat(history.support("south")).isSameAs(history.supports().get(1));
        assertThatThrownBy(() -> history.worker("c"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id: c: must be the id of a worker");
        assertThatThrownBy(() -> history.support("west"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id: west: must be the id of a support");
    }

    @Test
    void energiesCountFromTheFirstSample() {
        EnergyHistory energies = new EnergyHistory(Map.of(
                EnergyHistory.Part.STRAIN, new double[] {100, 150, 130},
                EnergyHistory.Part.WORKER_WEIGHT, new double[] {900, 800, 850}));
        assertThat(energies.of(EnergyHistory.Part.STRAIN)).containsExactly(0, 50, 30);
        assertThat(energies.of(EnergyHistory.Part.WORKER_WEIGHT)).containsExactly(0, -100, -50);
        assertThat(energies.of(EnergyHistory.Part.MESH)).isEmpty();
    }

    /** What one part loses another gains: the sum of all is the drift, each part counted once. */
    @Test
    void theDriftIsTheSumOfAllParts() {
        Map<EnergyHistory.Part, double[]> parts = new EnumMap<>(EnergyHistory.Part.class);
        double expected = 0;
        for (EnergyHistory.Part part : EnergyHistory.Part.values()) {
            double size = Math.pow(2, number(part));
            parts.put(part, new double[] {7, 7 + size});
            expected += size;
        }
        EnergyHistory energies = new EnergyHistory(parts);
        assertThat(energies.drift()).containsExactly(0, expected);
        energies.drift()[1] = 0;
        assertThat(energies.drift()).containsExactly(0, expected);
    }
}
