package org.lifeline.design.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;

/** What is measured, and what is refused. */
class MeasurementTest {
    private static final Lifeline LINE = Designs.line(2, Passage.free());

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1, 0})
    void readingsThatCannotBeAreRefused(double value) {
        assertThatThrownBy(() -> Measurement.midspanSag(1, value)).hasMessageContaining("midspan sag of span 1");
        assertThatThrownBy(() -> Measurement.firstTension(value)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Measurement.lastTension(value)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Measurement.horizontalTension(1, value)).isInstanceOf(InvalidInputException.class);
        if (value != 0) {
            assertThatThrownBy(() -> Measurement.firstTension(1000).withUncertainty(value))
                    .hasMessageContaining("uncertainty");
        }
        if (!Double.isFinite(value)) {
            assertThatThrownBy(() -> Measurement.firstTension(1000).atTemperature(value))
                    .hasMessageContaining("temperature");
        }
        assertThatThrownBy(() -> Measurement.midspanSag(0, 0.1)).hasMessageContaining("span");
        assertThatThrownBy(() -> Measurement.midspanSag(3, 0.1).on(LINE)).hasMessageContaining("span from 1 to 2");
        assertThatThrownBy(() -> Measurement.firstTension(1000).withUncertainty(1000))
                .hasMessageContaining("smaller");
    }

    @Test
    void withersKeepWhatWasSaid() {
        Measurement m =
                Measurement.horizontalTension(2, 1400).withUncertainty(50).atTemperature(30);
        assertThat(m.value()).isEqualTo(1400);
        assertThat(m.uncertainty()).isEqualTo(50);
        assertThat(m.name()).isEqualTo("horizontal tension in span 2");
        assertThat(m.unit()).isEqualTo("N");
        assertThat(Measurement.midspanSag(1, 0.1).unit()).isEqualTo("m");
        assertThat(Measurement.lastTension(1).name()).isEqualTo("tension at the last end anchor");
        LineEquilibrium warm = Statics.withDefaults().withTemperature(30).solve(LINE, List.of());
        assertThat(m.on(LINE)).isEqualTo(warm.span(2).horizontalTension(), within(1e-9));
        LineEquilibrium installed = Statics.withDefaults().solve(LINE, List.of());
        assertThat(Measurement.firstTension(1).on(LINE)).isEqualTo(installed.firstTension(), within(1e-9));
        assertThat(Measurement.lastTension(1).on(LINE)).isEqualTo(installed.lastTension(), within(1e-9));
        double parabola =
                LINE.weightPerLength() * 12 * 12 / (8 * installed.span(1).horizontalTension());
        assertThat(Measurement.midspanSag(1, 1).on(LINE)).isEqualTo(parabola, within(1e-3 * parabola));
    }

    /** The worst over the uncertainty is that of one of the three analyses, and none is worse. */
    @Test
    void theWorstIsTakenOverTheUncertainty() {
        LifelineDesign d = Designs.design(1, Passage.free(), Attachment.GRIPPED);
        LifelineDesign one = d.withTemperatures(List.of(15.0))
                .withFalls(List.of(Fall.builder("f")
                        .at(Place.of(1, 6))
                        .faller(d.workers().get(0))
                        .build()));
        FieldCheckResult r = FieldCheck.withDefaults()
                .solve(one, Measurement.firstTension(1500).withUncertainty(300));
        assertThat(r.analyses()).hasSize(3);
        assertThat(r.pretensionOfDesign()).isEqualTo(1500, within(1e-6));
        assertThat(r.readingOfDesign()).isEqualTo(1500, within(1e-6));
        Interval range = r.pretensionRange();
        assertThat(range.low()).isEqualTo(1200, within(1e-3));
        assertThat(range.high()).isEqualTo(1800, within(1e-3));
        for (Quantity q : List.of(Quantity.END_ANCHOR_LOAD, Quantity.REQUIRED_BELOW_LINE, Quantity.CLEARANCE_MARGIN)) {
            double sign = q.largestIsWorst() ? 1 : -1;
            double worst = r.analyses().stream()
                    .mapToDouble(e -> sign * e.of(q).orElseThrow().value())
                    .max()
                    .orElseThrow();
            Extreme e = r.worst(q).orElseThrow();
            assertThat(sign * e.value()).as(q.key()).isEqualTo(worst);
        }
        assertThat(r.worst(Quantity.INLINE_EXTENSION)).isEmpty();
        assertThat(r.designNow().line().installed().value()).isEqualTo(1500, within(1e-3));
        assertThat(r.measurement().uncertainty()).isEqualTo(300);
    }

    @Test
    void aToleranceOfTheStringingTableHoldsTheDesignInside() {
        assertThatThrownBy(() -> StringingTable.withDefaults().withTolerance(Interval.of(1.1, 1.2)))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> StringingTable.withDefaults().withTolerance(Interval.of(0, 1.2)))
                .isInstanceOf(InvalidInputException.class);
    }
}
