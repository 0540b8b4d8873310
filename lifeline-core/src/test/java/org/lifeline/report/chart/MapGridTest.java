package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Runs and regions of a map hold every cell once, and a region is what can be walked through. */
class MapGridTest {
    private static final List<String> NAMES = List.of("a", "b", "c");

    private static MapGrid grid(int[][] classes) {
        double[] x = new double[classes[0].length];
        double[] y = new double[classes.length];
        Arrays.setAll(x, i -> i);
        Arrays.setAll(y, i -> i);
        return MapGrid.of(x, y, classes, NAMES);
    }

    private static int[][] random(SplittableRandom r) {
        int[][] c = new int[r.nextInt(2, 7)][r.nextInt(2, 7)];
        for (int[] row : c) {
            for (int j = 0; j < row.length; j++) {
                row[j] = r.nextInt(-1, 3);
            }
        }
        return c;
    }

    /** Number of connected regions by filling them cell by cell. */
    private static int islands(int[][] c) {
        boolean[][] seen = new boolean[c.length][c[0].length];
        int count = 0;
        for (int i = 0; i < c.length; i++) {
            for (int j = 0; j < c[0].length; j++) {
                if (c[i][j] < 0 || seen[i][j]) {
                    continue;
                }
                count++;
                Deque<int[]> open = new ArrayDeque<>(List.of(new int[] {i, j}));
                seen[i][j] = true;
                while (!open.isEmpty()) {
                    int[] at = open.remove();
                    for (int[] d : new int[][] {{0, 1}, {1, 0}, {0, -1}, {-1, 0}}) {
                        int y = at[0] + d[0];
                        int x = at[1] + d[1];
                        if (y >= 0 && y < c.length && x >= 0 && x < c[0].length && !seen[y][x] && c[y][x] == c[i][j]) {
                            seen[y][x] = true;
                            open.add(new int[] {y, x});
                        }
                    }
                }
            }
        }
        return count;
    }

    @Test
    void runsCoverEveryCellOfAClassOnceAndNoOther() {
        for (long seed = 1; seed <= 60; seed++) {
            int[][] c = random(new SplittableRandom(seed));
            int[][] again = new int[c.length][c[0].length];
            Arrays.stream(again).forEach(row -> Arrays.fill(row, -1));
            for (MapGrid.Run run : grid(c).runs()) {
                for (int j = run.from(); j < run.to(); j++) {
                    assertThat(again[run.row()][j]).as("seed %d", seed).isEqualTo(-1);
                    again[run.row()][j] = run.of();
                }
                boolean ends = run.to() == c[0].length || c[run.row()][run.to()] != run.of();
                assertThat(ends).as("a run is as long as its class goes").isTrue();
            }
            assertThat(again).as("seed %d", seed).isDeepEqualTo(c);
        }
    }

    @Test
    void regionsAreThoseThatCanBeWalkedThroughLargestFirst() {
        for (long seed = 1; seed <= 60; seed++) {
            int[][] c = random(new SplittableRandom(seed));
            List<List<MapGrid.Run>> regions = grid(c).regions();
            assertThat(regions).as("seed %d", seed).hasSize(islands(c));
            int before = Integer.MAX_VALUE;
            int cells = 0;
            for (List<MapGrid.Run> region : regions) {
                int size = region.stream().mapToInt(r -> r.to() - r.from()).sum();
                assertThat(size).isLessThanOrEqualTo(before);
                assertThat(region.stream().map(MapGrid.Run::of).distinct()).hasSize(1);
                before = size;
                cells += size;
            }
            assertThat(cells)
                    .isEqualTo(Arrays.stream(c)
                            .flatMapToInt(Arrays::stream)
                            .filter(k -> k >= 0)
                            .count());
        }
    }

    @Test
    void runsTouchWhereTheyShareAnEdgeAndNotAtACorner() {
        MapGrid.Run run = new MapGrid.Run(3, 2, 5, 1);
        assertThat(run.touches(new MapGrid.Run(4, 4, 6, 1))).isTrue();
        assertThat(run.touches(new MapGrid.Run(2, 0, 3, 1))).isTrue();
        assertThat(run.touches(new MapGrid.Run(4, 5, 6, 1))).as("corner").isFalse();
        assertThat(run.touches(new MapGrid.Run(4, 0, 2, 1))).as("corner").isFalse();
        assertThat(run.touches(new MapGrid.Run(5, 2, 5, 1))).as("two rows off").isFalse();
        assertThat(run.touches(new MapGrid.Run(3, 2, 5, 1))).as("same row").isFalse();
        assertThat(run.touches(new MapGrid.Run(4, 2, 5, 0))).as("other class").isFalse();
    }

    @Test
    void aDesignIsMarkedWhereBothItsValuesAreFinite() {
        MapGrid plain = grid(new int[][] {{0, 1}, {1, 0}});
        assertThat(plain.hasDesign()).isFalse();
        assertThat(plain.withDesignX(1).hasDesign()).isFalse();
        assertThat(plain.withDesignY(1).hasDesign()).isFalse();
        assertThat(plain.withDesignX(1).withDesignY(2).hasDesign()).isTrue();
        assertThat(plain.withDesignY(2).withDesignX(1).hasDesign()).isTrue();
        assertThat(plain.withDesignX(Double.POSITIVE_INFINITY).withDesignY(2).hasDesign())
                .isFalse();
    }

    @Test
    void ratiosFitTheCellsAndAreCopied() {
        MapGrid plain = grid(new int[][] {{0, 1}, {1, 0}});
        double[][] ratios = {{0.5, 1}, {1.5, 2}};
        MapGrid with = plain.withRatios(ratios).withDesignX(0.5);
        ratios[0][0] = 9;
        assertThat(with.ratios).isDeepEqualTo(new double[][] {{0.5, 1}, {1.5, 2}});
        assertThat(plain.ratios).as("the grid itself stays").isEmpty();
        assertThatThrownBy(() -> plain.withRatios(new double[][] {{1, 2}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1 rows of ratios: must be one for each of the 2 by 2 cells");
        assertThatThrownBy(() -> plain.withRatios(new double[][] {{1, 2}, {1}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 rows of ratios");
    }
}
