package org.lifeline.design.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.variable.Axis;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

class SweepAndCsvTest {
    private static final LifelineDesign DESIGN = design();

    private static LifelineDesign design() {
        return Designs.fallInTheMiddle(Designs.design(2, Passage.free(), Attachment.GRIPPED));
    }

    private static final List<Quantity> QUANTITIES = List.of(Quantity.END_ANCHOR_LOAD, Quantity.SAG);

    @Test
    void everyCombinationIsARow() {
        Axis spans = Axis.even(DesignVariables.spanLengths(Interval.of(4, 12)), 3);
        Axis tensions = new Axis(DesignVariables.pretension(Interval.of(1, 2)), List.of(800.0, 2000.0));
        Evaluation worst = Evaluation.worst(DesignAnalysis.withDefaults(), QUANTITIES);
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<StudyRow> rows = Sweep.withDefaults()
                    .withExecutor(two)
                    .solve(DESIGN, List.of(spans, tensions), worst)
                    .rows();
            assertThat(rows).hasSize(6);
            int i = 0;
            for (double span : new double[] {4, 8, 12}) {
                for (double tension : new double[] {800, 2000}) {
                    StudyRow row = rows.get(i++);
                    assertThat(row.number()).isEqualTo(i);
                    assertThat(row.input(0)).isEqualTo(span);
                    assertThat(row.input(1)).isEqualTo(tension);
                    LifelineDesign d =
                            tensions.variable().apply(spans.variable().apply(DESIGN, span), tension);
                    Extremes e = DesignAnalysis.withDefaults().extremes(d);
                    assertThat(row.output(0))
                            .isEqualTo(
                                    e.of(Quantity.END_ANCHOR_LOAD).orElseThrow().value());
                    assertThat(row.output(1))
                            .isEqualTo(e.of(Quantity.SAG).orElseThrow().value());
                }
            }
        } finally {
            two.shutdown();
        }
    }

    @Test
    void aCellThatFailsIsNotTheEnd() {
        Axis masses = new Axis(DesignVariables.workerMass(Interval.of(1, 2)), List.of(-1.0, 100.0));
        SweepResult table = Sweep.withDefaults()
                .solve(DESIGN, List.of(masses), Evaluation.ratios(DesignAnalysis.withDefaults(), Criteria.builtIn()));
        List<StudyRow> rows = table.rows();
        assertThat(table.isComplete()).isTrue();
        assertThat(table.failed()).isEqualTo(1);
        assertThat(table.incompleteBecause().orElseThrow())
                .startsWith("1 of 2 rows have no result, the first because: ")
                .contains("mass: -1.0 kg");
        assertThat(rows.get(0).failed()).isTrue();
        assertThat(rows.get(0).reason()).contains("mass: -1.0 kg");
        assertThat(rows.get(1).failed()).isFalse();
        assertThat(rows.get(1).output(0)).isPositive();
    }

    @Test
    void stoppingKeepsTheRows() {
        Axis spans = Axis.even(DesignVariables.spanLengths(Interval.of(4, 12)), 5);
        List<StudyRow> taken = new ArrayList<>();
        SweepResult table = Sweep.withDefaults()
                .withProgress((done, total) -> done < 2)
                .withRows(taken::add)
                .solve(DESIGN, List.of(spans), Evaluation.worst(DesignAnalysis.withDefaults(), QUANTITIES));
        assertThat(table.rows()).hasSize(2).isEqualTo(taken);
        assertThat(table.isComplete()).isFalse();
        assertThat(table.incompleteBecause()).hasValue("the sweep was ended after 2 of 5 rows");
        assertThatThrownBy(() -> Sweep.withDefaults()
                        .solve(DESIGN, List.of(), Evaluation.worst(DesignAnalysis.withDefaults(), QUANTITIES)))
                .isInstanceOf(InvalidInputException.class);
    }

    @Test
    void csvIsPlainAndSafe() {
        DesignVariable trap = DesignVariable.of("=cmd()", "N", Interval.of(0, 1), (d, v) -> {
            if (v > 0) {
                return d;
            }
            throw new InvalidInputException(List.of(new Violation("+a", "say \"no\", twice", "line one\r\nline two")));
        });
        StringBuilder out = new StringBuilder();
        StudyCsv csv = StudyCsv.begin(out, List.of(trap), List.of(new Response("a, b", "-"), new Response("c", "m")));
        Evaluation e = Evaluation.of(
                List.of(new Response("a, b", "-"), new Response("c", "m")), d -> new double[] {-1.5e-7, Double.NaN});
        Sweep.withDefaults().withRows(csv).solve(DESIGN, List.of(new Axis(trap, List.of(0.0, 1.0))), e);
        assertThat(out.toString()).isEqualTo("""
                        case,'=cmd() [N],"a, b",c [m],failure
                        1,0.0,,,"'+a: say ""no"", twice: line one  line two"
                        2,1.0,-1.5E-7,,
                        """.replace("\n", "\r\n"));
    }

    @Test
    void aWriterThatFailsIsHeardOf() {
        Appendable broken = new Appendable() {
            @Override
            public Appendable append(CharSequence text) throws IOException {
                throw new IOException("disk full");
            }

            @Override
            public Appendable append(CharSequence text, int start, int end) throws IOException {
                throw new IOException("disk full");
            }

            @Override
            public Appendable append(char c) throws IOException {
                throw new IOException("disk full");
            }
        };
        assertThatThrownBy(() -> StudyCsv.begin(broken, List.of(), List.of()))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("disk full");
    }

    @Test
    void wrongNumberOfValuesIsAFaultOfTheEvaluation() {
        Evaluation wrong = Evaluation.of(List.of(new Response("a", "-")), d -> new double[2]);
        List<Axis> axes = List.of(new Axis(DesignVariables.workerMass(Interval.of(1, 2)), List.of(100.0)));
        assertThatThrownBy(() -> Sweep.withDefaults().solve(DESIGN, axes, wrong))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("2 values for 1 responses");
    }
}
