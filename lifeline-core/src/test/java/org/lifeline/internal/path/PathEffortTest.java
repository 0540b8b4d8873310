package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.testing.EffortTable;

/**
 * What it takes to follow a path, and how near it comes to the path in a hundred parts, line by line against the table beside this
 * test. Neither may grow: a first guess that is further off, a step that is halved for nothing or a tangent that is found
 * twice costs time and shows nowhere else. Counts are the same on every machine. After a change that is worth it, {@link #main}
 * writes the table anew.
 */
class PathEffortTest {
    /** Of a count: a faster start may cost one line a little where it spares the others more. */
    private static final double MARGIN = 0.02;

    /** Of an error, which turns on where steps happen to end; and the least that is told from rounding. */
    private static final double ERROR_MARGIN = 0.5;

    private static final double LEAST_ERROR = 1e-10;

    private static final int PARTS = 100;
    private static final int LINES = 3;

    private static final List<String> KINDS = List.of(
            "free",
            "clamped",
            "mixed",
            "rough",
            "free, single",
            "free, single, runs",
            "free, single, absorber",
            "free, single, slack",
            "free, weightless",
            "rough, slack",
            "rough, weightless",
            "free, absorber",
            "free, absorbers",
            "rough, absorber",
            "rough, absorbers",
            "free, soft posts",
            "free, soft posts, soft ends",
            "rough, soft posts, soft ends",
            "mixed, soft posts, soft ends, sinks, anchor",
            "free, corners",
            "rough, corners",
            "mixed, corners, soft posts, soft ends, absorbers",
            "free, climbs, runs",
            "rough, runs",
            "rough, climbs, runs",
            "free, carries",
            "rough, carries",
            "rough, carries, running",
            "free, carries, running, runs",
            "rough, carries, running, runs",
            "mixed, cold, absorbers, carries, running, runs",
            "free, absorber, carries, running",
            "rough, absorbers, carries, anchor, soft ends, sinks",
            "free, long",
            "gives way");

    /**
     * Lines on which something happens that few have: no equilibrium at a step's end or where modes change there, two events on one
     * step, what comes to rest, crowded steps, a foreseen tension that is not believed, a jump.
     */
    private static final List<String> CHOSEN = List.of(
            "free, single, absorber;WARM;33",
            "free, absorber;COLD;7",
            "free, long;LOAD;14",
            "rough, carries, running, runs;LOAD;11",
            "rough, carries, running, runs;PARTS;22",
            "rough, carries, running, runs;COLD;29",
            "rough, carries, running;LOAD;77",
            "mixed, cold, absorbers, carries, running, runs;WARM;4",
            "mixed, cold, absorbers, carries, running, runs;WARM;16",
            "rough, slack;COLD;15",
            "rough, slack;COLD;28",
            "rough, carries;COLD;15",
            "rough, absorber;COLD;29",
            "rough, absorbers, carries, anchor, soft ends, sinks;WARM;18",
            "rough, soft posts, soft ends;WARM;32",
            "mixed, soft posts, soft ends, sinks, anchor;WARM;11",
            "mixed, corners, soft posts, soft ends, absorbers;WARM;20",
            "mixed, corners, soft posts, soft ends, absorbers;COLD;20",
            "rough, runs;COLD;35",
            "rough, climbs, runs;COLD;32",
            "rough;COLD;148",
            "mixed;WARM;9",
            "mixed;WARM;10",
            "mixed;WARM;119",
            "mixed;COLD;13",
            "mixed;COLD;119",
            "mixed;COLD;160",
            "mixed;COLD;174",
            "free, absorbers;WARM;200",
            "free, absorber;FALL;219",
            "free, absorber;FALL;236",
            "free, absorber;FALL;241",
            "free, absorber;ENERGY;236");

    /** How a line is brought from one state to another. */
    private enum Way {
        LOAD,
        PARTS,
        FALL,
        ENERGY,
        WARM,
        COLD;

        boolean isThermal() {
            return this == WARM || this == COLD;
        }
    }

    /** The fall of 100 kg: the path ends where the line has taken up what was lost in height. */
    private static EquilibriumPath.End fall(EquilibriumPath path) {
        double from = path.now().descent;
        return Ends.of(
                point -> 1000 * (2 + point.descent - from) - PathEnergy.taken(point),
                point -> (1000 - point.value) * point.descentRate);
    }

    /** An energy that the line takes up, with nothing known of how fast it does. */
    private static EquilibriumPath.End energy() {
        return Ends.of(point -> 600 - PathEnergy.taken(point));
    }

    /** One line on one way: what it took, and where it came to. */
    private static final class Followed {
        final int tried;
        final int iterations;
        final int assembled;
        final int factored;
        double tensions;
        final double taken;
        final double done;

        Followed(String kind, Way way, long seed, int parts) {
            CountedLine line = new CountedLine(kind, seed);
            LineModel model = line.hooked();
            double force = line.force();
            LineModel.Load load = model.loads().get(model.loads().size() - 1);
            if (way.isThermal()) {
                model.hang(load, 0.3 * force);
            }
            int before = model.convergence().iterations();
            EquilibriumPath path = way.isThermal() ? thermal(model, way) : growing(model, load);
            double to = way.isThermal() ? 12e-6 * 45 : way == Way.FALL || way == Way.ENERGY ? 30_000 : force;
            EquilibriumPath.End end = way == Way.FALL ? fall(path) : way == Way.ENERGY ? energy() : null;
            boolean met = false;
            for (int k = 1; k <= parts && !met; k++) {
                met = path.advance(to * k / parts, end, end == null ? 0 : 1000);
            }
            tried = path.tried();
            iterations = model.convergence().iterations() - before;
            assembled = path.equilibrium().assembly.assembled;
            factored = path.equilibrium().assembly.factored;
            for (int i = 0; i < model.system().spans; i++) {
                tensions += model.system().forces.endSideTension(model.state(), i);
            }
            taken = PathEnergy.taken(path.now());
            done = path.isFollowed() && !path.jumped() && !way.isThermal() ? path.now().loadWork : taken;
        }

        private static EquilibriumPath thermal(LineModel model, Way way) {
            int sign = way == Way.WARM ? 1 : -1;
            return new EquilibriumPath(model, new PathParameter.Thermal(model.state().thermal, sign), null);
        }

        private static EquilibriumPath growing(LineModel model, LineModel.Load load) {
            double energy = model.energy().line() + model.energy().hanging() - model.energyOf(load);
            new LoadPlacement(model).activate(load);
            return new EquilibriumPath(
                    model,
                    new PathParameter.Weight(load.index()),
                    new EquilibriumPath.Scale(new PathEnergy.Datum(10, energy), 3000, PathTolerances.OF_WHAT_COMES));
        }

        static Followed of(String kind, Way way, long seed) {
            return new Followed(kind, way, seed, way == Way.PARTS ? 4 : 1);
        }

        /** Of the tensions, of what the line has taken up, and of the work of the load, to a joule at least [-]. */
        double error(double tensions, double taken) {
            double energy = Math.max(Math.abs(this.taken - taken), Math.abs(done - taken));
            return Math.max(Math.abs(this.tensions / tensions - 1), energy / Math.max(1, taken));
        }
    }

    /** A row of the table. */
    private record Row(List<String> cells) {
        String kind() {
            return cells.get(0);
        }

        Followed followed() {
            return Followed.of(cells.get(0), Way.valueOf(cells.get(1)), Long.parseLong(cells.get(2)));
        }

        int most(int column) {
            return (int) Math.floor((1 + MARGIN) * Integer.parseInt(cells.get(column)));
        }

        double number(int column) {
            return Double.parseDouble(cells.get(column));
        }

        @Override
        public String toString() {
            return String.join(";", cells);
        }
    }

    private static final List<Row> ROWS = EffortTable.rows(PathEffortTest.class, "path-effort.csv").stream()
            .map(Row::new)
            .toList();

    static Stream<String> kinds() {
        return ROWS.stream().map(Row::kind).distinct();
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void noPathTakesMoreThanItDid(String kind) {
        for (Row row : ROWS) {
            if (!row.kind().equals(kind)) {
                continue;
            }
            Followed f = row.followed();
            assertThat(f.tried).as("steps tried, %s", row).isLessThanOrEqualTo(row.most(3));
            assertThat(f.iterations).as("Newton's steps, %s", row).isLessThanOrEqualTo(row.most(4));
            assertThat(f.assembled).as("states assembled, %s", row).isLessThanOrEqualTo(row.most(5));
            assertThat(f.factored).as("tangents factored, %s", row).isLessThanOrEqualTo(row.most(6));
            double error = f.error(row.number(7), row.number(8));
            assertThat(error)
                    .as("off the path in a hundred parts, %s", row)
                    .isLessThanOrEqualTo(LEAST_ERROR + (1 + ERROR_MARGIN) * row.number(9));
        }
    }

    private static Stream<String> lines() {
        Stream<String> drawn = KINDS.stream()
                .flatMap(kind -> Stream.of(Way.values())
                        .flatMap(way ->
                                LongStream.rangeClosed(1, LINES).mapToObj(seed -> kind + ";" + way + ";" + seed)));
        return Stream.concat(drawn, CHOSEN.stream());
    }

    private static String measured(String line) {
        List<String> cells = List.of(line.split(";", -1));
        Way way = Way.valueOf(cells.get(1));
        long seed = Long.parseLong(cells.get(2));
        Followed f = Followed.of(cells.get(0), way, seed);
        Followed exact = new Followed(cells.get(0), way, seed, PARTS);
        return String.format(
                Locale.ROOT,
                "%s;%d;%d;%d;%d;%.12e;%.12e;%.0e",
                line,
                f.tried,
                f.iterations,
                f.assembled,
                f.factored,
                exact.tensions,
                exact.taken,
                f.error(exact.tensions, exact.taken));
    }

    /** Prints the table as it would be now, without the lines that are lost on their way. */
    public static void main(String[] args) {
        lines().forEach(line -> {
            try {
                System.out.println(measured(line));
            } catch (NoEquilibriumException e) {
                System.err.println(line + ": " + e.getMessage());
            }
        });
    }
}
