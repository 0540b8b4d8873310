package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;

/** The batch against the statics of a whole line, row by row. */
class LoadedSpansTest {
    private static final int ROWS = 200;

    private final double[] run = new double[ROWS];
    private final double[] rise = new double[ROWS];
    private final double[] length = new double[ROWS];
    private final double[] share = new double[ROWS];
    private final double[] load = new double[ROWS];

    private LoadedSpans batch() {
        return LoadedSpans.builder()
                .run(run)
                .rise(rise)
                .weightPerLength(4)
                .axialStiffness(5e6)
                .unstretchedLength(length)
                .loadShare(share)
                .load(load)
                .build();
    }

    private void fill() {
        SplittableRandom r = new SplittableRandom(21);
        for (int i = 0; i < ROWS; i++) {
            run[i] = r.nextDouble(5, 40);
            rise[i] = r.nextDouble(-2, 2);
            length[i] = Math.hypot(run[i], rise[i]) * r.nextDouble(1.0005, 1.03);
            share[i] = r.nextDouble(0.05, 0.95);
            load[i] = r.nextDouble(100, 12_000);
        }
    }

    @Test
    void agreesWithTheStaticsOfALine() {
        fill();
        LoadedSpans.Solution batch = batch().solve();
        assertThat(batch.rows()).isEqualTo(ROWS);
        for (int i = 0; i < ROWS; i++) {
            Lifeline line = Lifeline.builder()
                    .cable(Cable.builder()
                            .weightPerLength(4)
                            .axialStiffness(5e6)
                            .build())
                    .endAnchor("a", Point.of(0, 0, 5))
                    .endAnchor("b", Point.of(run[i], 0, 5 + rise[i]))
                    .installed(Installed.unstretchedLength(length[i]))
                    .build();
            // Where a station's material point is follows from the installed line; so the row is asked for that share.
            LineEquilibrium e = Statics.withDefaults()
                    .solve(line, List.of(new AppliedLoad(Place.of(1, share[i] * run[i]), Attachment.GRIPPED, load[i])));
            List<CablePiece> pieces = e.span(1).pieces();
            LoadedSpans.Solution one = LoadedSpans.builder()
                    .run(run[i])
                    .rise(rise[i])
                    .weightPerLength(4)
                    .axialStiffness(5e6)
                    .unstretchedLength(length[i])
                    .loadShare(pieces.get(0).unstretchedLength() / length[i])
                    .load(load[i])
                    .build()
                    .solve();
            double t = e.maximumTension();
            assertThat(one.horizontalTension(0)).isCloseTo(e.span(1).horizontalTension(), within(1e-9 * t));
            assertThat(one.startTension(0))
                    .isCloseTo(pieces.get(0).startTension().magnitude(), within(1e-9 * t));
            assertThat(one.endTension(0)).isCloseTo(pieces.get(1).endTension().magnitude(), within(1e-9 * t));
            assertThat(one.drop(0)).isCloseTo(5 - pieces.get(0).end().z(), within(1e-11 * length[i]));
            // Balance of the row as it was asked for.
            assertThat(batch.startReaction(i) + batch.endReaction(i))
                    .isCloseTo(load[i] + 4 * length[i], within(1e-9 * load[i]));
        }
    }

    @Test
    void aColumnOfOneNumberStandsForAllRows() {
        LoadedSpans.Solution s = LoadedSpans.builder()
                .run(30)
                .weightPerLength(4)
                .axialStiffness(5e6)
                .unstretchedLength(30.06)
                .loadShare(0.37)
                .load(6000, 3000, 6000)
                .build()
                .solve();
        assertThat(s.rows()).isEqualTo(3);
        assertThat(s.horizontalTension(0)).isEqualTo(s.horizontalTension(2)).isGreaterThan(s.horizontalTension(1));
    }

    @Test
    void saysEverythingThatIsWrong() {
        InvalidInputException e = catchThrowableOfType(
                InvalidInputException.class,
                () -> LoadedSpans.builder()
                        .run(30, -1)
                        .rise(Double.NaN)
                        .weightPerLength(-4)
                        .axialStiffness(0)
                        .unstretchedLength(1, 2, 3)
                        .loadShare(1)
                        .build());
        assertThat(e.violations().stream().map(Violation::path))
                .containsExactlyInAnyOrder(
                        "run", "run[1]", "rise[0]", "weightPerLength[0]", "axialStiffness[0]", "loadShare[0]", "load");
        assertThat(e.violations().toString())
                .contains("must lie above 0 and below 1")
                .contains("must be a finite number that is not negative")
                .contains("must be a finite number above zero")
                .contains("rise[0]: NaN m: must be a finite number,")
                .contains("one for each of the 3 rows");
    }

    @Test
    void aRowWithoutEquilibriumIsNamed() {
        LoadedSpans impossible = LoadedSpans.builder()
                .run(30, 30)
                .weightPerLength(0)
                .axialStiffness(5e6)
                .unstretchedLength(30.06)
                .loadShare(0.5)
                .load(1000, 0)
                .build();
        LoadedSpans.Solution s = impossible.attempt();
        assertThat(s.horizontalTension(0)).isPositive();
        if (Double.isNaN(s.horizontalTension(1))) {
            assertThat(s.drop(1)).isNaN();
            assertThatThrownBy(impossible::solve).hasMessageContaining("row 1");
        }
    }
}
