package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.model.cable.LoadElongation;

/**
 * The elastic catenary against 40-digit values, computed by quadrature (not published ones; the file says how), over
 * wS/H from 1e-9 to 10, slopes to 85°, w = 0, slack far beyond 30 % and ropes that are not linear.
 *
 * <p>The tolerance is 1e-13 of the vector or matrix that an entry belongs to: a component that is nearly zero by
 * cancellation of the inputs cannot be better than the inputs' own rounding, 1e-16 of the largest.
 */
class ElasticCatenaryReferenceTest {
    private static final double TOLERANCE = 1e-13;

    /** One line of the file. */
    static final class Row {
        final String id;
        final LoadElongation law;
        final double[] in;
        final double[] out;

        Row(String id, LoadElongation law, double[] in, double[] out) {
            this.id = id;
            this.law = law;
            this.in = in;
            this.out = out;
        }

        @Override
        public String toString() {
            return "row " + id;
        }

        /** Largest magnitude of some of the results. */
        double scale(int from, int to) {
            double most = 0;
            for (int i = from; i < to; i++) {
                most = Math.max(most, Math.abs(out[i]));
            }
            return most;
        }
    }

    static Stream<Row> rows() {
        List<Row> rows = new ArrayList<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(ElasticCatenaryReferenceTest.class.getResourceAsStream("elastic-catenary.csv")),
                StandardCharsets.UTF_8))) {
            reader.lines()
                    .filter(l -> !l.startsWith("#") && !l.startsWith("id,"))
                    .forEach(l -> rows.add(row(l)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows.stream();
    }

    private static Row row(String line) {
        String[] cells = line.split(",", -1);
        List<LoadElongation.Corner> corners = new ArrayList<>();
        for (String corner : cells[1].split(" ", -1)) {
            String[] pair = corner.split(":", -1);
            corners.add(new LoadElongation.Corner(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])));
        }
        double[] in = new double[5];
        for (int i = 0; i < in.length; i++) {
            in[i] = Double.parseDouble(cells[2 + i]);
        }
        double[] out = new double[15];
        for (int i = 0; i < out.length; i++) {
            out[i] = Double.parseDouble(cells[7 + i]);
        }
        return new Row(cells[0], LoadElongation.curve(corners), in, out);
    }

    @Test
    void theFileIsThere() {
        assertThat(rows()).hasSize(138);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void agrees(Row row) {
        ElasticCatenary c = new ElasticCatenary(row.law);
        double[] in = row.in;
        c.evaluate(in[0], in[1], in[2], in[3], in[4]);
        c.energies(in[0], in[1], in[2], in[3], in[4]);
        double[] vector = {c.dx, c.dy, c.dz};
        double[] single = {c.endTension, c.strainEnergy, c.complementary};
        double[] matrix = {c.kxx, c.kxy, c.kxz, c.kyy, c.kyz, c.kzz};
        double[] byLength = {c.ex, c.ey, c.ez};
        compare(row, vector, 0, row.scale(0, 3));
        for (int i = 0; i < 3; i++) {
            compare(row, new double[] {single[i]}, 3 + i, row.scale(3 + i, 4 + i));
        }
        compare(row, matrix, 6, row.scale(6, 12));
        compare(row, byLength, 12, row.scale(12, 15));
    }

    private static void compare(Row row, double[] have, int from, double scale) {
        for (int i = 0; i < have.length; i++) {
            assertThat(Math.abs(have[i] - row.out[from + i]) / scale)
                    .as("%s, column %d: have %s, want %s", row, from + i + 1, have[i], row.out[from + i])
                    .isLessThan(TOLERANCE);
        }
    }
}
