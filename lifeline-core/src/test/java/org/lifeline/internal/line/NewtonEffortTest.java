package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.testing.EffortTable;

/**
 * What Newton's method takes on lines of every kind from states far from their equilibrium, line by line against the table beside
 * this test: steps that are cut for nothing, or not cut where a span would lose its tension or its cable, cost further ones, or the
 * equilibrium itself. What was found once stays found. After a change that is worth it, {@link #main} writes the table anew.
 */
class NewtonEffortTest {
    private static final int LINES = 60;

    /** Residual of an equilibrium that is solved to rounding, over its scale [-]. */
    private static final double ROUNDING = 1e-12;

    /** Tensions over those of the line's random state. */
    private static final double[] FACTORS = {0.2, 1, 6};

    /** Newton's method from one state. */
    private static final class Search {
        final boolean found;
        final Equilibrium equilibrium;
        final LineSystem system;
        final LineState state;

        Search(long seed, double factor, boolean loose) {
            RandomSystem random = new RandomSystem(seed);
            system = random.system;
            state = random.state;
            for (int i = 0; i < state.tension.length; i++) {
                state.tension[i] *= factor;
            }
            equilibrium = Lines.equilibrium(system);
            if (loose) {
                equilibrium.loosen();
            }
            found = equilibrium.newton(state);
        }
    }

    /**
     * A row of the table.
     *
     * @param seed of the line
     * @param factor on its tensions
     * @param loose as on the way along a path
     * @param cells found, Newton's steps, states assembled
     */
    private record Row(long seed, double factor, boolean loose, List<String> cells) {
        static Row of(List<String> cells) {
            return new Row(
                    Long.parseLong(cells.get(0)),
                    Double.parseDouble(cells.get(1)),
                    Boolean.parseBoolean(cells.get(2)),
                    cells.subList(3, 6));
        }

        boolean found() {
            return Boolean.parseBoolean(cells.get(0));
        }

        int count(int column) {
            return Integer.parseInt(cells.get(column));
        }
    }

    private static final List<Row> ROWS = EffortTable.rows(NewtonEffortTest.class, "newton-effort.csv").stream()
            .map(Row::of)
            .toList();

    static LongStream lines() {
        return ROWS.stream().mapToLong(Row::seed).distinct();
    }

    @ParameterizedTest
    @MethodSource("lines")
    void noSearchTakesMoreThanItDid(long line) {
        for (Row row : ROWS) {
            if (row.seed != line) {
                continue;
            }
            Search s = new Search(row.seed, row.factor, row.loose);
            assertThat(s.found || !row.found()).as("found, %s", row).isTrue();
            int singular = s.found ? 0 : 1;
            assertThat(s.equilibrium.assembly.factored)
                    .as("each step factors one tangent, %s", row)
                    .isBetween(s.equilibrium.iterations, s.equilibrium.iterations + singular);
            if (s.found) {
                double left = row.loose ? 10 * LineTolerances.LOOSE : ROUNDING;
                for (double each : Lines.residual(s.system, s.state)) {
                    assertThat(Math.abs(each)).as("residual, %s", row).isLessThan(left);
                }
            }
            if (s.found == row.found()) {
                assertThat(s.equilibrium.iterations)
                        .as("Newton's steps, %s", row)
                        .isLessThanOrEqualTo(row.count(1));
                assertThat(s.equilibrium.assembly.assembled)
                        .as("states assembled, %s", row)
                        .isLessThanOrEqualTo(row.count(2));
            }
        }
    }

    /** Prints the table as it would be now. */
    public static void main(String[] args) {
        for (int seed = 1; seed <= LINES; seed++) {
            for (double factor : FACTORS) {
                for (boolean loose : new boolean[] {false, true}) {
                    Search s = new Search(seed, factor, loose);
                    System.out.println(seed + ";" + factor + ";" + loose + ";" + s.found + ";"
                            + s.equilibrium.iterations + ";" + s.equilibrium.assembly.assembled);
                }
            }
        }
    }
}
