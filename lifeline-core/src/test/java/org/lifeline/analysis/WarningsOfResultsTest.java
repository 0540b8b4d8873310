package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.field.StringingTable;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/** Every result carries its warnings: typed, with subject, value, limit and unit. */
class WarningsOfResultsTest {
    private static final Worker WORKER = Worker.builder("A")
            .mass(100)
            .walkingLevel(10.9)
            .connection(PlainParts.lanyard(3200, 6000, 1.2))
            .build();

    /** A cable of 20 kN between anchors of 15 kN, terminations of 80 %. */
    private static Lifeline weak() {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.4)
                        .axialStiffness(3e6)
                        .breakingStrength(20_000)
                        .terminationEfficiency(0.8)
                        .build())
                .support(Support.end("north", Point.of(0, 0, 12.4)).withCapacity(15_000))
                .support(Support.end("south", Point.of(12, 0, 12.4)).withCapacity(15_000))
                .pretension(1500)
                .build();
    }

    private static final Fall FALL =
            Fall.builder("middle").at(Place.of(1, 6)).faller(WORKER).build();

    @Test
    void aLineAtRest() {
        LineEquilibrium quiet = Statics.withDefaults().solve(weak(), List.of());
        assertThat(quiet.warnings()).isEmpty();
        LineEquilibrium loaded = Statics.withDefaults()
                .solve(weak(), List.of(new AppliedLoad(Place.of(1, 6), Attachment.GRIPPED, 6000)));
        assertThat(loaded.warnings())
                .extracting(w -> w.code() + " " + w.subject() + " " + w.unit() + " " + w.limit())
                .containsExactly(
                        "CABLE_STRENGTH cable N 16000.0",
                        "ANCHOR_CAPACITY north N 15000.0",
                        "ANCHOR_CAPACITY south N 15000.0");
        assertThat(loaded.warnings().get(0).value()).isEqualTo(loaded.maximumTension());
        assertThat(loaded.warnings().get(1).value())
                .isEqualTo(loaded.support("north").force());
    }

    @Test
    void anArrestAndAnArrestInTime() {
        ArrestResult arrest = EnergyBalance.withDefaults().solve(weak(), FALL);
        assertThat(arrest.warnings())
                .extracting(Warning::code)
                .containsExactlyElementsOf(
                        arrest.peak().warnings().stream().map(Warning::code).toList())
                .contains(Warning.Code.CABLE_STRENGTH);
        TransientResult rough = TransientArrest.withDefaults()
                .withRefinements(0)
                .withDuration(1.2)
                .solve(weak(), FALL);
        assertThat(rough.accurate()).isFalse();
        assertThat(rough.warnings())
                .filteredOn(w -> w.code() == Warning.Code.MOTION_NOT_ACCURATE)
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.value()).isEqualTo(rough.uncertainty());
                    assertThat(w.limit()).isEqualTo(0.06);
                });
        assertThat(rough.warnings()).containsAll(rough.arrest().warnings());
    }

    @Test
    void anEnvelopeTellsTheWorstOfEachKind() {
        EnvelopeResult found = Envelope.withDefaults()
                .solve(LifelineDesign.builder("weak")
                        .line(weak())
                        .worker(WORKER)
                        .build());
        assertThat(found.warnings())
                .filteredOn(w -> w.code() == Warning.Code.CABLE_STRENGTH)
                .singleElement()
                .satisfies(w -> {
                    assertThat(w.value()).isGreaterThan(16_000);
                    assertThat(w.place()).isNotBlank();
                });
        assertThat(found.warnings()).extracting(w -> w.code() + w.subject()).doesNotHaveDuplicates();
    }

    @Test
    void aStringingTable() {
        Lifeline line = weak();
        List<StringingRow> rows = StringingTable.withDefaults()
                .withTolerance(Interval.of(0.9, 1.1))
                .solve(line, List.of(15.0, -30.0));
        assertThat(StringingTable.warnings(line, rows)).isEmpty();
        Lifeline tight = line.withInstalled(line.installed().withPretension(14_000));
        List<StringingRow> cold = StringingTable.withDefaults()
                .withTolerance(Interval.of(0.9, 1.1))
                .solve(tight, List.of(15.0, -30.0));
        assertThat(StringingTable.warnings(tight, cold))
                .extracting(w -> w.code() + " " + w.subject() + " " + w.place())
                .contains("CABLE_STRENGTH span 1 -30.0 °C");
    }
}
