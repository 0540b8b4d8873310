package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A copied state is the same and apart; what is compared as a mode is all that may change by itself. */
class LineStateTest {
    private static LineState state() {
        long seed = 1;
        while (new RandomSystem(seed).system.loads == 0) {
            seed++;
        }
        LineState s = new RandomSystem(seed).state.copy();
        s.thermal = 1.001;
        return s;
    }

    private static Map<String, Consumer<LineState>> modes() {
        Map<String, Consumer<LineState>> map = new LinkedHashMap<>();
        map.put("passage", s -> s.passage[0] += 1);
        map.put("mode", s -> s.mode[0] += 1);
        map.put("active", s -> s.active[0] = !s.active[0]);
        map.put("yielding", s -> s.yielding[1] = !s.yielding[1]);
        map.put("piece", s -> s.piece[1] += 1);
        return map;
    }

    private static Map<String, Consumer<LineState>> numbers() {
        Map<String, Consumer<LineState>> map = new LinkedHashMap<>();
        map.put("tension", s -> s.tension[0] += 1);
        map.put("slip", s -> s.slip[0] += 1);
        map.put("force", s -> s.force[0] += 1);
        map.put("coordinate", s -> s.coordinate[0] += 1);
        map.put("extension", s -> s.extension[0] += 1);
        map.put("yielded", s -> s.yielded[0] += 1);
        map.put("thermal", s -> s.thermal += 1);
        return map;
    }

    private static String text(LineState s) {
        return java.util.Arrays.deepToString(new Object[] {
            s.tension,
            s.slip,
            s.passage,
            s.force,
            s.coordinate,
            s.mode,
            s.active,
            s.extension,
            s.yielded,
            s.yielding,
            s.piece,
            s.thermal
        });
    }

    @TestFactory
    java.util.stream.Stream<DynamicTest> aCopyIsApart() {
        Map<String, Consumer<LineState>> all = modes();
        all.putAll(numbers());
        return all.entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    LineState s = state();
                    LineState copy = s.copy();
                    assertThat(text(copy)).isEqualTo(text(s));
                    String before = text(s);
                    e.getValue().accept(copy);
                    assertThat(text(s)).isEqualTo(before);
                    assertThat(text(copy)).isNotEqualTo(before);
                    copy.set(s);
                    assertThat(text(copy)).as("set back").isEqualTo(before);
                }));
    }

    @TestFactory
    java.util.stream.Stream<DynamicTest> aModeThatDiffersIsSeen() {
        return modes().entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    LineState s = state();
                    LineState other = s.copy();
                    assertThat(s.hasModesOf(other)).isTrue();
                    e.getValue().accept(other);
                    assertThat(s.hasModesOf(other)).isFalse();
                }));
    }

    @TestFactory
    java.util.stream.Stream<DynamicTest> aNumberThatDiffersIsNoMode() {
        return numbers().entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    LineState s = state();
                    LineState other = s.copy();
                    e.getValue().accept(other);
                    assertThat(s.hasModesOf(other)).isTrue();
                }));
    }

    @Test
    void theUnknownsAreTakenOverWithoutTheRest() {
        LineState s = state();
        LineState other = s.copy();
        modes().values().forEach(change -> change.accept(other));
        numbers().values().forEach(change -> change.accept(other));
        LineState target = s.copy();
        target.setUnknowns(other);
        assertThat(target.tension).isEqualTo(other.tension);
        assertThat(target.slip).isEqualTo(other.slip);
        assertThat(target.coordinate).isEqualTo(other.coordinate);
        assertThat(target.extension).isEqualTo(other.extension);
        assertThat(target.force).isEqualTo(s.force);
        assertThat(target.yielded).isEqualTo(s.yielded);
        assertThat(target.thermal).isEqualTo(s.thermal);
        assertThat(target.hasModesOf(s)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 4})
    void aNewStateHasRoomForEverySpanAndLoad(int spans) {
        LineState s = new LineState(spans, 2);
        assertThat(s.tension).hasSize(3 * spans);
        assertThat(s.slip).hasSize(spans + 1);
        assertThat(s.passage).hasSize(spans + 1);
        assertThat(s.force).hasSize(2);
        assertThat(s.thermal).isEqualTo(1);
    }
}
