package org.lifeline.design.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.cable.Cable;

class FieldTest {
    /**
     * Code_Aster validation SSNL114 (V6.02.114), published: a cable of 325 m span and unstressed length, mid deflection 6.352 m, and
     * 8.195 m when it is 39.26 K warmer. Tolerance: the digits that are printed.
     */
    @Test
    void stringingTableOfAPublishedHeatedCable() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(2844.23 * 2.2783e-4)
                        .axialStiffness(57e9 * 2.2783e-4)
                        .thermalExpansion(2.3e-5)
                        .build())
                .gravity(9.81)
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(325, 0, 0))
                .installed(Installed.unstretchedLength(325).atTemperature(15))
                .build();
        List<StringingRow> rows = StringingTable.withDefaults().solve(line, List.of(15.0, 15 + 39.26));
        assertThat(rows).hasSize(2);
        assertThat(rows.get(0).sag().nominal()).isEqualTo(6.352, within(5e-4));
        assertThat(rows.get(1).sag().nominal()).isEqualTo(8.195, within(1e-3));
        assertThat(rows.get(0).sag().low()).isEqualTo(rows.get(0).sag().nominal());
    }

    @Test
    void aLineTensionedToItsRowHasThePretensionOfTheDesign() {
        Lifeline line = Designs.line(3, Passage.clamped());
        List<StringingRow> rows = StringingTable.withDefaults()
                .withTolerance(Interval.of(0.9, 1.1))
                .solve(line, List.of(-20.0, 15.0, 35.0));
        assertThat(rows).hasSize(9);
        Lifeline free = line.withSupports(s -> s.isEnd() ? s : s.withPassage(Passage.free()));
        for (StringingRow r : rows.stream().filter(r -> r.span() == 1).toList()) {
            Lifeline strung = free.withInstalled(
                    Installed.pretension(r.tension().nominal()).atTemperature(r.temperature()));
            assertThat(Statics.withDefaults()
                            .withTemperature(15)
                            .solve(strung, List.of())
                            .firstTension())
                    // Lengthened, then shortened in proportion: (α ΔT)² EA = (12e-6 · 35)² · 4.9e6 N = 0.9 N are left.
                    .isEqualTo(1500, within(0.9));
            assertThat(r.tension().low()).isLessThan(r.tension().nominal());
            assertThat(r.tension().high()).isGreaterThan(r.tension().nominal());
            assertThat(r.sag().low()).isLessThan(r.sag().nominal());
            assertThat(r.sag().high()).isGreaterThan(r.sag().nominal());
        }
        StringingRow installed = rows.get(3);
        assertThat(installed.tension().nominal()).isEqualTo(1500, within(1e-6));
        assertThat(installed.tension().high()).isEqualTo(1650, within(1e-6));
        // Parabola of a light taut cable: w L²/(8 H); exact catenary lies within 1e-3 of it here.
        assertThat(installed.sag().nominal()).isEqualTo(0.576 * 9.80665 * 144 / (8 * 1500), within(1e-4));
    }

    @Test
    void colderIsTighter() {
        List<StringingRow> rows =
                StringingTable.withDefaults().solve(Designs.line(1, Passage.free()), List.of(-30.0, 0.0, 30.0));
        assertThat(rows.get(0).tension().nominal())
                .isGreaterThan(rows.get(1).tension().nominal());
        assertThat(rows.get(1).tension().nominal())
                .isGreaterThan(rows.get(2).tension().nominal());
        assertThat(rows.get(0).sag().nominal()).isLessThan(rows.get(2).sag().nominal());
    }

    private static final LifelineDesign DESIGN = design();

    private static LifelineDesign design() {
        return Designs.fallInTheMiddle(Designs.design(2, Passage.friction(0.12), Attachment.GRIPPED));
    }

    private static void recovers(Measurement template, double pretension) {
        Lifeline line = DESIGN.line().withInstalled(Installed.pretension(pretension));
        double reading = template.on(line);
        Measurement m =
                switch (template.unit()) {
                    case "m" -> Measurement.midspanSag(2, reading).atTemperature(28);
                    default ->
                        template.name().contains("first")
                                ? Measurement.firstTension(reading).atTemperature(28)
                                : template.name().contains("last")
                                        ? Measurement.lastTension(reading).atTemperature(28)
                                        : Measurement.horizontalTension(1, reading)
                                                .atTemperature(28);
                };
        FieldCheckResult r = FieldCheck.withDefaults().solve(DESIGN, m);
        assertThat(r.pretensionNow()).as(m.name()).isEqualTo(pretension, within(1e-3 * pretension));
        assertThat(m.on(r.designNow().line())).isEqualTo(reading, within(1e-6 * reading));
        assertThat(r.pretensionOfDesign()).isEqualTo(1500, within(1e-9));
    }

    @Test
    void whatIsReadGivesThePretensionBack() {
        for (double p : new double[] {700, 1499, 1500, 4000}) {
            recovers(Measurement.midspanSag(2, 1).atTemperature(28), p);
            recovers(Measurement.firstTension(1).atTemperature(28), p);
            recovers(Measurement.lastTension(1).atTemperature(28), p);
            recovers(Measurement.horizontalTension(1, 1).atTemperature(28), p);
        }
    }

    @Test
    void theAnalysisIsDoneAgain() {
        FieldCheckResult r = FieldCheck.withDefaults().solve(DESIGN, Measurement.firstTension(800));
        assertThat(r.extremes().of(Quantity.END_ANCHOR_LOAD).orElseThrow().value())
                .isEqualTo(DesignAnalysis.withDefaults()
                        .extremes(r.designNow())
                        .of(Quantity.END_ANCHOR_LOAD)
                        .orElseThrow()
                        .value());
        double designed = DesignAnalysis.withDefaults()
                .extremes(DESIGN)
                .of(Quantity.TOTAL_FALL_DISTANCE)
                .orElseThrow()
                .value();
        assertThat(r.extremes().of(Quantity.TOTAL_FALL_DISTANCE).orElseThrow().value())
                .as("a slack line lets the worker fall farther")
                .isGreaterThan(designed);
    }

    @Test
    void uncertaintyOfTheReadingBecomesARangeOfPretension() {
        FieldCheckResult r = FieldCheck.withDefaults()
                .withAnalysis(Envelope.withDefaults())
                .solve(DESIGN, Measurement.midspanSag(1, 0.08).withUncertainty(0.01));
        assertThat(r.analyses()).hasSize(3);
        assertThat(r.pretensionRange().contains(r.pretensionNow())).isTrue();
        assertThat(r.pretensionRange().width()).isPositive();
        for (Quantity q : List.of(Quantity.END_ANCHOR_LOAD, Quantity.CLEARANCE_MARGIN)) {
            double worst = r.worst(q).orElseThrow().value();
            r.analyses().forEach(e -> {
                double v = e.of(q).orElseThrow().value();
                assertThat(q.largestIsWorst() ? worst >= v : worst <= v).isTrue();
            });
        }
        // Slackest first: a larger sag is a lower tension.
        assertThat(r.analyses()
                        .get(1)
                        .of(Quantity.END_ANCHOR_LOAD)
                        .orElseThrow()
                        .value())
                .isLessThan(r.analyses()
                        .get(2)
                        .of(Quantity.END_ANCHOR_LOAD)
                        .orElseThrow()
                        .value());
    }

    @Test
    void readingsThatNoPretensionGivesAreRefused() {
        assertThatThrownBy(() -> FieldCheck.withDefaults().solve(DESIGN, Measurement.midspanSag(1, 6)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("midspan sag of span 1: 6.0 m: ");
        assertThatThrownBy(() -> FieldCheck.withDefaults().solve(DESIGN, Measurement.midspanSag(1, 1e-9)))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> FieldCheck.withDefaults().solve(DESIGN, Measurement.midspanSag(7, 0.1)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("span");
        assertThatThrownBy(() -> Measurement.firstTension(-1)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Measurement.firstTension(1).withUncertainty(1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("uncertainty");
        assertThatThrownBy(() -> StringingTable.withDefaults().withTolerance(Interval.of(1.1, 1.2)))
                .isInstanceOf(InvalidInputException.class);
    }
}
